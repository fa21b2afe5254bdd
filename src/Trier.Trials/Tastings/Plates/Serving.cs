using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Plates;

/// <summary>Something that stands on a plate, whatever code it bears there.</summary>
/// <param name="Wheel">The wheel.</param>
/// <param name="Counts">False for the second serving of the repeat, which is only a check.</param>
internal readonly record struct Serving(WheelId Wheel, bool Counts)
{
    public static Serving Of(KeyLine line) => new(line.Wheel, line.Counts);
}
