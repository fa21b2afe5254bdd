using System.Collections.Immutable;
using Trier.Dairy.Acidity;
using Trier.Dairy.Quantities;

namespace Trier.Web.Makes.Sums;

/// <summary>Titratable acidity from a titration, or from one unit to the others.</summary>
internal sealed class AciditySum : BenchSum
{
    public override string Key => "acidity";

    public override string Name => "Titratable acidity";

    public override string Answers => "from a titration, or from one unit into the others";

    public override ImmutableArray<SumGroup> Groups =>
    [
        new("A titration",
        [
            SumField.Number("sample", "Sample", AcidityFields.SampleVolume, hint: "9 is common", mayBeEmpty: true),
            SumField.Number("alkali", "Alkali to the first pink", AcidityFields.AlkaliVolume, hint: "", mayBeEmpty: true),
            SumField.Number("normality", "Strength of the alkali", AcidityFields.Normality, 0.1),
        ]),
        new("Or a number you have",
        [
            SumField.Number("value", "Acidity", AcidityFields.Acidity with { Unit = "", Highest = 1000, UsuallyFrom = 0, UsuallyTo = 1000 }, mayBeEmpty: true),
            SumField.Choice("unit", "in", ("sh", "°SH, Soxhlet-Henkel"), ("d", "°D, Dornic"), ("th", "°Th, Thörner"), ("percent", "% lactic acid")),
        ]),
    ];

    public override void Work(SumWork work)
    {
        var titrated = work.Has("sample") || work.Has("alkali");
        if (titrated == work.Has("value"))
        {
            work.Refuse("sample", "Give either a titration, sample and alkali, or a number you have.");
            return;
        }

        if (titrated && !work.Has("sample")) work.Refuse("sample", "The sample is missing.");
        if (titrated && !work.Has("alkali")) work.Refuse("alkali", "The alkali is missing.");
        if (work.Problems.Count > 0) return;
        var outcome = titrated
            ? TitratableAcid.Of(Volume.FromMillilitres(work["sample"]), Volume.FromMillilitres(work["alkali"]), work["normality"])
            : TitratableAcid.Known(Given(work["value"], work.Chosen("unit")));
        if (work.Take(outcome, titrated ? "sample" : "value") is not { Value: var acidity } answer) return;
        string Number(double value, string format) => work.Units.Number(value, format);
        work.Say("Acidity", $"{Number(acidity.DegreesSoxhletHenkel, "0.0")} °SH = {Number(acidity.DegreesDornic, "0.0")} °D = {Number(acidity.DegreesThoerner, "0.0")} °Th = {Number(acidity.PercentLactic, "0.000")} % lactic acid", answer.Working);
        work.Notes.Add("Fresh cheese milk mostly has 6 to 7.4 °SH. The per cent are grams in 100 mL.");
    }

    private static TitratableAcidity Given(double value, string unit) => unit switch
    {
        "d" => TitratableAcidity.FromDegreesDornic(value),
        "th" => TitratableAcidity.FromDegreesThoerner(value),
        "percent" => TitratableAcidity.FromPercentLactic(value),
        _ => TitratableAcidity.FromDegreesSoxhletHenkel(value),
    };
}
