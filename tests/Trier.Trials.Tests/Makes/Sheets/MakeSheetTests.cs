using CsCheck;
using Trier.Dairy.Eyes;
using Trier.Dairy.Milk;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Sheets;

public sealed class MakeSheetTests
{
    private static readonly VatDraft Day = new() { Litres = 20, ReadAtCelsius = 4, Fat = 3.6, Protein = 3.3, CaseinNumber = 0.788, Treatment = HeatTreatment.Raw };

    private static MakeSheet Sheet(RecipeDraft? recipe = null, VatDraft? day = null) =>
        MakeSheet.Of((recipe ?? Drafts.Plain).Read(), Vat.Read(day ?? Day, Species.Cow).Value);

    private static Figure One(MakeSheet sheet, string name) => Assert.Single(sheet.Figures, figure => figure.Name.StartsWith(name, StringComparison.Ordinal));

    // Source of the expected numbers: tests/Trier.Dairy.Tests/Checks/worked_examples.csv, ids R1, R4, C1.
    [Fact]
    public void Rennet_cut_and_starter_are_those_of_the_worked_examples()
    {
        var sheet = Sheet(Drafts.With(3, Drafts.Step("renneting", ("imcuPerLitre", 40), ("flocMinutes", 13), ("multiplier", 2.5))) with { });
        Assert.Equal(0.004, One(sheet, "Rennet").Value, 1e-9);
        Assert.Equal(32.5, One(sheet, "Cut after rennet").Value, 1e-9);
        Assert.Equal(1.0, One(sheet, "Mesophilic").Value / One(sheet, "Milk by weight").Value * 100, 1e-9);
    }

    // Id P2: 10 kg, lever 4, mould 14.5 cm gives 23.76 kPa; here the other way round.
    [Fact]
    public void The_weight_on_the_press_is_that_of_the_worked_example()
    {
        var sheet = Sheet(Drafts.With(7, Drafts.Step("press", ("kilopascals", 23.76), ("minutes", 360))), Day with { MouldCentimetres = 14.5, Lever = 4 });
        Assert.Equal(10, One(sheet, "Weight to hang on the lever").Value, 0.01);
        Assert.Equal(40, One(sheet, "Pressing on the wheel in all").Value, 0.04);
        Assert.Contains(sheet.Steps[7].Notes, note => note.Contains("they disagree widely", StringComparison.Ordinal));
    }

    // Ids C2b: 20 L at 1000 cfu/mL of a powder of 1e10 cfu/g is 2.0 mg, so 1.0 mL of 1 g in 500 mL; R5, R7b: the cap of calcium chloride.
    [Fact]
    public void Two_milligrams_of_propionic_culture_come_out_of_a_stock()
    {
        var sheet = Sheet(Drafts.With(1, new() { Kind = "add", What = "propionic culture", Per = "cfu/mL", Aims = [new("dose", 1000)] }));
        Assert.Equal(2e-6, One(sheet, "Propionic culture, powder").Value, 1e-12);
        Assert.Equal(0.001, One(sheet, "of a stock").Value, 1e-9);
        Assert.Equal("2 mg", One(sheet, "Propionic culture, powder").InWords(Notation.Plain));
    }

    [Fact]
    public void The_yield_is_the_general_form_times_what_home_vats_reach()
    {
        var sheet = Sheet();
        // By hand: (0.90 x 3.6 + 0.96 x 2.6004) x 1.09 / 0.57, factors of tomme from the table.
        var yield = ((0.90 * 3.6) + (0.96 * 3.3 * 0.788)) * 1.09 / 0.57;
        Assert.Equal(yield, One(sheet, "Yield").Value, 1e-9);
        var milk = One(sheet, "Milk by weight").Value;
        Assert.Equal(yield / 100 * milk * 0.94, One(sheet, "Wheel before brine").Value, 1e-9);
        Assert.Equal(20.65, milk, 0.05);
    }

    [Fact]
    public void Twice_the_milk_is_twice_of_everything_that_is_measured_out()
    {
        Gen.Double[3, 60].Select(Gen.Double[2.6, 5.5]).Sample((litres, fat) =>
        {
            var (one, two) = (Sheet(day: Day with { Litres = litres, Fat = fat }), Sheet(day: Day with { Litres = 2 * litres, Fat = fat }));
            foreach (var name in new[] { "Milk by weight", "Mesophilic", "Rennet", "Wheel before brine" })
                Assert.Equal(2, One(two, name).Value / One(one, name).Value, 1e-9);
        });
    }

