using System.Collections.Immutable;

namespace Trier.Trials.Plans.Repairs;

/// <summary>What could be changed so that more can be told apart.</summary>
public enum RepairKind
{
    /// <summary>All wheels of one age on the day.</summary>
    SameAge,

    /// <summary>All recipes from one milk on one day.</summary>
    SplitVat,

    /// <summary>One recipe made once more.</summary>
    MakeAgain,

    /// <summary>One wheel left out.</summary>
    LeaveOut,

    /// <summary>Half of each wheel kept for a tasting at another age.</summary>
    KeepHalf,

    /// <summary>One cheese served at every tasting, so that tastings can be put together.</summary>
    Anchor,
}

/// <summary>One change, what it would loosen and what it costs.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Deed">The change, verb first: "Make Thistle a second time".</param>
/// <param name="Price">What it costs, one sentence.</param>
/// <param name="Loosens">How many ties it would undo, a cord over n things being n - 1 and a recipe with one wheel one; 0 for a change that serves later tastings only.</param>
/// <param name="Gain">What it would loosen, one sentence.</param>
/// <param name="Subject">The recipe made again or the label of the wheel left out; null for the others.</param>
/// <param name="Least">Whether it is the least change that loosens most for its price.</param>
public sealed record Repair(RepairKind Kind, string Deed, string Price, int Loosens, string Gain, string? Subject, bool Least);
