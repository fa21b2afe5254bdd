using System.Text;
using System.Text.Json;
using Trier.TestKit;

namespace Trier.Tests.Commands.Verdicts;

/// <summary>The program itself, started as a user starts it.</summary>
public sealed class VerdictCommandTests : IDisposable
{
    private static readonly string Demo = Path.Combine(Checkout.Root, "src", "Trier", "Demo", "demo-trial.ballots.csv");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-tests-");

    [Fact]
    public async Task The_demo_is_judged_in_words_within_eighty_columns()
    {
        var (code, output, error) = await Started.RunAsync(null, "verdict", Demo, "--repeat", "862=417");
        Assert.Equal((0, ""), (code, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains("593 is our best bet: nobody put it last and it has the best average place.", output, StringComparison.Ordinal);
        Assert.Contains("T08       ▌◆ 417 │■ 593 =▲ 751 │● 238 │▮ 946 )", output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', output);
    }

    [Fact]
    public async Task Json_comes_from_a_pipe_as_well_and_is_the_same()
    {
        var file = await Started.RunAsync(null, "verdict", Demo, "--repeat", "862=417", "--json", "--seed", "18446744073709551615");
        var pipe = await Started.RunAsync(await File.ReadAllBytesAsync(Demo, TestContext.Current.CancellationToken), "verdict", "-", "--json", "--repeat", "862=417", "--seed", "18446744073709551615");
        Assert.Equal((0, 0), (file.Code, pipe.Code));
        Assert.Equal(file.Output.Replace("\"demo-trial\"", "\"Ballots\"", StringComparison.Ordinal), pipe.Output);
        using var json = JsonDocument.Parse(file.Output);
        Assert.Equal(5, json.RootElement.GetProperty("level").GetInt32());
        Assert.Equal("18446744073709551615", json.RootElement.GetProperty("seed").GetString());
    }

    [Theory]
    [InlineData("taster,1,2,3\nAna,1,2,3\n")]
    [InlineData("taster,1,2,3\nAna,1,1,1\nBo,2,2,2\nCy,1,1,1\nDi,3,3,3\n")]
    [InlineData("taster,1,2,3\nAna,,,\n")]
    public async Task One_taster_or_all_tied_gives_a_tally_and_one_sentence(string ballots)
    {
        var (code, output, error) = await Started.RunAsync(Encoding.UTF8.GetBytes(ballots), "verdict", "-");
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(1, output.Split("nothing can be tested", StringSplitOptions.None).Length - 1);
        Assert.Contains("The tally", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("taster,317,582\nAna,1,7\n", "Line 2, 582: place 7, but there are 2 samples; places run from 1 to 2.")]
    [InlineData("", "The file is empty; it needs a header line and at least one ballot.")]
    [InlineData("\u0001\u0002", "Line 1 holds bytes that are no UTF-8 or UTF-16 text; save the ballots as CSV in UTF-8.")]
    public async Task Wrong_input_ends_with_1_and_sentences_alone(string ballots, string sentence)
    {
        var (code, output, error) = await Started.RunAsync(Encoding.UTF8.GetBytes(ballots), "verdict", "-");
        Assert.Equal((1, ""), (code, output));
        Assert.Equal($"{sentence}\nNothing was taken in.\n", error.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task A_missing_file_and_a_folder_are_wrong_input()
    {
        var missing = await Started.RunAsync(null, "verdict", Path.Combine(_folder.FullName, "none.csv"));
        Assert.Equal(1, missing.Code);
        Assert.StartsWith("There is no file ", missing.Error, StringComparison.Ordinal);
        var folder = await Started.RunAsync(null, "verdict", _folder.FullName);
        Assert.Equal(1, folder.Code);
        Assert.Contains("is a folder", folder.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("verdict")]
    [InlineData("verdict", "a.csv", "b.csv")]
    [InlineData("verdict", "a.csv", "--repeat", "862")]
    [InlineData("verdict", "a.csv", "--unplaced", "first")]
    [InlineData("verdict", "a.csv", "--seed", "today")]
    [InlineData("verdict", "a.csv", "--no-such")]
    [InlineData("no-such")]
    public async Task A_wrong_command_ends_with_2_and_never_with_a_stack_trace(params string[] arguments)
    {
        var (code, _, error) = await Started.RunAsync(null, arguments);
        Assert.Equal(2, code);
        Assert.NotEqual("", error);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Empty_places_mean_last_when_told_so()
    {
        var ballots = Encoding.UTF8.GetBytes("taster,1,2,3\nA,1,,\nB,1,,\nC,1,,\nD,1,,\nE,1,,\nF,1,,\n");
        using var without = JsonDocument.Parse((await Started.RunAsync(ballots, "verdict", "-", "--json")).Output);
        using var last = JsonDocument.Parse((await Started.RunAsync(ballots, "verdict", "-", "--json", "--unplaced", "last")).Output);
        Assert.Equal(0, without.RootElement.GetProperty("level").GetInt32());
        Assert.Equal(6, last.RootElement.GetProperty("level").GetInt32());
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
