using Trier.Trials.Verdicts;

namespace Trier.Publishing.Charts;

/// <summary>How the wheels of a verdict are drawn.</summary>
public static class VerdictLooks
{
    /// <summary>A mark for each sample by id: the trial's own, or, where a file knows none, the shapes in the order of the ids.</summary>
    /// <param name="record">What was judged.</param>
    public static IReadOnlyDictionary<string, WheelLook> Of(TastingRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var looks = new Dictionary<string, WheelLook>(StringComparer.Ordinal);
        var unmarked = 0;
        foreach (var sample in record.Samples.Where(sample => sample.RepeatOf is null).OrderBy(sample => sample.Id, StringComparer.Ordinal))
            looks[sample.Id] = sample.Mark is { } mark ? Of(mark) : Next(unmarked++);
        foreach (var sample in record.Samples.Where(sample => sample.RepeatOf is not null)) looks[sample.Id] = looks[sample.RepeatOf!].Again;
        return looks;
    }

    /// <summary>A wheel's mark as it is drawn.</summary>
    /// <param name="mark">The mark.</param>
    public static WheelLook Of(Trier.Trials.Makes.WheelMark mark) => new(mark.Shape, mark.Fill switch { 0 => WheelFill.Solid, 1 => WheelFill.Open, _ => WheelFill.Half }, mark.Tone);

    private static WheelLook Next(int index) => new((index % WheelLook.Count) + 1, (index / WheelLook.Count) switch { 0 => WheelFill.Solid, 1 => WheelFill.Open, _ => WheelFill.Half });
}
