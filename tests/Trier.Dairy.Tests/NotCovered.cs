namespace Trier.Dairy.Tests;

/// <summary>Rows of the worked examples that no computation of this library answers, with the reason.</summary>
public static class NotCovered
{
    private const string Stereology = "stereology of a cut face: belongs to eye measurement from photos";
    private const string Tempering = "warming of samples before a tasting: belongs to serving";
    private const string Servings = "sample masses and counts: belong to the serving plan";

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
        ["T0"] = Tempering,
        ["T0b"] = Tempering,
        ["T0c"] = Tempering,
        ["T0d"] = Tempering,
        ["T1"] = Tempering,
        ["T1bi"] = Tempering,
        ["T1b"] = Tempering,
        ["T1c"] = Tempering,
        ["T1d"] = Tempering,
        ["T2bi"] = Tempering,
        ["T2"] = Tempering,
        ["T2b"] = Tempering,
        ["T2c"] = Tempering,
        ["T2d"] = Tempering,
        ["T3b1"] = Tempering,
        ["T3"] = Tempering,
        ["T4"] = Tempering,
        ["T5"] = Servings,
        ["T5b"] = Servings,
        ["T5c"] = Servings,
        ["T6"] = Servings,
        ["E4b"] = "a unit change of a published figure (2.5 x 13.5 mmol/kg), no computation",
    };

    public static string? ReasonFor(string id) => Reasons.GetValueOrDefault(id);
}
