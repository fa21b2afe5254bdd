using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>How long salt takes to even out inside a wheel.</summary>
/// <param name="BetweenFaces">e-fold time from the faces to the middle height.</param>
/// <param name="FromRimToHeart">e-fold time from the rim to the axis; the slower for a flat wheel.</param>
public sealed record EveningTimes(TimeSpan BetweenFaces, TimeSpan FromRimToHeart);

/// <summary>Slowest modes without flux: L^2/(pi^2 D), L half the height, and R^2/(3.8317^2 D). Derived.</summary>
/// <remarks>Three e-folds leave 5 % of the difference. Source range met: 10 days to 4 months (read).</remarks>
public static class EveningOut
{
    private const double FirstZeroOfJ1 = 3.8317059702075125;

    /// <summary>The two e-fold times.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="diffusivity">D.</param>
    public static Outcome<EveningTimes> Of(WheelSize size, Diffusivity diffusivity)
    {
        var gate = new Gate().Check(BrineFields.Diffusivity, diffusivity.SquareMetresPerSecond * 1e10);
        if (gate.Shut) return gate.Refusal<EveningTimes>();
        var times = new EveningTimes(
            TimeSpan.FromSeconds(size.Height.Metres * size.Height.Metres / (4 * Math.PI * Math.PI * diffusivity.SquareMetresPerSecond)),
            TimeSpan.FromSeconds(size.Diameter.Metres * size.Diameter.Metres / (4 * FirstZeroOfJ1 * FirstZeroOfJ1 * diffusivity.SquareMetresPerSecond)));
        return gate.Answer(times, new Working(
            "Evening out of salt",
            "e-fold: (H/2)^2 / (pi^2 D) and R^2 / (3.8317^2 D)",
            [new("Height H", size.Height.Centimetres, "cm"), new("Diameter", size.Diameter.Centimetres, "cm"), new("D", diffusivity.SquareMetresPerSecond * 1e10, "1e-10 m2/s")],
            [new("Between the faces", times.BetweenFaces.TotalDays, "d"), new("From rim to heart", times.FromRimToHeart.TotalDays, "d")],
            Sources.Arithmetic)
        {
            LikelyError = "As wide as D: a factor of 2. Three e-folds leave 5 %.",
        });
    }
}
