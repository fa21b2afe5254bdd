using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.RankTests;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>What the order of serving did.</summary>
/// <param name="ByLiking">True where likings were looked at, false where places.</param>
/// <param name="Positions">Per position, first to last, how many answers there are and how far above (liking) or below (place) their wheel's and taster's usual they lie on average; positive is better.</param>
/// <param name="P">Chance of as much when the plates are dealt anew over the tasters.</param>
/// <param name="First">The same for what was served first.</param>
/// <param name="FirstInterval">Its 90 % interval; null with fewer than 3 tasters.</param>
/// <param name="FirstP">Chance of as much, for the first position alone.</param>
/// <param name="Mentioned">Whether the chance over all positions is at most 1 in 100.</param>
/// <param name="Best">Ids of the best wheels by these answers.</param>
/// <param name="BestWithout">The same once each position's average is taken out.</param>
public sealed record OrderFinding(
    bool ByLiking,
    ImmutableArray<PositionLine> Positions,
    PValue P,
    double First,
    Interval? FirstInterval,
    PValue FirstP,
    bool Mentioned,
    ImmutableArray<string> Best,
    ImmutableArray<string> BestWithout);

/// <summary>One position.</summary>
/// <param name="Answers">How many answers.</param>
/// <param name="Mean">How much better than usual on average.</param>
public sealed record PositionLine(int Answers, double Mean);

/// <summary>Whether the sittings saw the wheels differently.</summary>
/// <param name="P">Chance of as much when the sittings are dealt anew over the tasters.</param>
/// <param name="Apart">Whether that is at most 1 in 100: then the sittings are told one by one.</param>
/// <param name="Sittings">Every sitting.</param>
public sealed record SittingsFinding(PValue P, bool Apart, ImmutableArray<SittingLine> Sittings);

/// <summary>One sitting.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Ballots">Ballots that count in it.</param>
/// <param name="Leaders">Ids of its leaders by the planned rule.</param>
public sealed record SittingLine(int Number, int Ballots, ImmutableArray<string> Leaders);

/// <summary>What a panel of this size can show.</summary>
/// <param name="SmallestPreference">The ratio at which one favourite among equals would be shown 8 times in 10; null where no preference would.</param>
/// <param name="Panels">How many panels were drawn for it.</param>
public sealed record ReachFinding(double? SmallestPreference, int Panels);
