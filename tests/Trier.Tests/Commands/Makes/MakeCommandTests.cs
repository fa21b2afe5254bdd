using System.Text;
using Trier.Publishing.Recipes;
using Trier.Trials.Makes.Recipes;

namespace Trier.Tests.Commands.Makes;

/// <summary>The vat's commands, started as a user starts them. Expected numbers: tests/Trier.Dairy.Tests/Checks/worked_examples.csv, ids in the comments.</summary>
public sealed class MakeCommandTests
{
    [Theory]
    // R1
    [InlineData("4 mL of rennet (3/4 tsp, 8 % too little), in 10 to 20 times as much cold water without chlorine.", "rennet", "--milk", "20L")]
    // R1c
    [InlineData("1.33 mL of rennet", "rennet", "--milk", "20L", "--strength", "600")]
    // R4, R4b
    [InlineData("Cut 32.5 min after rennet, 19.5 min after flocculation", "rennet", "--floc", "13", "--multiplier", "2.5")]
    // R9
    [InlineData("5.54 mL of rennet next time", "rennet", "--floc", "18min", "--wanted", "13", "--used", "4mL")]
    // B4
    [InlineData("1.84 kg of salt in 7.35 kg of water make 8 L of 20 % brine.", "brine", "--volume", "8L", "--at", "20C")]
    // D12, 16 x 8 cm: 5.9 h and the rule's 12.1 h
    [InlineData("About 5.89 h (3.87 to 13.55 h) for 1.2 % salt; the rule of an hour a pound an inch says 12.06 h.", "brine", "--wheel", "16x8cm", "--salt", "1.2", "--style", "gouda")]
    // M10, M10b
    [InlineData("Add 6.51 kg of skim of 0.05 % fat: 26.51 kg of milk with 3.03 % fat, protein to fat 1.1.", "standardise", "--milk", "20kg", "--fat", "4", "--to-ratio", "1.10")]
    // M11
    [InlineData("Take off 0.6066 kg of cream of 35 % fat", "standardise", "--milk", "20kg", "--fat", "4,0", "--to-ratio", "1.10", "--cream", "35")]
    // P2, P2b, P2c
    [InlineData("23.75 kPa, which is 3.45 psi or 0.2422 kgf/cm2.", "press", "--weight", "10kg", "--lever", "4", "--mould", "14.5cm")]
    // P6
    [InlineData("25.6 kg on 16 cm press as 10 kg on 10 cm.", "press", "--weight", "10kg", "--mould", "10cm", "--other-mould", "16cm")]
    [InlineData("10 kg (22.04 lb) give 23.75 kPa.", "press", "--pressure", "3.4450psi", "--lever", "4", "--mould", "5.708661in")]
    // E5b, E10: 1.69 % of lactic acid and a loss of a third leave an 80 kg wheel its eyes; a kilogram loses what it makes; 0.9 % makes less than dissolves in any wheel
    [InlineData("Eyes are unlikely: room for 0 % of holes (0 to 0 %); a wheel of this size loses its gas", "eyes-possible", "--wheel", "14x5cm")]
    [InlineData("Eyes are unlikely: room for 0 % of holes (0 to 0 %); so little gas is made", "eyes-possible", "--wheel", "80x15cm", "--lactic", "0.7")]
    [InlineData("It may go either way: room for 3.11 % of holes", "eyes-possible", "--wheel", "80x15cm", "--days", "45")]
    public async Task The_answer_stands_in_the_first_line_and_its_working_below(string first, params string[] arguments)
    {
        var (code, output, error) = await Started.RunAsync(null, arguments);
        Assert.Equal((0, ""), (code, error));
        var lines = output.ReplaceLineEndings("\n").Split('\n');
        Assert.StartsWith(first, lines[0], StringComparison.Ordinal);
        Assert.Contains(lines, line => line.StartsWith("  from ", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.StartsWith("  source ", StringComparison.Ordinal) && line.Contains('('));
    }

    [Theory]
    [InlineData("Volume of milk is -2 L; it must be above 0 and at most 100000 L (usual: 2 to 500 L).", "rennet", "--milk", "-2L")]
    [InlineData("Flocculation time is 0 min; it must be above 0 and at most 300 min (usual: 8 to 25 min).", "rennet", "--floc", "0")]
    [InlineData("Strength of the brine is 40 %; it must be above 0 and at most 26.5 % (usual: 16 to 23 %).", "brine", "--volume", "8L", "--strength", "40")]
    [InlineData("Fat of the milk is 60 %; it must be at least 0 and at most 20 % (usual: 2.5 to 9 %).", "make-sheet", "tomme", "--milk", "12L", "--fat", "60")]
    [InlineData("There is no file emmental.json, and no recipe of that name ships; those are alpine, alpine-with-propionic, cheddared, sheep-pressed, tomme, washed-curd.", "make-sheet", "emmental.json", "--milk", "12L")]
    public async Task Impossible_input_ends_with_1_and_one_sentence(string sentence, params string[] arguments)
    {
        var (code, output, error) = await Started.RunAsync(null, arguments);
        Assert.Equal((1, ""), (code, output));
        Assert.Equal(sentence, error.Trim());
    }

    [Theory]
    [InlineData("rennet")]
    [InlineData("brine", "--litres", "4")]
    [InlineData("rennet", "--milk", "5x")]
    [InlineData("brine", "--wheel", "16", "--salt", "1")]
    [InlineData("press", "--mould", "14cm")]
    [InlineData("make-sheet", "tomme")]
    [InlineData("make-sheet", "tomme", "--milk", "12L", "--treatment", "boiled")]
    public async Task A_wrong_command_ends_with_2_and_points_to_its_help(params string[] arguments)
    {
        var (code, output, error) = await Started.RunAsync(null, arguments);
        Assert.Equal((2, ""), (code, output));
        Assert.EndsWith($"“trier {arguments[0]} --help” says what it takes.", error.Trim(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_holds_amounts_times_readings_and_what_to_mind_within_eighty_columns()
    {
        var (code, output, error) = await Started.RunAsync(null, "make-sheet", "alpine-with-propionic", "--milk", "20L", "--fat", "3.6", "--treatment", "raw", "--start", "09:00", "--lever", "4");
        Assert.Equal((0, ""), (code, error));
        Assert.All(output.ReplaceLineEndings("\n").Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains("Propionic culture, powder: 2 mg", output, StringComparison.Ordinal);
        Assert.Contains(" 5  10:10      Add the rennet: 40 IMCU/L, flocculation 16 min, times 2.5, 32 °C", output, StringComparison.Ordinal);
        Assert.Contains("Raw milk can carry germs", output, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", output, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Every_number_of_a_sheet_is_explained_on_demand_and_a_recipe_comes_from_a_pipe()
    {
        var recipe = Encoding.UTF8.GetBytes(RecipeJson.Write(ShippedRecipes.Named("cheddared")!));
        var (code, output, error) = await Started.RunAsync(recipe, "make-sheet", "-", "--milk", "5gal", "--units", "us", "--workings");
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("Milk: 5 gal [1]", output, StringComparison.Ordinal);
        var explained = output[output.IndexOf("How each number came about", StringComparison.Ordinal)..];
        for (var number = 1; output.Contains($"[{number}]", StringComparison.Ordinal); number++) Assert.Contains($"\n[{number}] ", explained.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains("the same by Van Slyke and Price", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_faulty_recipe_file_has_every_fault_told_with_its_place()
    {
        var broken = ShippedRecipes.Named("tomme")!.ToDraft();
        broken = broken with { Name = "", Steps = broken.Steps.SetItem(0, new StepDraft { Kind = "heat", Aims = [new("celsius", 400)] }) };
        var json = $$"""{ "trierRecipe": 1, "name": "", "style": "tomme", "milk": "cow", "cheese": { "moisturePercent": 43 }, "steps": [ { "kind": "heat", "celsius": 400 }, { "kind": "cut" } ] }""";
        var (code, _, error) = await Started.RunAsync(Encoding.UTF8.GetBytes(json), "make-sheet", "-", "--milk", "12L");
        Assert.Equal(1, code);
        Assert.Equal(3, error.Trim().Split('\n').Length);
        Assert.Contains("steps[1].celsius: Temperature is 400 °C", error, StringComparison.Ordinal);
        Assert.False(Recipe.Read(broken).Ok);
    }

    [Fact]
    public async Task Help_lists_the_vat_s_commands()
    {
        var (code, output, _) = await Started.RunAsync(null, "help");
        Assert.Equal(0, code);
        Assert.All(new[] { "make-sheet", "rennet", "standardise", "press", "brine", "eyes-possible" }, word => Assert.Contains($"  {word} ", output, StringComparison.Ordinal));
    }
}
