using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.RankTests;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>What is shown, on the ladder.</summary>
/// <param name="Level">
/// 0 too few answers; 1 a tie; 2 luck explains it; 3 a hint; 4 not treated alike; 5 ahead of some; 6 ahead of all.
/// </param>
/// <param name="ShownOver">Ids of wheels the single leader is shown over.</param>
/// <param name="Open">Ids of the others against which it is open.</param>
/// <param name="Reason">At level 0, why nothing can be tested; else <see cref="NothingToTest.None"/>.</param>
/// <param name="Pieces">Where ballots fall into pieces nobody compared, the ids of each piece; else empty.</param>
public sealed record LevelFinding(
    int Level,
    ImmutableArray<string> ShownOver,
    ImmutableArray<string> Open,
    NothingToTest Reason,
    ImmutableArray<ImmutableArray<string>> Pieces);

/// <summary>Why nothing can be tested.</summary>
public enum NothingToTest
{
    /// <summary>It can.</summary>
    None,

    /// <summary>Fewer than two wheels were placed.</summary>
    TooFewWheels,

    /// <summary>Fewer than four independent voices.</summary>
    TooFewVoices,

    /// <summary>Every ballot ties everything.</summary>
    AllTied,

    /// <summary>The ballots fall into pieces that nobody compared.</summary>
    Pieces,
}

/// <summary>Is there any difference?</summary>
/// <param name="Statistic">Q; on complete ballots by average place Friedman's tie-corrected statistic.</param>
/// <param name="P">Chance of as much or more when every voice's wheels are shuffled.</param>
/// <param name="LeadLuck">Chance, in the same shuffles, that first and second end at least this far apart; null where it was not drawn.</param>
/// <param name="MeanCorrelation">Mean rank correlation between two tasters on the complete ballots; null with fewer than two.</param>
/// <param name="TieLuck">At level 1: how often luck alone ends in a tie for first with these ballots; else null.</param>
public sealed record GateFinding(double Statistic, PValue P, PValue? LeadLuck, double? MeanCorrelation, double? TieLuck);

/// <summary>Friedman's test on complete ballots, each ballot by itself.</summary>
/// <param name="Statistic">Tie-corrected.</param>
/// <param name="DegreesOfFreedom">Wheels less one.</param>
/// <param name="P">Exact or by shuffles.</param>
/// <param name="ChiSquareP">For the small print only.</param>
/// <param name="KendallW">Concordance; chance alone gives about 1/n.</param>
/// <param name="Ballots">How many ballots.</param>
public sealed record FriedmanFinding(double Statistic, int DegreesOfFreedom, PValue P, double ChiSquareP, double KendallW, long Ballots);

/// <summary>One pair of wheels.</summary>
/// <param name="Better">The wheel the ballots favour.</param>
/// <param name="Worse">The other.</param>
/// <param name="P">Exact two-sided sign-flip chance, unadjusted.</param>
/// <param name="Divisor">It is held against 0.05 over this.</param>
/// <param name="Shown">Whether it stands after the gate and every step before it.</param>
/// <param name="Gap">Mean gap in score units, 0 or more.</param>
/// <param name="GapInterval">90 % interval of the gap, or null.</param>
/// <param name="Preferring">Voices that favour Better, ties half.</param>
/// <param name="Voices">Voices that placed both.</param>
public sealed record PairFinding(
    string Better, string Worse, double P, int Divisor, bool Shown, double Gap, Interval? GapInterval, double Preferring, long Voices);
