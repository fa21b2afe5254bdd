namespace Trier.Dairy.Workings;

/// <summary>Where a formula or figure comes from.</summary>
/// <param name="Key">The key in <c>docs/methods/dairy-references.md</c>.</param>
/// <param name="Text">The work, named so that a reader can find it.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Remark">A disagreement or a limit of the source, or null.</param>
public sealed record Source(string Key, string Text, Status Status, string? Remark = null);
