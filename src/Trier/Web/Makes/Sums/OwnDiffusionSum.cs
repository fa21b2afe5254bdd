using System.Collections.Immutable;
using Trier.Dairy.Brine;
using Trier.Dairy.Composition;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Web.Makes.Sums;

/// <summary>The maker's own figure of how fast salt goes in, from wheels weighed or tested.</summary>
internal sealed class OwnDiffusionSum : BenchSum
{
    private const int Wheels = 4;
    private static readonly (string Key, string Name)[] Needed = [("diameter", "diameter"), ("height", "height"), ("moisture", "moisture"), ("strength", "strength of its brine"), ("hours", "time in brine")];

    public override string Key => "own-salt";

    public override string Name => "How fast salt goes into your cheese";

    public override string Answers => "your own figure, from wheels you weighed or tested";

    public override string Mind => "Salt found by a test is worth far more than weights: from the loss in brine alone the salt is known to a factor of 2, and the figure goes with its square. Several wheels help.";

    public override ImmutableArray<SumGroup> Groups =>
    [
        .. Enumerable.Range(1, Wheels).Select(wheel => new SumGroup(
            $"Wheel {wheel}",
            [
                Entry("diameter", "Diameter", BrineFields.Diameter),
                Entry("height", "Height", BrineFields.Height),
                Entry("moisture", "Moisture of the cheese", CompositionFields.Moisture),
                Entry("strength", "Strength of the brine", BrineFields.Strength, "22 at most"),
                Entry("hours", "In the brine", BrineFields.Hours, "48 at most"),
                Entry("salt", "Salt found", BrineFields.SaltWanted, "or both weights"),
                Entry("before", "Weight before", CompositionFields.CheeseMass),
                Entry("after", "Weight after, dripped dry", CompositionFields.CheeseMass),
            ],
            wheel > 1)).Select((group, index) => group with { Fields = [.. group.Fields.Select(entry => entry with { Key = $"{entry.Key}-{index + 1}" })] }),
    ];

    public override void Work(SumWork work)
    {
        var wheels = Enumerable.Range(1, Wheels).Where(row => row == 1 || Groups[row - 1].Fields.Any(field => work.Has(field.Key))).Select(row => Wheel(work, row)).ToList();
        if (work.Problems.Count > 0) return;
        if (work.Take(DiffusivityFit.Of([.. wheels.OfType<(SaltedWheel Wheel, Working? Loss)>().Select(read => read.Wheel)]), "salt-1") is not { Value: var own } answer) return;
        var losses = wheels.OfType<(SaltedWheel Wheel, Working? Loss)>().Select(read => read.Loss).OfType<Working>();
        string Ten(Diffusivity value) => work.Units.Number(value.SquareMetresPerSecond * 1e10, "0.0");
        var band = own.IsExact ? Ten(own.Likely) : $"about {Ten(own.Likely)} ({Ten(own.Low)} to {Ten(own.High)})";
        work.Say("Salt spreads at", $"{band} · 10⁻¹⁰ m²/s", answer.Working with { Parts = [.. answer.Working.Parts, .. losses] });
        work.Notes.Add($"Put {Ten(own.Likely)} into “Salt evening out in a wheel” for wheels of this kind. Tables have 1 to 3.5 for most pressed cheese.");
    }

    private static SumField Entry(string key, string label, Trier.Dairy.Workings.Field ranges, string? hint = "") => SumField.Number(key, label, ranges, hint: hint, mayBeEmpty: true);

    private static (SaltedWheel Wheel, Working? Loss)? Wheel(SumWork work, int row)
    {
        string At(string key) => $"{key}-{row}";
        foreach (var (key, name) in Needed.Where(entry => !work.Has(At(entry.Key))))
            work.Refuse(At(key), $"Wheel {row} has no {name}.");
        var weighed = work.Has(At("before")) && work.Has(At("after"));
        if (!work.Has(At("salt")) && !weighed) work.Refuse(At("salt"), $"Wheel {row} needs the salt found, or its weight before and after the brine.");
        if (work.Problems.Count > 0) return null;
        if (work.Size(At("diameter"), At("height")) is not { } size) return null;
        SaltedWheel Salted(Estimate<Share> salt) => new(size, Share.FromPercent(work[At("moisture")]), Share.FromPercent(work[At("strength")]), TimeSpan.FromHours(work[At("hours")]), salt);
        // A test of the salt is worth more than the weights, so it counts where both are given.
        if (work.Has(At("salt"))) return (Salted(Estimate.Exactly(Share.FromPercent(work[At("salt")]))), null);
        var after = Mass.FromKilograms(work[At("after")]);
        return work.Take(DiffusivityFit.SaltFromLoss(Mass.FromKilograms(work[At("before")]), after), At("after")) is { Value: var taken } loss
            ? (Salted(Estimate.Between(Share.FromFraction(taken.Low / after), Share.FromFraction(taken.Likely / after), Share.FromFraction(taken.High / after))), loss.Working)
            : null;
    }
}
