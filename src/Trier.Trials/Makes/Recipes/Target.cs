using System.Collections.Immutable;
using Trier.Dairy.Acidity;
using Trier.Dairy.Brine;
using Trier.Dairy.Milk;
using Trier.Dairy.Rennet;
using Field = Trier.Dairy.Workings.Field;

namespace Trier.Trials.Makes.Recipes;

/// <summary>Something a step can aim at: its field with unit and ranges, and how far off still counts as met.</summary>
/// <remarks>Tolerances are common practice, no source: what a thermometer, a pH meter and a kitchen clock can tell apart.</remarks>
/// <param name="Field">Name, unit, possible and usual range; its key is the name in a recipe file.</param>
/// <param name="Slack">Tolerance where a recipe gives none, in the field's unit.</param>
/// <param name="SlackShare">Tolerance as a share of the aim, where that is larger than <paramref name="Slack"/>.</param>
public sealed record Target(Field Field, double Slack, double SlackShare = 0)
{
    /// <summary>Temperature at the end of the step.</summary>
    public static readonly Target Celsius = new(new("celsius", "Temperature", "°C", -1, 100, 4, 60), 1);

    /// <summary>How long the step takes.</summary>
    public static readonly Target Minutes = new(new("minutes", "Time", "min", 0, 200_000, 0, 20_000), 3, 0.15);

    /// <summary>Rest after the work of a step.</summary>
    public static readonly Target RestMinutes = new(new("restMinutes", "Rest", "min", 0, 1_000, 0, 30), 3, 0.15);

    /// <summary>The pH at the end of the step.</summary>
    public static readonly Target Ph = new(AcidityFields.Ph with { Key = "pH" }, 0.07);

    /// <summary>How much is added, in the unit of the addition.</summary>
    public static readonly Target Dose = new(new("dose", "Dose", "", 0, 1e9, 0, 1e9, LowestExcluded: true), 0, 0.1);

    /// <summary>Clotting activity given to the milk.</summary>
    public static readonly Target ImcuPerLitre = new(RennetFields.Level with { Key = "imcuPerLitre" }, 0, 0.1);

    /// <summary>Flocculation time.</summary>
    public static readonly Target FlocMinutes = new(RennetFields.Flocculation with { Key = "flocMinutes" }, 2);

    /// <summary>Flocculation multiplier.</summary>
    public static readonly Target Multiplier = new(RennetFields.Multiplier with { Key = "multiplier" }, 0.25);

    /// <summary>Edge of the cut curd.</summary>
    public static readonly Target Millimetres = new(new("millimetres", "Size of the curd", "mm", 0, 100, 3, 25, LowestExcluded: true), 2, 0.25);

    /// <summary>Whey drawn, as a part of the milk.</summary>
    public static readonly Target PercentOfMilk = new(new("percentOfMilk", "Whey drawn", "% of the milk", 0, 100, 20, 95, LowestExcluded: true), 5);

    /// <summary>Diameter of the mould.</summary>
    public static readonly Target DiameterCentimetres = new(BrineFields.Diameter with { Key = "diameterCentimetres", Name = "Diameter of the mould" }, 0.5);

    /// <summary>Pressure in the press.</summary>
    public static readonly Target Kilopascals = new(new("kilopascals", "Pressure", "kPa", 0, 2_000, 0.3, 140), 0, 0.2);

    /// <summary>How often wheels or blocks are turned.</summary>
    public static readonly Target Times = new(new("times", "Times turned", "", 0, 1_000, 1, 20, LowestExcluded: true), 0);

    /// <summary>Strength of the brine.</summary>
    public static readonly Target BrinePercent = new(BrineFields.Strength with { Key = "brinePercent" }, 1);

    /// <summary>Salt on milled curd.</summary>
    public static readonly Target SaltPercentOfCurd = new(BrineFields.DrySalt with { Key = "saltPercentOfCurd" }, 0.2);

    /// <summary>Humidity of the air while drying off.</summary>
    public static readonly Target HumidityPercent = new(new("humidityPercent", "Humidity", "%", 0, 100, 55, 95), 7);

    /// <summary>Moisture of the finished young cheese.</summary>
    public static readonly Target MoisturePercent = new(new("moisturePercent", "Moisture of the cheese", "%", 10, 90, 30, 55), 1.5);

    /// <summary>Salt of the finished cheese.</summary>
    public static readonly Target SaltPercent = new(new("saltPercent", "Salt of the cheese", "%", 0, 15, 0.4, 6, LowestExcluded: true), 0.3);

    /// <summary>Casein to fat of the vat milk.</summary>
    public static readonly Target CaseinToFat = new(MilkFields.CaseinToFat with { Key = "caseinToFat", Name = "Casein to fat of the milk" }, 0.05);

    /// <summary>Days in a warm room, for eyes.</summary>
    public static readonly Target WarmRoomDays = new(new("warmRoomDays", "Days in the warm room", "d", 0, 365, 10, 50, LowestExcluded: true), 2);

    /// <summary>Temperature of the warm room.</summary>
    public static readonly Target WarmRoomCelsius = new(new("warmRoomCelsius", "Temperature of the warm room", "°C", 0, 40, 17, 25), 1);

    /// <summary>Every target, in the order they are shown.</summary>
    public static ImmutableArray<Target> All { get; } =
    [
        Dose, ImcuPerLitre, Celsius, Minutes, FlocMinutes, Multiplier, Millimetres, RestMinutes, Times, PercentOfMilk, DiameterCentimetres, Kilopascals,
        BrinePercent, SaltPercentOfCurd, HumidityPercent, Ph, MoisturePercent, SaltPercent, CaseinToFat, WarmRoomDays, WarmRoomCelsius,
    ];

    /// <summary>The name in a recipe file.</summary>
    public string Key => Field.Key;

    /// <summary>The target of this name, or null.</summary>
    /// <param name="key">The name.</param>
    public static Target? Named(string key) => All.FirstOrDefault(target => target.Key == key);
}
