namespace Trier.Trials.Tastings;

/// <summary>One published version of a verdict.</summary>
/// <param name="Number">1 at first, 1 more for each correction.</param>
/// <param name="At">When.</param>
/// <param name="Through">Place of the last event it was drawn from.</param>
public sealed record PublishedVersion(int Number, DateTimeOffset At, int Through);
