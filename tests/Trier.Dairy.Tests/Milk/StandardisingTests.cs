using CsCheck;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;

namespace Trier.Dairy.Tests.Milk;

public sealed class StandardisingTests
{
    private static readonly Gen<(double Fat, double Protein, double Mass, double Ratio)> Cases =
        Gen.Double[2.5, 8].Select(Gen.Double[2.8, 6], Gen.Double[5, 400], Gen.Double[0.7, 1.5], (fat, protein, mass, ratio) => (fat, protein, mass, ratio));

    [Fact]
    public void Fat_protein_and_mass_are_kept_and_the_ratio_is_reached() =>
        Cases.Sample(entry =>
        {
            var milk = MilkComposition.Create(Share.FromPercent(entry.Fat), Share.FromPercent(entry.Protein)).OrThrow().Value;
            var mass = Mass.FromKilograms(entry.Mass);
            foreach (var outcome in new[]
                     {
                         Standardising.WithSkim(milk, mass, entry.Ratio, Share.FromPercent(0.05)),
                         Standardising.WithCream(milk, mass, entry.Ratio, Share.FromPercent(35)),
                         Standardising.ToFat(milk, mass, Share.FromPercent(3), Share.FromPercent(0.05)),
                     })
            {
                if (!outcome.TryAnswer(out var answer, out _)) continue;
                var plan = answer.Value;
                var sign = plan.Step is StandardisingStep.AddSkim or StandardisingStep.AddCream ? 1 : -1;
                var gain = plan.Stream.Mass * sign;
                Assert.Equal((mass + gain).Kilograms, plan.Result.Mass.Kilograms, 1e-9);
                Assert.Equal(((mass * milk.Fat.Fraction) + (plan.Stream.FatMass * sign)).Kilograms, plan.Result.FatMass.Kilograms, 1e-9);
                Assert.Equal(((mass * milk.Protein.Fraction) + (plan.Stream.ProteinMass * sign)).Kilograms, plan.Result.ProteinMass.Kilograms, 1e-9);
            }

            var skim = Standardising.WithSkim(milk, mass, entry.Ratio, Share.FromPercent(0.05));
            if (skim.TryAnswer(out var reached, out _)) Assert.Equal(entry.Ratio, reached.Value.ProteinToFat, 1e-9);
        });

    [Fact]
    public void Too_fat_a_milk_gets_skim_or_loses_cream_and_too_lean_a_milk_gets_cream()
    {
        var fat = MilkComposition.Create(Share.FromPercent(4), Share.FromPercent(3.3)).OrThrow().Value;
        var lean = MilkComposition.Create(Share.FromPercent(2.6), Share.FromPercent(3.3)).OrThrow().Value;
        var mass = Mass.FromKilograms(20);
        Assert.Equal(StandardisingStep.AddSkim, Standardising.WithSkim(fat, mass, 1.1, Share.FromPercent(0.05)).OrThrow().Value.Step);
        Assert.Equal(StandardisingStep.RemoveCream, Standardising.WithCream(fat, mass, 1.1, Share.FromPercent(35)).OrThrow().Value.Step);
        Assert.Equal(StandardisingStep.AddCream, Standardising.WithCream(lean, mass, 1.1, Share.FromPercent(35)).OrThrow().Value.Step);
    }

    [Fact]
    public void A_square_keeps_the_component_and_refuses_what_lies_outside_it()
    {
        Gen.Double[3, 8].Select(Gen.Double[1, 2.9]).Sample((rich, target) =>
        {
            var second = PearsonSquare.SecondStream(Mass.FromKilograms(50), Share.FromPercent(rich), Share.FromPercent(0.1), Share.FromPercent(target)).OrThrow().Value;
            var content = ((50 * rich) + (second.Kilograms * 0.1)) / (50 + second.Kilograms);
            return Math.Abs(content - target) < 1e-9;
        });
        Assert.False(PearsonSquare.SecondStream(Mass.FromKilograms(50), Share.FromPercent(4), Share.FromPercent(0.1), Share.FromPercent(5)).TryAnswer(out _, out var problems));
        Assert.Contains("between", Assert.Single(problems).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Milk_gets_lighter_as_it_warms_and_the_two_densities_meet_near_20_degrees()
    {
        var milk = MilkComposition.Create(Share.FromPercent(3.8), Share.FromPercent(3.4)).OrThrow().Value;
        double At(double celsius) => MilkDensity.Of(milk, Temperature.FromCelsius(celsius)).OrThrow().Value.KilogramsPerLitre;
        double[] warming = [0, 4, 10, 15, 20, 20.001, 25, 30, 38];
        Assert.All(warming.Zip(warming.Skip(1)), pair => Assert.True(At(pair.Second) < At(pair.First)));
        Assert.InRange(At(20) - At(20.001), 0, 0.002);
    }
}
