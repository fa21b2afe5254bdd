using Trier.Dairy.Acidity;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Rennet;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests.Workings;

public sealed class ProblemTests
{
    [Fact]
    public void Negative_milk_is_refused_by_name_and_range() => Refused(
        RennetDose.ByActivity(Volume.FromLitres(-3), RennetLevel.FromImcuPerLitre(40), RennetStrength.FromImcuPerMillilitre(200)),
        "milk-volume",
        "Volume of milk is -3 L; it must be above 0 and at most 100000 L (usual: 2 to 500 L).");

    [Fact]
    public void A_pH_of_15_is_refused_by_name_and_range() => Refused(
        PhRates.Between(new PhReading(TimeSpan.Zero, Ph.FromValue(15)), new PhReading(TimeSpan.FromHours(1), Ph.FromValue(6))),
        "ph",
        "pH is 15; it must be at least 0 and at most 14 (usual: 4.6 to 6.9).");

    [Fact]
    public void Milk_of_60_per_cent_fat_is_refused_by_name_and_range() => Refused(
        MilkComposition.Create(Share.FromPercent(60), Share.FromPercent(3)),
        "milk-fat",
        "Fat of the milk is 60 %; it must be at least 0 and at most 20 % (usual: 2.5 to 9 %).");

    [Fact]
    public void A_flocculation_of_0_is_refused_by_name_and_range() => Refused(
        Flocculation.Cut(TimeSpan.Zero, 3),
        "flocculation",
        "Flocculation time is 0 min; it must be above 0 and at most 300 min (usual: 8 to 25 min).");

    [Fact]
    public void All_problems_of_an_input_are_told_at_once()
    {
        var outcome = RennetDose.ByActivity(Volume.FromLitres(0), RennetLevel.FromImcuPerLitre(-1), RennetStrength.FromImcuPerMillilitre(0));
        Assert.False(outcome.TryAnswer(out _, out var problems));
        Assert.Equal(["milk-volume", "rennet-level", "rennet-strength"], problems.Select(problem => problem.Field.Key));
    }

    [Fact]
    public void The_unusual_but_possible_gets_an_answer_and_a_question()
    {
        var answer = Flocculation.Cut(TimeSpan.FromMinutes(45), 3).OrThrow();
        Assert.Equal(135, answer.Value.FromRennet.TotalMinutes, 1e-9);
        Assert.Equal("Flocculation time is 45 min, where 8 to 25 min is usual: is that right?", Assert.Single(answer.Questions).Sentence);
    }

    [Fact]
    public void The_next_dose_is_refused_beyond_a_factor_of_two()
    {
        Assert.False(Flocculation.NextDose(Volume.FromMillilitres(4), TimeSpan.FromMinutes(40), TimeSpan.FromMinutes(13)).TryAnswer(out _, out var problems));
        Assert.Equal(ProblemKind.OutsideTheDomain, Assert.Single(problems).Kind);
    }

    [Fact]
    public void Results_compare_by_value()
    {
        Assert.Equal(Flocculation.Cut(TimeSpan.FromMinutes(13), 2.5), Flocculation.Cut(TimeSpan.FromMinutes(13), 2.5));
        Assert.NotEqual(Flocculation.Cut(TimeSpan.FromMinutes(13), 2.5), Flocculation.Cut(TimeSpan.FromMinutes(14), 2.5));
    }

    private static void Refused<T>(Outcome<T> outcome, string field, string sentence)
    {
        Assert.False(outcome.TryAnswer(out _, out var problems));
        var problem = Assert.Single(problems);
        Assert.Equal(field, problem.Field.Key);
        Assert.Equal(sentence, problem.Sentence);
    }
}
