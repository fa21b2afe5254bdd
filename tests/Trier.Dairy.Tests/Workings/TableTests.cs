using Trier.Dairy.Acidity;
using Trier.Dairy.Brine;
using Trier.Dairy.Composition;
using Trier.Dairy.Heating;
using Trier.Dairy.Milk;
using Trier.Dairy.Pressing;
using Trier.Dairy.Quantities;
using Trier.Dairy.Rennet;
using Trier.Dairy.Safety;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests.Workings;

public sealed class TableTests
{
    [Fact]
    public void Every_table_is_read_whole()
    {
        Assert.Equal(4, TypicalMilk.All.Count);
        Assert.Equal(6, StandardisingTarget.All.Count);
        Assert.Equal(4, RennetLevelGuide.All.Count);
        Assert.Equal(10, FlocculationMultiplier.All.Count);
        Assert.Equal(29, PhMilestone.All.Count);
        Assert.Equal(6, CultureGuide.All.Count);
        Assert.Equal(4, CookingGuide.All.Count);
        Assert.Equal(14, PressingCase.All.Count);
        Assert.Equal(8, SaltDiffusivity.All.Count);
        Assert.Equal(6, SaltTarget.All.Count);
        Assert.Equal(5, DrySaltingGuide.All.Count);
        Assert.Equal(7, LegalPair.All.Count);
        Assert.Equal(30, StandardOfIdentity.All.Count);
    }

    [Fact]
    public void The_pressing_cases_keep_the_disagreement_of_their_sources()
    {
        var highest = PressingCase.All.Max(row => row.To.Kilopascals);
        var lowest = PressingCase.All.Min(row => row.From.Kilopascals);
        Assert.True(highest / lowest > 100);
    }

    [Fact]
    public void Two_cooking_guides_of_one_style_stand_side_by_side() =>
        Assert.Equal(2, CookingGuide.All.Count(guide => guide.Style == Style.Swiss));

    [Fact]
    public void Evening_out_from_rim_to_heart_is_the_slower_for_a_flat_wheel()
    {
        var size = WheelSize.Create(Length.FromCentimetres(16), Length.FromCentimetres(8)).OrThrow().Value;
        var times = EveningOut.Of(size, Diffusivity.FromSquareMetresPerSecond(2.3e-10)).OrThrow().Value;
        Assert.Equal(21.9, times.FromRimToHeart.TotalDays, 0.1);
        Assert.True(times.FromRimToHeart > times.BetweenFaces);
    }

    [Fact]
    public void Heating_20_kg_of_milk_from_4_to_32_degrees_takes_about_2_2_megajoules_and_the_band_follows_the_stove()
    {
        // Specific heat of milk near 3.9 kJ/(kg K), a textbook figure (from memory, unverified): 20 x 3.9 x 28 = 2184 kJ.
        var need = MilkHeat.Need(
            TypicalMilk.Of(Species.Cow).Milk,
            Mass.FromKilograms(20),
            Temperature.FromCelsius(4),
            Temperature.FromCelsius(32),
            Power.FromWatts(2000),
            Estimate.Between(0.4, 0.6, 0.8)).OrThrow().Value;
        Assert.Equal(2184, need.Energy.Kilojoules, 45.0);
        Assert.Equal(need.Energy.Joules / 1200, need.Time.Likely.TotalSeconds, 1e-3);
        Assert.Equal(2, need.Time.High / need.Time.Low, 1e-6);
    }

    [Fact]
    public void Every_estimate_shows_its_error_in_its_working()
    {
        var size = WheelSize.Create(Length.FromCentimetres(16), Length.FromCentimetres(8)).OrThrow().Value;
        Working[] workings =
        [
            BriningTime.Plan(size, Mass.FromKilograms(1.74), Share.FromPercent(40), Share.FromPercent(20), Share.FromPercent(1.2), SaltDiffusivity.Of(Style.Alpine).Value).OrThrow().Working,
            RennetDose.Adjusted(Volume.FromMillilitres(4), Temperature.FromCelsius(33), 6).OrThrow().Working,
            DrySalting.Of(Mass.FromKilograms(5), Share.FromPercent(2.5)).OrThrow().Working,
            PredictedYield.General(Share.FromPercent(3.2), Share.FromPercent(2.6), Share.FromPercent(37), YieldFactors.Of(Style.Alpine)!).OrThrow().Working,
            EveningOut.Of(size, Diffusivity.FromSquareMetresPerSecond(2.3e-10)).OrThrow().Working,
        ];
        Assert.All(workings, working => Assert.False(string.IsNullOrEmpty(working.LikelyError), working.Title));
        Assert.All(workings, working => Assert.NotEmpty(working.Inputs));
        Assert.All(workings, working => Assert.NotEmpty(working.Results));
    }
}
