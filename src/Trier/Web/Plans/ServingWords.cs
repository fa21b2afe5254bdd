using Trier.Trials.Plans;

namespace Trier.Web.Plans;

/// <summary>How samples reach the tasters, in words.</summary>
internal static class ServingWords
{
    /// <summary>What is not the usual way; empty where all is.</summary>
    public static string Of(ServingRules? rules) => rules is null ? "" : string.Join(' ', new[]
    {
        rules.AsTheyCome ? "Plates carry numbers, and whoever comes gets the next one." : "",
        rules.OwnCodes ? "Every plate has codes of its own." : "",
        rules.SamplesEach is { } each ? $"A taster gets {each} samples." : "",
        rules.WarmUp is { Length: > 0 } warmUp ? $"Everybody begins with a warm-up sample: {warmUp}." : "",
    }.Where(sentence => sentence.Length > 0));
}
