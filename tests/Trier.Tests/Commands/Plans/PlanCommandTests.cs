using System.Text;
using System.Text.Json;

namespace Trier.Tests.Commands.Plans;

/// <summary><c>trier plan</c>, started as a user starts it.</summary>
public sealed class PlanCommandTests
{
    private static readonly byte[] Plan = Encoding.UTF8.GetBytes("""
        { "trierPlan": 1, "title": "Thistle or calf?", "question": "Which of our ways do members like best at about five months?", "day": "2025-08-30", "ageDays": 150, "tasters": 14, "servedTwice": "House", "invented": true,
          "wheels": [
            { "name": "House", "recipe": "House", "made": "2025-03-15", "milk": "sheep's, 10 L", "size": "1.94 kg" },
            { "name": "Thistle", "recipe": "Thistle", "made": "2025-03-22", "milk": "sheep's, 10 L", "size": "1.90 kg", "coagulant": "cardoon" },
            { "name": "House 2", "recipe": "House", "made": "2025-04-12", "milk": "sheep's, 10 L", "size": "1.99 kg" },
            { "name": "Old Hot", "recipe": "Hot", "made": "2024-02-24", "milk": "sheep's, 9 L", "size": "1.66 kg", "additives": "lysozyme" },
            { "name": "Cardoon again", "recipe": "Thistle", "milk": "sheep's, 10 L" } ] }
        """);

    [Fact]
    public async Task A_plan_is_told_within_eighty_columns()
    {
        var (code, output, error) = await Started.RunAsync(Plan, "plan", "-", "--panels", "200");
        Assert.Equal((0, ""), (code, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.StartsWith("Thistle or calf?     30/08/2025     an invented trial\n", output, StringComparison.Ordinal);
        Assert.Contains("[553 days]", output, StringComparison.Ordinal);
        Assert.Contains("tied together", output, StringComparison.Ordinal);
        Assert.Contains("* Leave Old Hot out, for a tasting of its own.", output, StringComparison.Ordinal);
        Assert.Contains("   14 *", output, StringComparison.Ordinal);
        Assert.Contains("02/04/2025 Cardoon again, 150 days old on the day", output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', output);
    }

    [Fact]
    public async Task Json_is_the_same_every_time()
    {
        var (code, output, _) = await Started.RunAsync(Plan, "plan", "-", "--panels", "100", "--json");
        Assert.Equal(0, code);
        Assert.Equal(output, (await Started.RunAsync(Plan, "plan", "-", "--panels", "100", "--json")).Output);
        using var json = JsonDocument.Parse(output);
        Assert.Equal("House", json.RootElement.GetProperty("differences").GetProperty("comparedWith").GetString());
    }

    [Fact]
    public async Task Faults_come_all_at_once_and_nothing_is_planned()
    {
        var (code, output, error) = await Started.RunAsync("{ \"trierPlan\": 1, \"tasters\": 1, \"wheels\": [] }"u8.ToArray(), "plan", "-");
        Assert.Equal((1, ""), (code, output));
        Assert.Equal(4, error.TrimEnd().Split('\n').Length);
        Assert.EndsWith("Nothing was planned.", error.TrimEnd(), StringComparison.Ordinal);
        Assert.Equal(2, (await Started.RunAsync(Plan, "plan", "-", "--panels", "5")).Code);
        Assert.Equal(1, (await Started.RunAsync(null, "plan", "nowhere.json")).Code);
    }
}
