using CsCheck;
using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests.Brine;

public sealed class BriningTests
{
    private static readonly WheelSize Wheel = Size(16, 8);

    [Fact]
    public void The_salt_a_wheel_gains_is_the_salt_the_brine_loses() =>
        Gen.Double[10, 22].Select(Gen.Double[1, 48], Gen.Double[5, 50], Gen.Double[0, 2.4]).Sample((strength, hours, litres, ratio) =>
        {
            var brine = BrineBatch.Make(Volume.FromLitres(litres), Share.FromPercent(strength), Temperature.FromCelsius(12)).OrThrow().Value;
            var salt = BriningTime.SaltAfter(Wheel, Share.FromPercent(42), brine.Strength, TimeSpan.FromHours(hours), SaltDiffusivity.Of(Style.Alpine).Value).OrThrow().Value.Likely;
            var taken = Mass.FromKilograms(1.74) * salt.Fraction;
            var after = brine.After(taken, taken * ratio).OrThrow().Value;
            return Math.Abs((brine.Salt - after.Salt - taken).Kilograms) < 1e-9
                && Math.Abs((after.Total - brine.Total + taken - (taken * ratio)).Kilograms) < 1e-9
                && after.Strength < brine.Strength;
        });

    [Fact]
    public void Mending_restores_the_strength_and_topping_up_reaches_mass_and_strength() =>
        Gen.Double[12, 19].Select(Gen.Double[20, 24], Gen.Double[1.3, 3]).Sample((weak, strong, larger) =>
        {
            var brine = BrineBatch.Make(Volume.FromLitres(10), Share.FromPercent(weak), Temperature.FromCelsius(15)).OrThrow().Value;
            var salt = brine.Mend(Share.FromPercent(strong)).OrThrow().Value;
            var mended = new BrineBatch(brine.Salt + salt, brine.Water);
            var added = brine.TopUp(brine.Total * larger, Share.FromPercent(strong)).OrThrow().Value;
            var full = new BrineBatch(brine.Salt + added.Salt, brine.Water + added.Water);
            return Math.Abs(mended.Strength.Percent - strong) < 1e-9
                && Math.Abs(full.Strength.Percent - strong) < 1e-9
                && Math.Abs((full.Total / brine.Total) - larger) < 1e-9;
        });

    [Fact]
    public void A_hydrometer_reading_gives_back_the_strength() =>
        Gen.Double[0.5, 26].Sample(percent =>
        {
            var baume = BrineDensity.Baume(Share.FromPercent(percent)).OrThrow().Value;
            return Math.Abs(BrineDensity.StrengthOfBaume(baume).OrThrow().Value.Percent - percent) < 1e-6;
        });

    [Fact]
    public void More_salt_takes_longer_and_a_larger_wheel_takes_longer() =>
        Gen.Double[0.5, 1.5].Select(Gen.Double[1.05, 1.4]).Sample((salt, more) =>
            Likely(Wheel, salt * more) > Likely(Wheel, salt) && Likely(Size(20, 10), salt) > Likely(Wheel, salt));

    [Fact]
    public void The_fitted_diffusivity_is_the_one_that_made_the_wheels() =>
        Gen.Double[0.7, 5].Sample(d =>
        {
            var truth = Diffusivity.FromSquareMetresPerSecond(d * 1e-10);
            Listed<SaltedWheel> wheels = [Made(Size(12, 6), 8), Made(Wheel, 12), Made(Size(24, 10), 30)];
            var fit = DiffusivityFit.Of(wheels).OrThrow().Value;
            return Math.Abs((fit.Likely / truth) - 1) < 1e-5 && fit.Low < truth && fit.High > truth;

            SaltedWheel Made(WheelSize size, double hours)
            {
                var time = TimeSpan.FromHours(hours);
                var salt = BriningTime.SaltAfter(size, Share.FromPercent(40), Share.FromPercent(20), time, Estimate.Exactly(truth)).OrThrow().Value.Likely;
                return new SaltedWheel(size, Share.FromPercent(40), Share.FromPercent(20), time, Estimate.Between(salt * 0.95, salt, salt * 1.05));
            }
        });

    [Fact]
    public void Saturated_brine_gets_the_rule_and_a_question_but_no_time_by_diffusion()
    {
        var answer = BriningTime.Plan(Wheel, Mass.FromKilograms(1.74), Share.FromPercent(40), Share.FromPercent(26), Share.FromPercent(1.2), SaltDiffusivity.Of(Style.Gouda).Value).OrThrow();
        Assert.Null(answer.Value.ByDiffusion);
        Assert.True(answer.Value.ByRule > TimeSpan.FromHours(11));
        Assert.Contains(answer.Questions, question => question.Sentence.Contains("22 %", StringComparison.Ordinal));
    }

    [Fact]
    public void The_rule_of_thumb_and_diffusion_part_for_a_larger_wheel_and_it_is_said()
    {
        var large = BriningTime.Plan(Size(24, 10), Mass.FromKilograms(4.89), Share.FromPercent(40), Share.FromPercent(20), Share.FromPercent(1.2), SaltDiffusivity.Of(Style.Gouda).Value).OrThrow();
        Assert.True(large.Value.TheyPart);
        Assert.Contains(large.Questions, question => question.Sentence.Contains("rule of thumb", StringComparison.Ordinal));
        var small = BriningTime.Plan(Size(12, 6), Mass.FromKilograms(0.73), Share.FromPercent(40), Share.FromPercent(20), Share.FromPercent(1.2), SaltDiffusivity.Of(Style.Gouda).Value).OrThrow();
        Assert.False(small.Value.TheyPart);
    }

    [Fact]
    public void Salt_beyond_what_the_brine_can_bring_is_refused()
    {
        var refused = BriningTime.Plan(Wheel, Mass.FromKilograms(1.74), Share.FromPercent(40), Share.FromPercent(5), Share.FromPercent(3), SaltDiffusivity.Of(Style.Gouda).Value);
        Assert.False(refused.TryAnswer(out _, out var problems));
        Assert.Equal("salt-wanted", Assert.Single(problems).Field.Key);
    }

    private static TimeSpan Likely(WheelSize size, double salt) =>
        BriningTime.Plan(size, Mass.FromKilograms(2), Share.FromPercent(42), Share.FromPercent(20), Share.FromPercent(salt), Estimate.Exactly(Diffusivity.FromSquareMetresPerSecond(2.3e-10))).OrThrow().Value.ByDiffusion!.Value.Likely;

    private static WheelSize Size(double diameter, double height) =>
        WheelSize.Create(Length.FromCentimetres(diameter), Length.FromCentimetres(height)).OrThrow().Value;
}
