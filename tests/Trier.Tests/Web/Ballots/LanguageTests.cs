using System.Collections;
using System.Diagnostics;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using Trier.Resources;
using Trier.TestKit;

namespace Trier.Tests.Web.Ballots;

public partial class LanguageTests
{
    private static readonly string Folder = Path.Combine(Checkout.Root, "src", "Trier", "Resources");

    private static readonly Dictionary<string, string> English = Texts("en");

    public static TheoryData<string> Others => [.. BallotWords.Languages.Skip(1).Select(language => language.Name)];

    [Fact]
    public void The_ballot_speaks_six_languages_each_under_its_own_name() =>
        Assert.Equal(["English", "Deutsch", "Español", "Français", "Italiano", "Português"], BallotWords.Languages.Select(BallotWords.NameOf));

    [Theory]
    [MemberData(nameof(Others))]
    public void Every_file_has_every_text_with_the_same_gaps_and_as_many_forms(string language)
    {
        var texts = Texts(language);
        Assert.Equal(English.Keys.Order(StringComparer.Ordinal), texts.Keys.Order(StringComparer.Ordinal));
        Assert.All(English, text =>
        {
            Assert.Equal(Gaps(text.Value), Gaps(texts[text.Key]));
            Assert.Equal(text.Value.Count(sign => sign == '|'), texts[text.Key].Count(sign => sign == '|'));
            Assert.False(string.IsNullOrWhiteSpace(texts[text.Key]), text.Key);
        });
    }

    [Theory]
    [MemberData(nameof(Others))]
    public void No_text_was_left_in_English(string language)
    {
        var texts = Texts(language);
        // Words that are the same in both languages, figures and signs.
        var same = English.Where(text => text.Value == texts[text.Key] && text.Value.Any(char.IsLetter) && !text.Key.Contains("time", StringComparison.Ordinal) && text.Key != "date").Select(text => text.Key);
        Assert.Empty(same.Except(["code.label", "again.no", "right.own", "places.field", "food.gluten", "food.lupin", "food.lysozyme"]));
    }

    [Fact]
    public async Task The_taster_chooses_on_the_first_page_and_every_page_and_sheet_follows()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        using var maker = await evening.MakerAsync();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        foreach (var name in BallotWords.Languages.Select(BallotWords.NameOf)) Assert.Contains(name, phone.Text, StringComparison.Ordinal);
        await phone.PostAsync(phone.Form($"{door.Path}/language", ("language", "fr")));
        Assert.Contains("Bienvenue, Ada.", phone.Text, StringComparison.Ordinal);
        Assert.Contains("<html lang=\"fr\">", phone.Html, StringComparison.Ordinal);
        await phone.PressAsync();
        Assert.Contains("Échantillon 1 sur 4", phone.Text, StringComparison.Ordinal);

        using var another = evening.NewPhone();
        await another.GetAsync(door.Path + "/places");
        Assert.Contains("Mettez-les maintenant en ordre", another.Text, StringComparison.Ordinal);
        await phone.GetAsync("/c");
        Assert.Contains("Tapez le code de votre carte", phone.Text, StringComparison.Ordinal);
        await another.GetAsync("/c");
        Assert.Contains("Type the code from your card", another.Text, StringComparison.Ordinal);
        await another.PostAsync(another.Form("/language", ("language", "de")));
        Assert.Equal("/c", another.Path);
        Assert.Contains("Tippe den Code von deiner Karte ein", another.Text, StringComparison.Ordinal);
        await another.PostAsync(("/language", [new("language", "xx"), new("back", "https://elsewhere.example/")]));
        Assert.Equal("/c", another.Path);

        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper-ballots");
        Assert.Contains("Cochez une case par ligne.", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Tick one box in each line.", maker.Text, StringComparison.Ordinal);

        var cleo = await evening.TasterAsync("Cleo");
        await maker.GetAsync($"/trials/{evening.Trial.Value}/tasters/{cleo.Id.Value}");
        await maker.PressAsync(("language", "it"), ("name", "Cleo"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/paper-ballots");
        Assert.Contains("Segna una casella per riga.", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_phone_asks_for_is_the_language_until_somebody_chooses()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var path = (await evening.DoorAsync("Bruno")).Path;
        using var asked = await phone.FetchAsync(path, ("Accept-Language", "xx;q=0.9, pt-BR;q=0.8, en;q=0.5"));
        Assert.Contains("Damos-lhe as boas-vindas, Bruno.", System.Net.WebUtility.HtmlDecode(await asked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)), StringComparison.Ordinal);
    }

    /// <summary>The program's own two files beside a new resource file, built: nothing else says that there is another language.</summary>
    [Fact]
    public async Task Another_language_needs_a_file_and_no_code()
    {
        var folder = Directory.CreateTempSubdirectory("trier-language-");
        try
        {
            foreach (var file in Directory.EnumerateFiles(Folder)) File.Copy(file, Path.Combine(folder.FullName, Path.GetFileName(file)));
            var english = await File.ReadAllTextAsync(Path.Combine(Folder, "BallotWords.resx"), TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "BallotWords.nl.resx"), english.Replace("<value>English</value>", "<value>Nederlands</value>", StringComparison.Ordinal).Replace("<value>Welcome, {0}.</value>", "<value>Welkom, {0}.</value>", StringComparison.Ordinal), TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "Directory.Build.props"), "<Project />", TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "trier.csproj"), $"""
                <Project Sdk="Microsoft.NET.Sdk">
                  <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework><ImplicitUsings>enable</ImplicitUsings><Nullable>enable</Nullable><AssemblyName>trier</AssemblyName></PropertyGroup>
                  <ItemGroup>
                    <EmbeddedResource Update="BallotWords*.resx" LogicalName="Trier.Resources.%(Filename).resources" />
                    <Reference Include="{typeof(Trials.Plans.BallotPlan).Assembly.Location}" />
                  </ItemGroup>
                </Project>
                """, TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "Program.cs"), """
                using Trier.Resources;
                foreach (var language in BallotWords.Languages) Console.WriteLine($"{BallotWords.NameOf(language)}: {BallotWords.In(language.Name).Say("welcome.title", "Ada")}");
                """, TestContext.Current.CancellationToken);
            var said = await RunAsync(folder.FullName);
            Assert.Contains("Nederlands: Welkom, Ada.", said, StringComparison.Ordinal);
            Assert.Contains("Français: Bienvenue, Ada.", said, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<string> RunAsync(string folder)
    {
        var dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } named ? named : "dotnet";
        using var process = Process.Start(new ProcessStartInfo(dotnet, ["run", "--project", folder]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false, WorkingDirectory = folder })!;
        var said = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var failed = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return await said + await failed;
    }

    private static Dictionary<string, string> Texts(string language) =>
        new ResourceManager("Trier.Resources.BallotWords", typeof(BallotWords).Assembly)
            .GetResourceSet(language == "en" ? CultureInfo.InvariantCulture : CultureInfo.GetCultureInfo(language), createIfNotExists: true, tryParents: false)!
            .Cast<DictionaryEntry>().ToDictionary(entry => (string)entry.Key, entry => (string)entry.Value!, StringComparer.Ordinal);

    private static IEnumerable<string> Gaps(string text) => Gap().Matches(text).Select(match => match.Groups["number"].Value).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);

    [GeneratedRegex("\\{(?<number>[0-9]+)(:[^}]*)?\\}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Gap();
}