    [Fact]
    public void Every_number_unfolds_to_formula_inputs_source_and_status()
    {
        foreach (var sheet in new[] { Sheet(), Sheet(day: Day with { Wheels = 3, CalciumSolution = 33, Fat = null }) })
        {
            Assert.True(sheet.Figures.Count() > 15);
            Assert.All(sheet.Figures, figure =>
            {
                Assert.NotEmpty(figure.Working.Formula);
                Assert.NotEmpty(figure.Working.Inputs);
                Assert.NotEmpty(figure.Working.Results);
                Assert.NotEmpty(figure.Working.Source.Text);
                Assert.True(figure.Low is null || (figure.Low <= figure.Value && figure.Value <= figure.High), figure.Name);
            });
        }
    }

    [Fact]
    public void Steps_follow_each_other_and_the_day_ends_before_the_brine()
    {
        var sheet = Sheet();
        Assert.Equal(TimeSpan.Zero, sheet.Steps[0].Starts);
        for (var i = 1; i < sheet.Steps.Length; i++) Assert.Equal(sheet.Steps[i - 1].Ends, sheet.Steps[i].Starts);
        Assert.Equal(TimeSpan.FromMinutes(35 + 45 + 42 + 15 + 30 + 360), sheet.VatDay);
    }

    [Fact]
    public void Expected_readings_stand_beside_the_published_table()
    {
        var gouda = (Drafts.Plain with { Style = "gouda" });
        var readings = Sheet(gouda).Readings;
        Assert.Equal([6.55, 6.5, 6.38, 5.4], readings.Select(reading => reading.Aim.Value));
        // Guelph table 16.1, Gouda: rennet 6.55, cut 6.45, demould 5.40; the table has no press.
        Assert.Equal([6.55, 6.45, null, 5.40], readings.Select(reading => reading.Table));
    }

    [Fact]
    public void Impossible_milk_is_refused_all_at_once_and_unusual_milk_is_asked_about()
    {
        var refused = Vat.Read(Day with { Litres = -3, Fat = 60, RennetStrength = 0, Wheels = 0 }, Species.Cow);
        Assert.Equal(["milk", "rennet-strength", "wheels", "fat"], refused.Problems.Select(problem => problem.Field));
        Assert.Equal("Volume of milk is -3 L; it must be above 0 and at most 100000 L (usual: 2 to 500 L).", refused.Problems[0].Sentence);
        Assert.Equal("Fat of the milk is 60 %; it must be at least 0 and at most 20 % (usual: 2.5 to 9 %).", refused.Problems[3].Sentence);
        Assert.Contains(Vat.Read(Day with { Fat = 12 }, Species.Cow).Value.Questions, question => question.Field == "fat");
        Assert.False(Vat.Read(Day with { Fat = double.NaN }, Species.Cow).Ok);
    }

    [Fact]
    public void What_was_not_given_is_said_to_be_an_average()
    {
        var sheet = Sheet(day: new() { Litres = 12 });
        Assert.Contains("The fat and protein and casein number of this milk were not given: the average of cow's milk stands in.", sheet.Questions);
    }

    [Theory]
    [InlineData(HeatTreatment.Raw)]
    [InlineData(HeatTreatment.Pasteurised)]
    [InlineData(HeatTreatment.Thermised)]
    [InlineData(HeatTreatment.NotSaid)]
    public void No_sheet_calls_anything_safe_and_every_sheet_names_law_and_milk(HeatTreatment treatment)
    {
        var lysozyme = Drafts.Plain with { Steps = Drafts.Plain.Steps.Insert(2, new() { Kind = "add", What = "lysozyme", Per = "g/L", Aims = [new("dose", 0.02)] }) };
        var sheet = Sheet(lysozyme, Day with { Treatment = treatment });
        Assert.All(sheet.Cautions, caution => Assert.DoesNotContain("safe", caution.Sentence, StringComparison.OrdinalIgnoreCase));
        Assert.Contains(sheet.Cautions, caution => caution.Sentence.Contains("aw", StringComparison.Ordinal) && caution.About == "milk");
        Assert.Contains(sheet.Cautions, caution => caution.Sentence.Contains("egg", StringComparison.Ordinal));
    }

    [Fact]
    public void Rich_sheep_milk_is_told_the_hotter_legal_pair()
    {
        var sheep = MakeSheet.Of((Drafts.Plain with { Milk = "sheep", Style = "other pressed" }).Read(), Vat.Read(new() { Litres = 10, Fat = 7.5, Protein = 6, Treatment = HeatTreatment.Pasteurised }, Species.Sheep).Value);
        Assert.Contains(sheep.Cautions, caution => caution.Sentence.Contains("66 °C held for 30 min", StringComparison.Ordinal));
        Assert.Contains("No yield factors of this style are known; those of washed-curd cheese stand in.", sheep.Questions);
    }

