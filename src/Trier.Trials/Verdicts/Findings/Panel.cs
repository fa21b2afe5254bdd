using System.Collections.Immutable;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>Which ballots the headline counts.</summary>
public enum MainCount
{
    /// <summary>Ballots that place every wheel.</summary>
    CompleteBallots,

    /// <summary>Ballots that place two wheels or more, places adjusted for what each was served.</summary>
    AllBallots,
}

/// <summary>Who counts.</summary>
/// <param name="Tasters">Everyone with a plate who tasted blind, those without a place included.</param>
/// <param name="Placing">Blind tasters who count by the plan and placed two wheels or more; where the rule is average liking, gave two or more a liking.</param>
/// <param name="Complete">Of these, how many placed, or liked, every wheel.</param>
/// <param name="Main">Which of the two the headline counts.</param>
/// <param name="Ballots">Ballots in the headline.</param>
/// <param name="Voices">Independent voices in the headline: tasters who compared notes are one. This is n.</param>
/// <param name="WithTies">Ballots of the headline that tie two wheels.</param>
/// <param name="KnewTheKey">Names of those who knew the key and placed wheels: shown apart, never tested.</param>
/// <param name="JuniorsApart">Names of juniors left out of the headline by plan.</param>
/// <param name="NoPlaces">Names of blind tasters who placed fewer than two wheels.</param>
public sealed record Panel(
    int Tasters,
    int Placing,
    int Complete,
    MainCount Main,
    long Ballots,
    long Voices,
    long WithTies,
    ImmutableArray<string> KnewTheKey,
    ImmutableArray<string> JuniorsApart,
    ImmutableArray<string> NoPlaces);
