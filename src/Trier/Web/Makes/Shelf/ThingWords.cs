using Trier.Trials.Makes.Sheets;
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

    public static string HowChecked(ThingKind kind, MakerUnits units) => kind switch
    {
        ThingKind.PhMeter => $"two buffers, read after: {units.Notation.Ph(7)} as {units.Notation.Ph(7.02)}; {units.Notation.Ph(4.01)} as {units.Notation.Ph(4.05)}",
        ThingKind.Thermometer => $"ice water or boiling water: {units.Write(Measure.Temperature, 0)} as {units.Write(Measure.Temperature, 0.2)}",
        ThingKind.Scale => units.Us ? "a known weight: 16 oz as 16.1 oz" : "a known weight: 1000 g as 1002 g",
        ThingKind.Brine => "strength, temperature, what was added",
        _ => "how much, for which make",
    };
}
