using Trier.Dairy.Workings;

namespace Trier.Dairy.Acidity;

/// <summary>The inputs about cultures and acidity, with their possible and usual ranges (ranges: common practice).</summary>
public static class AcidityFields
{
    /// <summary>A pH.</summary>
    public static readonly Field Ph = new("ph", "pH", "", 0, 14, 4.6, 6.9);

    /// <summary>The pH of milk, curd and young cheese: outside the usual range the meter is the likelier cause (common practice, no source).</summary>
    public static readonly Field PhOfMilkAndCurd = new("ph-of-milk-and-curd", "pH", "", 0, 14, 4.4, 7.2);

    /// <summary>Time between readings.</summary>
    public static readonly Field Interval = new("interval", "Time between readings", "min", 0, 100_000, 1, 10_080, LowestExcluded: true);

    /// <summary>Volume of sample titrated.</summary>
    public static readonly Field SampleVolume = new("sample-volume", "Volume of the sample", "mL", 0, 1000, 5, 100, LowestExcluded: true);

    /// <summary>Volume of alkali used.</summary>
    public static readonly Field AlkaliVolume = new("alkali-volume", "Volume of alkali", "mL", 0, 1000, 0.2, 50);

    /// <summary>Titratable acidity, milk to whey and sour milk.</summary>
    public static readonly Field Acidity = new("acidity", "Titratable acidity", "% lactic acid", 0, 5, 0.08, 1.2);

    /// <summary>Normality of the alkali.</summary>
    public static readonly Field Normality = new("normality", "Normality of the alkali", "N", 0, 2, 0.1, 0.25, LowestExcluded: true);

    /// <summary>Bulk starter as a part of the milk.</summary>
    public static readonly Field BulkStarter = new("bulk-starter", "Bulk starter", "% of milk", 0, 10, 0.05, 2, LowestExcluded: true);

    /// <summary>Wanted cells in the milk.</summary>
    public static readonly Field CellsPerMillilitre = new("cells", "Cells wanted in the milk", "cfu/mL", 0, 1e9, 100, 1e6, LowestExcluded: true);

    /// <summary>Cells in the powder.</summary>
    public static readonly Field CellsPerGram = new("cells-per-gram", "Cells in the powder", "cfu/g", 0, 1e13, 1e9, 1e12, LowestExcluded: true);

    /// <summary>Mass to be weighed.</summary>
    public static readonly Field Weighing = new("weighing", "Mass to weigh for the stock", "g", 0, 1000, 0.5, 5, LowestExcluded: true);

    /// <summary>Volume of the stock.</summary>
    public static readonly Field StockVolume = new("stock-volume", "Volume of the stock", "mL", 0, 100_000, 50, 2000, LowestExcluded: true);

    /// <summary>Error of the pH meter.</summary>
    public static readonly Field MeterError = new("meter-error", "Error of the pH meter", "", 0, 1, 0.02, 0.1, LowestExcluded: true);

    /// <summary>Readings so far.</summary>
    public static readonly Field Readings = new("readings", "Readings so far", "", 0, 1e7, 3, 1e6);
}
