using Trier.Trials.Tastings;

namespace Trier.Web.Plans;

/// <summary>A wheel's mark as it is drawn on a page.</summary>
internal static class Looks
{
    public static WheelLook Of(Entry entry) => Of(entry.Mark);

    public static WheelLook Of(Trier.Trials.Makes.WheelMark mark) => VerdictLooks.Of(mark);
}
