using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Rennet;

/// <summary>When to cut, both counted.</summary>
/// <param name="FromRennet">Minutes from adding rennet to the cut.</param>
/// <param name="AfterFlocculation">Minutes still to wait after flocculation.</param>
public sealed record CutTime(TimeSpan FromRennet, TimeSpan AfterFlocculation);

/// <summary>The multiplier of a style.</summary>
/// <param name="Style">The style.</param>
/// <param name="Low">Low end; drier cheese.</param>
/// <param name="High">High end.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record FlocculationMultiplier(Style Style, double Low, double High, Status Status, string Source)
{
    /// <summary>The table; card: Tables/flocculation_multipliers.md.</summary>
    public static readonly Listed<FlocculationMultiplier> All = EmbeddedTable.Read("flocculation_multipliers", row => new FlocculationMultiplier(
        row.Word<Style>("style"), row.Number("low"), row.Number("high"), row.Word<Status>("status"), row.Text("source")));

    /// <summary>The multiplier of a style, or null.</summary>
    /// <param name="style">The style.</param>
    public static FlocculationMultiplier? Of(Style style) => All.FirstOrDefault(row => row.Style == style);
}

/// <summary>What the flocculation time says: when to cut, and the next dose.</summary>
public static class Flocculation
{
    /// <summary>t_cut = m t_floc, counted from rennet. Source [Forum], read and weak; that coagulation is about half of setting is [GuelphCheese], read.</summary>
    /// <param name="flocculation">Flocculation time.</param>
    /// <param name="multiplier">m, above 1.</param>
    public static Outcome<CutTime> Cut(TimeSpan flocculation, double multiplier)
    {
        var gate = new Gate().Check(RennetFields.Flocculation, flocculation.TotalMinutes).Check(RennetFields.Multiplier, multiplier);
        if (gate.Shut) return gate.Refusal<CutTime>();
        var cut = new CutTime(flocculation * multiplier, flocculation * (multiplier - 1));
        return gate.Answer(cut, new Working(
            "Cutting time",
            "t_cut = m t_floc, from rennet",
            [new("Flocculation t_floc", flocculation.TotalMinutes, "min"), new("Multiplier m", multiplier)],
            [new("Cut after rennet", cut.FromRennet.TotalMinutes, "min"), new("Wait after flocculation", cut.AfterFlocculation.TotalMinutes, "min")],
            Sources.Forum)
        {
            LikelyError = "Flocculation is read to about a minute, so the cut to about m minutes; check the break.",
            AlsoFrom = [Sources.GuelphCheese],
        });
    }

    /// <summary>dose2 = dose1 t1/t_wanted. Source [StorchSegelcke], memory; within a factor of 2, at the same pH and temperature.</summary>
    /// <param name="dose">The dose used.</param>
    /// <param name="seen">The flocculation time it gave.</param>
    /// <param name="wanted">The time wanted.</param>
    public static Outcome<Volume> NextDose(Volume dose, TimeSpan seen, TimeSpan wanted)
    {
        var gate = new Gate()
            .Check(RennetFields.RennetVolume, dose.Millilitres)
            .Check(RennetFields.Flocculation, seen.TotalMinutes)
            .Check(RennetFields.Flocculation, wanted.TotalMinutes);
        if (gate.Shut) return gate.Refusal<Volume>();
        var ratio = seen / wanted;
        if (ratio is < 0.5 or > 2)
        {
            gate.Refuse(ProblemKind.OutsideTheDomain, RennetFields.Flocculation, $"Flocculation time was {RennetFields.Flocculation.Show(seen.TotalMinutes)} where {Field.Number(wanted.TotalMinutes)} min is wanted; the rule holds within a factor of 2, so look for another cause (milk, temperature, pH, old rennet) first.");
            return gate.Refusal<Volume>();
        }

        return gate.Answer(dose * ratio, new Working(
            "Next rennet dose",
            "dose2 = dose1 t1 / t_wanted",
            [new("Dose used", dose.Millilitres, "mL"), new("Flocculation t1", seen.TotalMinutes, "min"), new("Wanted", wanted.TotalMinutes, "min")],
            [new("Next dose", (dose * ratio).Millilitres, "mL")],
            Sources.StorchSegelcke)
        {
            Domain = "Within a factor of 2, same pH and temperature",
            LikelyError = "About 10 %: flocculation is read to a minute.",
        });
    }
}
