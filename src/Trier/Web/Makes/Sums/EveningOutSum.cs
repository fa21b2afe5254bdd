using System.Collections.Immutable;
using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;
using Trier.Trials.Makes.Sheets;

namespace Trier.Web.Makes.Sums;

/// <summary>How long salt takes to even out in a wheel.</summary>
internal sealed class EveningOutSum : BenchSum
{
    // Three e-folds leave e^-3, a twentieth.
    private const double EFolds = 3;

    public override string Key => "evening-out";

    public override string Name => "Salt evening out in a wheel";

    public override string Answers => "how many days until the heart is nearly as salty as the rind";

    public override ImmutableArray<SumGroup> Groups =>
    [
        new("",
        [
            SumField.Number("diameter", "Diameter", BrineFields.Diameter),
            SumField.Number("height", "Height", BrineFields.Height),
            WheelEntries.Style,
            SumField.Number("own", "or your own figure", BrineFields.Diffusivity with { Unit = "10⁻¹⁰ m²/s" }, mayBeEmpty: true, hint: "from the sum below"),
        ]),
    ];

    public override void Work(SumWork work)
    {
        if (work.Size("diameter", "height") is not { } size) return;
        var spread = work.Has("own") ? Estimate.Exactly(Diffusivity.FromSquareMetresPerSecond(work["own"] * 1e-10)) : work.Table().Value;
        var (likely, fast, slow) = (work.Take(EveningOut.Of(size, spread.Likely), "own"), work.Take(EveningOut.Of(size, spread.High), "own"), work.Take(EveningOut.Of(size, spread.Low), "own"));
        if (likely is null || fast is null || slow is null) return;
        void Say(string name, Func<EveningTimes, TimeSpan> of) => work.Say(new(name, Measure.Time, EFolds * of(likely.Value).TotalMinutes, likely.Working, EFolds * of(fast.Value).TotalMinutes, EFolds * of(slow.Value).TotalMinutes));
        Say("Between the faces and the middle", times => times.BetweenFaces);
        Say("Between the rim and the heart", times => times.FromRimToHeart);
        work.Notes.Add("Then a twentieth of the first difference is left; the times in the working leave a little over a third.");
    }
}
