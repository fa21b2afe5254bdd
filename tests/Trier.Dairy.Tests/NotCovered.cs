namespace Trier.Dairy.Tests;

/// <summary>Rows of the worked examples that no computation of this library answers, with the reason.</summary>
public static class NotCovered
{
    private const string Stereology = "stereology of a cut face: belongs to eye measurement from photos, not built";
    private const string Series = "warming of pieces too thick for one temperature throughout: no code computes the series solution, the serving page says that larger pieces are slower inside";
    private const string Thermal = "conductivity and heat capacity from composition: the serving plan holds them as constants";
    private const string InTrials = "checked in Trier.Trials.Tests, Tastings/Serving/WorkedServingTests";

    public static readonly IReadOnlyDictionary<string, string> Reasons = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["S3.1"] = Stereology,
        ["S3.2"] = Stereology,
        ["S3.3"] = Stereology,
        ["S3.4"] = Stereology,
        ["S3.5"] = Stereology,
        ["S3t"] = Stereology,
        ["S4"] = Stereology,
        ["S4b"] = Stereology,
        ["S5"] = Stereology,
        ["S6"] = Stereology,
        ["S6b"] = Stereology,
        ["S7"] = Stereology,
        ["S7b"] = Stereology,
        ["S8"] = Stereology,
        ["S8b"] = Stereology,
        ["S9.1"] = Stereology,
        ["S9.2"] = Stereology,
        ["S9.3"] = Stereology,
        ["S9.4"] = Stereology,
        ["S9.5"] = Stereology,
        ["T0"] = Thermal,
        ["T0c"] = Thermal,
        ["T0d"] = Thermal,
        ["T1"] = InTrials,
        ["T1bi"] = Series,
        ["T1b"] = InTrials,
        ["T1c"] = InTrials,
        ["T1d"] = InTrials,
        ["T2bi"] = Series,
        ["T2"] = Series,
        ["T2b"] = Series,
        ["T2c"] = Series,
        ["T2d"] = Series,
        ["T3b1"] = Series,
        ["T3"] = Series,
        ["T4"] = Series,
        ["T5"] = InTrials,
        ["T5b"] = InTrials,
        ["T5c"] = InTrials,
        ["T6"] = "grams for all guests: the serving plan counts whole cubes, not grams",
        ["E4b"] = "a unit change of a published figure (2.5 x 13.5 mmol/kg), no computation",
    };

    public static string? ReasonFor(string id) => Reasons.GetValueOrDefault(id);
}
