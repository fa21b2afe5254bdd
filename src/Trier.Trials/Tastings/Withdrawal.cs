using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>A wheel taken out of a trial. Its records stay.</summary>
/// <param name="Wheel">Which wheel.</param>
/// <param name="At">When.</param>
/// <param name="Reason">Why, in the maker's words.</param>
/// <param name="DecidedBy">Who decided, or null.</param>
/// <param name="WhileTasting">Whether plates were already out.</param>
public sealed record Withdrawal(WheelId Wheel, DateTimeOffset At, string Reason, string? DecidedBy, bool WhileTasting);