    [Fact]
    public void The_follower_lies_on_the_wheel_too_and_a_tall_stack_of_weights_is_warned_of()
    {
        var press = Drafts.With(7, Drafts.Step("press", ("kilopascals", 3), ("minutes", 360)));
        var levered = Sheet(press, Day with { MouldCentimetres = 15, Lever = 3, FollowerKilograms = 1.2 });
        // By hand: 3000 Pa on a disc of 15 cm is 5.406 kgf; less 1.2 kg of follower, a third of it hangs.
        Assert.Equal((5.406, 1.402), (Math.Round(One(levered, "Pressing on the wheel in all").Value, 3), Math.Round(One(levered, "Weight to hang on the lever").Value, 3)));
        Assert.DoesNotContain(levered.Steps[7].Notes, note => note.Contains("stacked", StringComparison.Ordinal));
        var stacked = Sheet(Drafts.With(7, Drafts.Step("press", ("kilopascals", 40), ("minutes", 360))), Day with { MouldCentimetres = 16, Wheels = 2 });
        Assert.Equal("Weight to put on, for each wheel", Assert.Single(stacked.Steps[7].Figures).Name);
        Assert.Contains(stacked.Steps[7].Notes, note => note.StartsWith("Weights stacked higher than some 25 kg fall", StringComparison.Ordinal));
    }

    [Fact]
    public void A_brine_time_that_misses_the_salt_says_so_with_the_time_that_would_fit()
    {
        RecipeDraft Brined(double minutes) => Drafts.With(8, Drafts.Step("brine", ("brinePercent", 20), ("minutes", minutes))) with { Cheese = [new("moisturePercent", 43), new("saltPercent", 0.8)] };
        var note = Assert.Single(Sheet(Brined(1200)).Steps[8].Notes, note => note.Contains("would fit", StringComparison.Ordinal));
        Assert.Matches(@"^The planned time gives about [0-9.]+ % of salt \([0-9.]+ to [0-9.]+ %\), ", note);
        Assert.Contains("more than the 0.8 % aimed at", note, StringComparison.Ordinal);
        var fits = One(Sheet(Brined(1200)), "Time for 0.8 % salt").Value;
        Assert.DoesNotContain(Sheet(Brined(Math.Round(fits))).Steps[8].Notes, other => other.Contains("aimed at", StringComparison.Ordinal));
    }

    [Fact]
    public void A_wheel_with_propionic_culture_is_told_whether_it_can_make_eyes()
    {
        var eyed = Drafts.Plain with
        {
            Style = "swiss",
            Cheese = [new("moisturePercent", 38), new("warmRoomDays", 21), new("warmRoomCelsius", 20)],
            Steps = Drafts.Plain.Steps.Insert(2, new() { Kind = "add", What = "propionic culture", Per = "cfu/mL", Aims = [new("dose", 1000)] }),
        };
        Assert.Null(Sheet().Wheel.Eyes);
        Assert.NotEqual(EyesPossible.Likely, Sheet(eyed).Wheel.Eyes!.Verdict);
        Assert.True(Sheet(eyed).Wheel.Eyes!.SizeDecides);
        // Of a wheel of 80 kg and more the source has eyes: the usual figures must leave room for them.
        Assert.InRange(One(Sheet(eyed, Day with { Litres = 1000, MouldCentimetres = 90 }), "Room for eyes").Value, 3, 22);
        var (small, large) = (One(Sheet(eyed), "Room for eyes"), One(Sheet(eyed, Day with { Litres = 400, MouldCentimetres = 50 }), "Room for eyes"));
        Assert.True(large.High > small.High, "a larger wheel keeps more gas");
    }

    // The cook begins 5 min after cutting: 32 to 45 °C in 30 min is 0.433 °C/min, where the first ten minutes ask for 0.2.
    [Fact]
    public void A_cook_that_begins_soon_after_the_cut_is_asked_about_though_it_is_a_long_one()
    {
        var fast = Sheet(Drafts.With(5, Drafts.Step("cook", ("celsius", 45), ("minutes", 30))));
        Assert.Contains(fast.Steps[5].Notes, note => note.Contains("from the cut on is faster than 0.2 °C/min", StringComparison.Ordinal));
        Assert.Empty(Sheet().Steps[5].Notes);
    }
}
