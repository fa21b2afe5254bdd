using Trier.Trials.Makes.Shelf;

namespace Trier.Web.Makes.Shelf;

/// <summary>What the things on the shelf and their deeds are called.</summary>
internal static class ThingWords
{
    public static string Of(ThingKind kind) => kind switch
    {
        ThingKind.Brine => "brine",
        ThingKind.Culture => "culture, a lot",
        ThingKind.Rennet => "rennet, a lot",
        ThingKind.PhMeter => "pH meter",
        ThingKind.Thermometer => "thermometer",
        _ => "scale",
    };

    public static string Of(ThingDeed deed) => deed switch
    {
        ThingDeed.Begun => "put on the shelf",
        ThingDeed.Used => "used",
        ThingDeed.ToppedUp => "topped up",
        ThingDeed.Mended => "mended with salt",
        ThingDeed.Cleaned => "strained or its vessel washed",
        ThingDeed.Boiled => "boiled",
        ThingDeed.Checked => "checked",
        _ => "gone",
    };

    public static string HowChecked(ThingKind kind) => kind switch
    {
        ThingKind.PhMeter => "two buffers, read after: 7,00 as 7,02; 4,01 as 4,05",
        ThingKind.Thermometer => "ice water or boiling water: 0 as 0,2",
        ThingKind.Scale => "a known weight: 1000 g as 1002 g",
        ThingKind.Brine => "strength, temperature, what was added",
        _ => "how much, for which make",
    };
}
