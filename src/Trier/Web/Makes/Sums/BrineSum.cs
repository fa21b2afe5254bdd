using System.Collections.Immutable;
using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Trials.Makes.Sheets;

namespace Trier.Web.Makes.Sums;

/// <summary>Salt that mends a brine, or salt and water that top it up.</summary>
internal sealed class BrineSum : BenchSum
{
    public override string Key => "brine";

    public override string Name => "Mending a brine";

    public override string Answers => "how much salt brings it back, how much salt and water tops it up";

    public override string Mind =>
        "Salt does not clean a brine. How long one may be kept is no matter of its strength: its history is on the shelf, and one that held raw-milk or faulty wheels is boiled before others go in.";

    public override ImmutableArray<SumGroup> Groups =>
    [
        new("",
        [
            SumField.Number("brine", "Brine there is", BrineFields.BrineVolume),
            SumField.Number("at", "It is at", BrineFields.Temperature, 15),
            SumField.Number("strength", "Its strength", BrineFields.Strength, mayBeEmpty: true, hint: "by weight of salt"),
            SumField.Number("baume", "or a hydrometer’s °Bé", BrineFields.Baume with { Unit = "" }, mayBeEmpty: true, hint: "at 15 °C"),
            SumField.Number("wanted", "Strength wanted", BrineFields.Strength, 20),
            SumField.Number("volume", "Brine wanted", BrineFields.BrineVolume, mayBeEmpty: true, hint: "empty: only mend it"),
        ]),
    ];

    public override void Work(SumWork work)
    {
        if (work.Has("strength") == work.Has("baume"))
        {
            work.Refuse("strength", "Give either the strength or what the hydrometer shows, one of the two.");
            return;
        }

        var read = work.Has("baume") ? work.Take(BrineDensity.StrengthOfBaume(work["baume"]), "baume") : null;
        if (work.Problems.Count > 0) return;
        var (strength, at, wanted) = (read?.Value ?? Share.FromPercent(work["strength"]), Temperature.FromCelsius(work["at"]), Share.FromPercent(work["wanted"]));
        if (read is not null) work.Say(new("Strength by the hydrometer", Measure.Percent, strength.Percent, read.Working));
        if (work.Take(BrineBatch.Make(Volume.FromLitres(work["brine"]), strength, at), "brine") is not { Value: var there } made) return;
        if (work.Has("volume")) TopUp(work, there, wanted, at);
        else if (work.Take(there.Mend(wanted), "wanted") is { } mend)
        {
            var working = mend.Working with { Parts = [made.Working] };
            if (mend.Value.Grams >= 1) work.Say(new("Salt to add", Measure.Mass, mend.Value.Kilograms, working));
            else work.Say("Salt to add", "none: it is as strong as you want it, or stronger", working);
        }

        if (read is not null) work.Notes.Add("Used brine reads 1 to 2 °Bé high from whey, so it is weaker than this says.");
    }

    private static void TopUp(SumWork work, BrineBatch there, Share wanted, Temperature at)
    {
        if (work.Take(BrineBatch.Make(Volume.FromLitres(work["volume"]), wanted, at), "volume") is not { Value: var whole }) return;
        if (work.Take(there.TopUp(whole.Total, wanted), "volume") is not { Value: var more } topped) return;
        work.Say(new("Salt to add", Measure.Mass, more.Salt.Kilograms, topped.Working));
        work.Say(new("Water to add", Measure.Mass, more.Water.Kilograms, topped.Working));
    }
}
