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
public sealed record DeepFindings(ImmutableArray<Variant> Variants, ChanceFinding? Chances, CampsFinding? Camps, LovedFinding? Loved);

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
public sealed record CampPlace(string Id, double? Milder, double? Stronger, double P, bool Shown);

/// <summary>Loved and hated.</summary>
/// <param name="Measure">The most, over the wheels, of the smaller of firsts and lasts, shared ones split.</param>
/// <param name="Ids">The wheels that reach it.</param>
/// <param name="P">Chance of as much by luck.</param>
/// <param name="Marked">Whether that is at most 1 in 20.</param>
public sealed record LovedFinding(double Measure, ImmutableArray<string> Ids, PValue P, bool Marked);
