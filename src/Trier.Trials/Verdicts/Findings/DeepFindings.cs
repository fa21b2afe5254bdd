using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.RankTests;
using Trier.Trials.Tastings;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>What takes longer than a page should wait for: computed once from the record and kept.</summary>
/// <param name="Variants">What happens to leader and level when something is counted another way.</param>
/// <param name="Chances">Each wheel's chance of being the crowd's favourite; null where nothing can be tested.</param>
/// <param name="Camps">Whether those who like milder and those who like stronger cheese parted; null where too few said.</param>
/// <param name="Loved">Whether some wheel is loved and hated beyond luck; null where nothing can be tested.</param>
/// <param name="Order">What the order of serving did; null where it is not recorded or cannot be told.</param>
/// <param name="Sittings">Whether the sittings parted; null where there was one.</param>
/// <param name="Reach">What a panel of this size can show; null where that was not worked out.</param>
/// <param name="Steady">How steady the lead is among these same ballots; null where nothing can be tested.</param>
/// <param name="Tastes">Whether the ballots look like two tastes by a model; null with fewer than 20 voices.</param>
public sealed record DeepFindings(
    ImmutableArray<Variant> Variants,
    ChanceFinding? Chances,
    CampsFinding? Camps,
    LovedFinding? Loved,
    OrderFinding? Order,
    SittingsFinding? Sittings,
    ReachFinding? Reach,
    SteadyFinding? Steady,
    TastesFinding? Tastes);

/// <summary>
/// Chances of being the crowd's favourite by one stated model: Plackett-Luce, log-worths normal with a spread that is half-normal with
/// scale <paramref name="PriorScale"/>.
/// </summary>
/// <param name="PriorScale">Scale of the prior.</param>
/// <param name="Wheels">Every wheel, in the order of the verdict's wheels.</param>
/// <param name="EffectiveSize">Effective number of draws.</param>
/// <param name="RHat">Largest split R-hat: at most 1.01 where the chains agree.</param>
/// <param name="InCamps">The same within each camp, where camps are parted; else empty.</param>
public sealed record ChanceFinding(double PriorScale, ImmutableArray<WheelChance> Wheels, double EffectiveSize, double RHat, ImmutableArray<CampChances> InCamps)
{
    /// <summary>Whether there are enough draws and the chains agree.</summary>
    public bool Settled => EffectiveSize >= 2_000 && RHat <= 1.01;

    /// <summary>The wheel with the highest chance.</summary>
    public WheelChance Best => Wheels.MaxBy(wheel => wheel.Chance)!;

    /// <summary>The chance of one wheel.</summary>
    /// <param name="id">Its id.</param>
    public WheelChance Of(string id) => Wheels.First(wheel => wheel.Id == id);
}

/// <summary>One wheel's chance.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Chance">Chance that its worth is the highest, 0 to 1.</param>
/// <param name="Error">Monte Carlo standard error of <paramref name="Chance"/>.</param>
/// <param name="FavouriteShare">How large a share of the crowd would put it first, posterior mean.</param>
/// <param name="LogWorth">Central 90 % of its log-worth, all log-worths centred to sum 0.</param>
public sealed record WheelChance(string Id, double Chance, double Error, double FavouriteShare, Interval LogWorth);

/// <summary>Chances within one camp.</summary>
/// <param name="Taste">What they said they like.</param>
/// <param name="Voices">How many voices.</param>
/// <param name="Wheels">Every wheel, in the order of the verdict's wheels.</param>
public sealed record CampChances(DeclaredTaste Taste, long Voices, ImmutableArray<WheelChance> Wheels);

/// <summary>Two camps by what tasters said before tasting.</summary>
/// <param name="Milder">Voices that like milder cheese.</param>
/// <param name="Stronger">Voices that like stronger cheese.</param>
/// <param name="Statistic">Squared differences of the camps' mean places, summed over the wheels.</param>
/// <param name="P">Chance of that or more when the labels are dealt at random.</param>
/// <param name="Ways">In how many ways they can be dealt.</param>
/// <param name="Parted">Whether the chance is at most 1 in 100.</param>
/// <param name="Wheels">Every wheel, in the order of the verdict's wheels.</param>
public sealed record CampsFinding(int Milder, int Stronger, double Statistic, PValue P, double Ways, bool Parted, ImmutableArray<CampPlace> Wheels);

/// <summary>One wheel as the camps see it.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Milder">Its mean place among those who like milder cheese; null without one.</param>
/// <param name="Stronger">Its mean place among the others.</param>
/// <param name="P">Chance of a difference as large when the labels are dealt at random.</param>
/// <param name="Shown">Whether it stands by Holm's steps where the camps are parted.</param>
/// <param name="MilderLiking">Mean liking, 1 to 9, among those who like milder cheese; null without one. A count, not tested.</param>
/// <param name="StrongerLiking">The same among the others.</param>
public sealed record CampPlace(string Id, double? Milder, double? Stronger, double P, bool Shown, double? MilderLiking, double? StrongerLiking);

/// <summary>Loved and hated.</summary>
/// <param name="Measure">The most, over the wheels, of the smaller of firsts and lasts, shared ones split.</param>
/// <param name="Ids">The wheels that reach it.</param>
/// <param name="P">Chance of as much by luck.</param>
/// <param name="Marked">Whether that is at most 1 in 20.</param>
public sealed record LovedFinding(double Measure, ImmutableArray<string> Ids, PValue P, bool Marked);

/// <summary>
/// How steady the lead is among these same ballots, voices drawn anew from them. Never a chance to be best: it says 85 % where the leader is the crowd's
/// favourite in 74 % (5 wheels, 14 tasters; simulated).
/// </summary>
/// <param name="Draws">How many redrawn panels had a leader.</param>
/// <param name="Wheels">Every wheel, in the order of the verdict's wheels.</param>
public sealed record SteadyFinding(int Draws, ImmutableArray<SteadyLine> Wheels);

/// <summary>One wheel among redrawn panels.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Leads">Share of redrawn panels that it leads by the planned rule, a shared lead by its share.</param>
/// <param name="Error">Monte Carlo standard error of <paramref name="Leads"/>.</param>
/// <param name="Average">Between what its average score by the planned rule lies in the middle 90 of 100 redrawn panels; null where it has none. No interval of confidence.</param>
public sealed record SteadyLine(string Id, double Leads, double Error, Interval? Average);

/// <summary>One taste held against two, by a mixture of two Plackett-Luce models.</summary>
/// <param name="LikelihoodRatio">Twice the gain in log-likelihood.</param>
/// <param name="P">Chance of as much in panels drawn from the one taste that was fitted.</param>
/// <param name="Critical">The ratio that 5 in 100 of those panels exceed.</param>
/// <param name="Parted">Whether the chance is at most 1 in 100.</param>
/// <param name="Classes">The two tastes, the larger first. Who belongs where is not told: no single ballot says that well.</param>
public sealed record TastesFinding(double LikelihoodRatio, PValue P, double Critical, bool Parted, ImmutableArray<TasteClass> Classes);

/// <summary>One of two tastes.</summary>
/// <param name="Share">Of the voices.</param>
/// <param name="Wheels">How large a share of it would put each wheel first, in the order of the verdict's wheels.</param>
public sealed record TasteClass(double Share, ImmutableArray<ClassShare> Wheels);

/// <summary>How large a share of one taste would put a wheel first.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="First">From 0 to 1; all wheels sum to 1.</param>
public sealed record ClassShare(string Id, double First);
