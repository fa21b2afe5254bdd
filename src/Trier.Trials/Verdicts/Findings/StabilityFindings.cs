using System.Collections.Immutable;
using Trier.Statistics.Distributions;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>One wheel served twice under two codes.</summary>
/// <param name="Check">Id of the serving that is only a check.</param>
/// <param name="Counts">Id of the serving that counts.</param>
/// <param name="Ballots">Ballots that place both.</param>
/// <param name="SumOfDistances">Places apart, summed.</param>
/// <param name="MeanDistance">Places apart on average: one taster's noise, not a yardstick for averages.</param>
/// <param name="MeanByLuck">What it would be if the two were dealt at random.</param>
/// <param name="P">Chance of a sum as small by luck.</param>
/// <param name="NextToEachOther">Ballots that put the two next to each other.</param>
/// <param name="NextByLuck">How many would by luck.</param>
/// <param name="NextP">Chance of as many by luck.</param>
/// <param name="Yardstick">Two servings of one cheese would land within this many average places of each other in 9 panels of 10; null without complete ballots.</param>
/// <param name="MeanLikingGap">Liking apart on average, or null.</param>
public sealed record RepeatFinding(
    string Check,
    string Counts,
    long Ballots,
    double SumOfDistances,
    double MeanDistance,
    double MeanByLuck,
    double P,
    long NextToEachOther,
    double NextByLuck,
    double NextP,
    double? Yardstick,
    double? MeanLikingGap);

/// <summary>Two wheels of one recipe.</summary>
/// <param name="Recipe">The recipe's name.</param>
/// <param name="Better">The wheel placed higher on average.</param>
/// <param name="Worse">The other.</param>
/// <param name="Gap">Average places apart, as in the tally.</param>
/// <param name="Interval">90 % interval of the gap as the voices give it, a joined voice once; null with fewer than two.</param>
/// <param name="OneMake">Whether both are of one vat, so that they tell nothing of how one make strays from the next.</param>
public sealed record SameRecipeFinding(string Recipe, string Better, string Worse, double Gap, Interval? Interval, bool OneMake);

/// <summary>What was counted another way.</summary>
public enum VariantKind
{
    /// <summary>With the ballots of those who knew the key. Never tested.</summary>
    WithTheKey,

    /// <summary>Without those who compared notes.</summary>
    WithoutJoined,

    /// <summary>Those who compared notes as voices of their own.</summary>
    JoinedApart,

    /// <summary>Without a group who tasted together.</summary>
    WithoutGroup,

    /// <summary>Without those who came late.</summary>
    WithoutLate,

    /// <summary>Without juniors.</summary>
    WithoutJuniors,

    /// <summary>With the juniors left out by plan.</summary>
    WithJuniors,

    /// <summary>Without ballots on which a slip or two codes were put right.</summary>
    WithoutCorrected,

    /// <summary>Without ballots let in after the close.</summary>
    WithoutAdmitted,

    /// <summary>Without ballots sent after the key had been opened.</summary>
    WithoutAfterKey,

    /// <summary>All ballots where the headline counts complete ones, or the other way round.</summary>
    OtherCount,

    /// <summary>The repeat's other code counted.</summary>
    OtherCode,

    /// <summary>A wheel that was named aloud left out of the ballots that came in after that, all ballots counted.</summary>
    WithoutNamed,

    /// <summary>Without those who signed in with a cold or little smell; tells no names.</summary>
    WithoutCold,

    /// <summary>Without one ballot.</summary>
    WithoutOne,

    /// <summary>A ballot whose places look upside down, turned round.</summary>
    Turned,

    /// <summary>Another counting rule.</summary>
    OtherRule,
}

/// <summary>What a variant does to the answer.</summary>
public enum VariantEffect
{
    /// <summary>Leader and level stay.</summary>
    Same,

    /// <summary>The leader stays and the level changes.</summary>
    LevelChanges,

    /// <summary>The leader changes.</summary>
    LeaderChanges,
}

/// <summary>One variant.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Label">In words that complete "counted ...": "without Duarte and Caio, who compared notes".</param>
/// <param name="Subject">Whom or what it is about: a taster's id, a sample's id, a rule's name; empty where the kind says all.</param>
/// <param name="Leaders">Ids of its leaders.</param>
/// <param name="MostFirsts">Ids with most firsts, a shared first counting its share.</param>
/// <param name="Firsts">Firsts of every wheel, in the order of the verdict's wheels.</param>
/// <param name="Level">Its level, or null where it is not tested.</param>
/// <param name="Effect">What it does to the answer.</param>
public sealed record Variant(
    VariantKind Kind,
    string Label,
    string Subject,
    ImmutableArray<string> Leaders,
    ImmutableArray<string> MostFirsts,
    ImmutableArray<long> Firsts,
    int? Level,
    VariantEffect Effect);

/// <summary>The fewest ballots whose loss changes the leader.</summary>
/// <param name="ToTie">Fewest that let a rival draw level; null where no number does.</param>
/// <param name="ToPass">Fewest that let a rival pass; null where no number does.</param>
/// <param name="Rivals">Ids of those who pass with that few.</param>
/// <param name="AtLeast">True where the search stopped: the true number is at least <paramref name="ToPass"/>.</param>
public sealed record FewestFinding(long? ToTie, long? ToPass, ImmutableArray<string> Rivals, bool AtLeast);
