using System.Collections.Immutable;
using Trier.Trials.Tastings;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>One wheel's counts.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Firsts">Ballots that place it first, alone or shared.</param>
/// <param name="FirstsShared">Of these, how many share the first place.</param>
/// <param name="Lasts">Ballots that place it last, alone or shared.</param>
/// <param name="LastsShared">Of these, how many share the last place.</param>
/// <param name="Ballots">Ballots that place it.</param>
/// <param name="RankSum">Sum of its mid-places.</param>
/// <param name="AveragePlace">Average place, adjusted where ballots differ in what they place; null without a ballot.</param>
/// <param name="PlacePoints">Place points by <paramref name="Weights"/>.</param>
/// <param name="Weights">Points of the first place, the second and so on.</param>
/// <param name="MeanLiking">Mean liking from 1 to 9 over all blind tasters who gave one; null where nobody did.</param>
/// <param name="Likings">How many gave one.</param>
public sealed record TallyLine(
    string Id,
    long Firsts,
    long FirstsShared,
    long Lasts,
    long LastsShared,
    long Ballots,
    double RankSum,
    double? AveragePlace,
    double PlacePoints,
    ImmutableArray<decimal> Weights,
    double? MeanLiking,
    int Likings);

/// <summary>One wheel against another.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Other">The other.</param>
/// <param name="Above">Ballots that place it above the other.</param>
/// <param name="Ties">Ballots that tie the two.</param>
/// <param name="Below">Ballots that place it below the other.</param>
public sealed record HeadToHeadFinding(string Id, string Other, long Above, long Ties, long Below);

/// <summary>The orders nearest to all ballots (Kemeny 1959).</summary>
/// <param name="Distance">Pairwise disagreements summed over the ballots, ties half.</param>
/// <param name="Agreement">Pairwise agreements summed over the ballots, ties half.</param>
/// <param name="Optima">How many orders reach it.</param>
/// <param name="Orders">At most 24 of them, ids best first.</param>
public sealed record KemenyFinding(double Distance, double Agreement, long Optima, ImmutableArray<ImmutableArray<string>> Orders);

/// <summary>One wheel's average place counted both ways.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Complete">Average place on the complete ballots; null without one.</param>
/// <param name="Adjusted">Average place on all ballots that place two wheels or more, adjusted for what each placed; null without one.</param>
public sealed record PlaceLine(string Id, double? Complete, double? Adjusted);

/// <summary>Whether a ballot counts in the headline.</summary>
public enum StripStanding
{
    /// <summary>Counts in the headline.</summary>
    Counted,

    /// <summary>Places too few wheels for the headline; counts where all ballots are counted.</summary>
    Partial,

    /// <summary>Not blind, or a junior left out by plan: shown apart.</summary>
    Apart,

    /// <summary>Places fewer than two wheels.</summary>
    NoPlaces,
}

/// <summary>One ballot to be shown.</summary>
/// <param name="Id">The taster's id.</param>
/// <param name="Name">The taster's name.</param>
/// <param name="Standing">Whether it counts.</param>
/// <param name="Role">Blind or not.</param>
/// <param name="Marks">Marks of the day.</param>
/// <param name="Remarks">Quiet marks in words.</param>
/// <param name="Taste">What the taster declared before tasting, or null.</param>
/// <param name="Voice">Same number: compared notes; else null.</param>
/// <param name="Groups">Ids of wheels, best first, tied inside a group; repeats taken out.</param>
/// <param name="Below">Ids of wheels left together below the placed ones.</param>
/// <param name="NotPlaced">Ids of wheels that count and stand nowhere on this ballot.</param>
public sealed record BallotStrip(
    string Id,
    string Name,
    StripStanding Standing,
    VoterRole Role,
    VoterMarks Marks,
    ImmutableArray<string> Remarks,
    DeclaredTaste? Taste,
    int? Voice,
    ImmutableArray<ImmutableArray<string>> Groups,
    ImmutableArray<string> Below,
    ImmutableArray<string> NotPlaced);
