using Trier.Trials.Makes;
using Trier.Trials.Tastings;
using Trier.Web.Shared;

namespace Trier.Web.Plans;

/// <summary>A wheel's mark as it is drawn on a page.</summary>
internal static class Looks
{
    public static WheelLook Of(Entry entry) => Of(entry.Mark);

    public static WheelLook Of(Trier.Trials.Makes.WheelMark mark) => new(mark.Shape, mark.Fill switch { 0 => WheelFill.Solid, 1 => WheelFill.Open, _ => WheelFill.Half }, mark.Tone);
}
