using Trier.Statistics.ChoiceModels;
using Trier.Statistics.RankTests;

namespace Trier.Trials.Verdicts;

/// <summary>How much work a verdict may take, in counts and never in time, so that the same record gives the same verdict on every machine.</summary>
/// <param name="Tests">Work of every test.</param>
/// <param name="Chances">Draws for the chances of being the favourite.</param>
/// <param name="MostChanceWork">Steps of arithmetic beyond which the chances are left out: ties of many wheels double them with every wheel.</param>
/// <param name="Panels">Panels drawn to say what a panel of this size can show; 0 leaves that out.</param>
/// <param name="Redraws">Panels redrawn from these ballots to say how steady the lead is, 99 or more, down to 999 of them for a crowd of thousands; 0 leaves that out.</param>
/// <param name="TastePanels">Panels drawn to hold two tastes against one; 0 leaves that out.</param>
public sealed record JudgingEffort(Effort Tests, SamplingEffort Chances, double MostChanceWork, int Panels, int Redraws, int TastePanels)
{
    /// <summary>What pages and commands use; the most is about a minute of one core.</summary>
    public static JudgingEffort Usual { get; } = new(Effort.Usual, SamplingEffort.Usual, 2e10, 1_000, 9_999, 999);
}
