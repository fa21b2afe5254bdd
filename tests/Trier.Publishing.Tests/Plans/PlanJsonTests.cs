using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Trier.Publishing.Plans;
using Trier.TestKit;
using Trier.Trials.Plans;

namespace Trier.Publishing.Tests.Plans;

public sealed class PlanJsonTests
{
    private const string Small = """{ "trierPlan": 1, "question": "Which?", "wheels": [ { "name": "A" }, { "name": "B" } ] }""";

    [Fact]
    public void The_handbook_s_example_is_read_as_it_stands()
    {
        var page = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "handbook", "plan-json.md"));
        var example = string.Join('\n', page.Split('\n').SkipWhile(line => line != "    {").TakeWhile(line => line.StartsWith("    ", StringComparison.Ordinal)));
        var outline = Read(example).Value;
        Assert.Equal(("Thistle or calf?", 14, 2.0, 150, new DateOnly(2026, 8, 30), true), (outline.Title, outline.Tasters, outline.Preference, outline.AgeDays!.Value, outline.Day!.Value, outline.Invented));
        Assert.Equal(["House", "Thistle", "House 2"], outline.Wheels.Select(wheel => wheel.Name));
        Assert.Equal(["House", "Thistle", "House"], outline.Wheels.Select(wheel => wheel.Recipe));
        Assert.Equal("the old jar", outline.Wheels[2].Facts["starter"]);
    }

    [Fact]
    public void What_is_missing_has_its_usual_value()
    {
        var outline = Read(Small).Value;
        Assert.Equal((14, 2.0, true, false), (outline.Tasters, outline.Preference, outline.JuniorsCount, outline.Invented));
        Assert.IsType<CountingRule.AveragePlace>(outline.Rule);
        Assert.Null(outline.Day);
        Assert.Equal("A", outline.Wheels[0].Recipe);
    }

    [Fact]
    public void Every_fault_is_told_at_once_by_its_field()
    {
        var faults = Read("""
            { "trierPlan": 2, "tasters": 1.5, "preference": "two", "rule": "best", "day": "30/08/2026", "ageDays": 0, "servedTwice": "C", "colour": "red", "juniorsCount": "yes",
              "wheels": [ { "name": "A", "made": "2026-02-31", "smell": "x" }, { "name": "a" }, 3, { "recipe": 4 } ] }
            """).Problems;
        Assert.Equal(
            ["ageDays", "colour", "day", "juniorsCount", "preference", "question", "rule", "servedTwice", "tasters", "trierPlan", "wheels[1].made", "wheels[1].smell", "wheels[2].name", "wheels[3]", "wheels[4].name", "wheels[4].recipe"],
            faults.Select(fault => fault.Field).Order(StringComparer.Ordinal));
        Assert.All(faults, fault => Assert.EndsWith(".", fault.Sentence, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("""{ "trierPlan": 1, "question": "Which?", "wheels": [ { "name": "A" } ] }""", "wheels")]
    [InlineData("""{ "trierPlan": 1, "question": "Which?" }""", "wheels")]
    [InlineData("""{ "trierPlan": 1, "question": "Which?", "rule": "place points", "points": [1, 2], "wheels": [ { "name": "A" }, { "name": "B" } ] }""", "points")]
    [InlineData("""{ "trierPlan": 1, "question": "Which?", "rule": "place points", "wheels": [ { "name": "A" }, { "name": "B" } ] }""", "points")]
    [InlineData("""{ "trierPlan": 1, "question": "Which?", "rule": "place points", "points": [1e20, 0], "wheels": [ { "name": "A" }, { "name": "B" } ] }""", "points")]
    [InlineData("""{ "trierPlan": 1, "question": "Which?", "rule": "place points", "points": [1.0004, 1], "wheels": [ { "name": "A" }, { "name": "B" } ] }""", "points")]
    [InlineData("""{ "trierPlan": 1, "question": "Which?", "tasters": 500, "wheels": [ { "name": "A" }, { "name": "B" } ] }""", "tasters")]
    [InlineData("[]", "file")]
    [InlineData("{", "file")]
    [InlineData("", "file")]
    public void One_fault_alone_names_its_field(string json, string field) => Assert.Equal(field, Assert.Single(Read(json).Problems).Field);

    [Fact]
    public void Place_points_need_one_for_each_wheel()
    {
        var outline = Read("""{ "trierPlan": 1, "question": "Which?", "rule": "place points", "points": [2, 0.5], "wheels": [ { "name": "A" }, { "name": "B" } ] }""").Value;
        Assert.Equal([2m, 0.5m], Assert.IsType<CountingRule.PlacePoints>(outline.Rule).Weights);
    }

    [Fact]
    public void Bytes_that_are_no_text_and_large_files_are_refused()
    {
        Assert.False(PlanJson.Read(new byte[] { 0xff, 0xfe, 0x00 }).Ok);
        Assert.Equal("file", PlanJson.Read(new byte[PlanJson.LargestFile + 1]).Problems[0].Field);
    }

    [Fact]
    public void The_answer_holds_every_figure_and_says_the_same_twice()
    {
        var review = PlanReview.Of(Read(Small).Value).Deepen(100, null, TestContext.Current.CancellationToken);
        var written = PlanReviewJson.Write(review);
        Assert.Equal(written, PlanReviewJson.Write(PlanReview.Of(Read(Small).Value).Deepen(100, null, TestContext.Current.CancellationToken)));
        using var json = JsonDocument.Parse(written);
        Assert.Equal(6, json.RootElement.GetProperty("smallestPanel").GetInt32());
        var points = json.RootElement.GetProperty("panels").GetProperty("curves")[0].GetProperty("points");
        Assert.Equal(5, points.GetArrayLength());
        Assert.InRange(points[0].GetProperty("right").GetDouble(), 0, 1);
        Assert.InRange(points[0].GetProperty("shownError").GetDouble(), 0, 0.06);
        Assert.DoesNotMatch(new Regex("significan|prove|no difference|confiden", RegexOptions.IgnoreCase, TimeSpan.FromSeconds(1)), written);
    }

    private static Trier.Trials.Common.Outcome<TrialOutline> Read(string json) => PlanJson.Read(Encoding.UTF8.GetBytes(json));
}
