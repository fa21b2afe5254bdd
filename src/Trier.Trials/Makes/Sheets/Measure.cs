namespace Trier.Trials.Makes.Sheets;

/// <summary>What sort of quantity a figure is; its base unit is the one figures are held in.</summary>
public enum Measure
{
    /// <summary>Mass, kilograms.</summary>
    Mass,

    /// <summary>Volume, litres.</summary>
    Volume,

    /// <summary>Temperature, degrees Celsius.</summary>
    Temperature,

    /// <summary>A stretch of time, minutes.</summary>
    Time,

    /// <summary>Pressure, kilopascals.</summary>
    Pressure,

    /// <summary>Length, centimetres.</summary>
    Length,

    /// <summary>A share, per cent.</summary>
    Percent,

    /// <summary>A rate of heating, degrees Celsius a minute.</summary>
    HeatingRate,

    /// <summary>A number without a unit, or with the unit in its name.</summary>
    Plain,
}

/// <summary>The units a maker reads.</summary>
public enum UnitSystem
{
    /// <summary>Litres, grams, degrees Celsius.</summary>
    Metric,

    /// <summary>US gallons and spoons, pounds and ounces, degrees Fahrenheit.</summary>
    UsCustomary,
}
