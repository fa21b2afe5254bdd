using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes;

namespace Trier.Trials.Verdicts.Together;

/// <summary>A wheel at one tasting.</summary>
/// <param name="Trial">Which trial.</param>
/// <param name="Title">What the trial is called.</param>
/// <param name="Day">Its day, or null.</param>
/// <param name="AgeDays">The wheel's age then, or null.</param>
/// <param name="Withdrawn">Why it was withdrawn; null where it was served.</param>
/// <param name="Place">Its average place by the ballots that count, adjusted where ballots differ; null without one.</param>
/// <param name="Of">How many wheels were compared there.</param>
/// <param name="Firsts">How many ballots put it first, alone or shared.</param>
/// <param name="Ballots">How many ballots placed it.</param>
/// <param name="Leads">Whether it led there by the planned rule, alone or shared.</param>
public sealed record WheelAppearance(TrialId Trial, string Title, DateOnly? Day, int? AgeDays, string? Withdrawn, double? Place, int Of, long Firsts, long Ballots, bool Leads)
{
    /// <summary>Whether people put it in the upper half there: an average place better than the middle.</summary>
    public bool UpperHalf => Place is { } place && place < (Of + 1) / 2.0 - 1e-9;
}

/// <summary>One wheel of a recipe over all tastings.</summary>
/// <param name="Wheel">Which wheel.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Mark">How it is drawn.</param>
/// <param name="Facts">What is known of it.</param>
/// <param name="Appearances">Where it came up, oldest first.</param>
public sealed record WheelRecord(WheelId Wheel, string Name, WheelMark Mark, WheelFacts Facts, ImmutableArray<WheelAppearance> Appearances)
{
    /// <summary>Withdrawn wherever it came up.</summary>
    public bool Withdrawn => Appearances.All(appearance => appearance.Withdrawn is not null);

    /// <summary>In the upper half of at least one tasting.</summary>
    public bool Good => Appearances.Any(appearance => appearance.UpperHalf);
}

/// <summary>A recipe's record: every wheel of it that was entered in a tasting whose key is open, withdrawn ones counted.</summary>
/// <param name="Recipe">Its name.</param>
/// <param name="Wheels">Its wheels, in the order they first came up.</param>
public sealed record RecipeRecord(string Recipe, ImmutableArray<WheelRecord> Wheels)
{
    /// <summary>Wheels that came to the table.</summary>
    public int Tasted => Wheels.Count(wheel => !wheel.Withdrawn);

    /// <summary>Makes they came from: wheels of one day are taken to be of one vat.</summary>
    public int Makes => Wheels.Select(wheel => wheel.Facts.MadeOn).OfType<DateOnly>().Distinct().Count() + Wheels.Count(wheel => wheel.Facts.MadeOn is null);

    /// <summary>Wheels in the upper half of at least one tasting.</summary>
    public int GoodOnes => Wheels.Count(wheel => wheel.Good);
}
