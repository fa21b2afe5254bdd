using System.Collections.Immutable;
using System.Text.Json;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;

namespace Trier.Web.Makes.Days;

/// <summary>What the page itself must know of an aim to say a deviation at once, also while the host is away: numbers in the maker's units, words as the record has them.</summary>
/// <param name="Key">The field's name; "floc", "time" and "cut" come from the clock.</param>
/// <param name="Aim">The aim.</param>
/// <param name="Slack">How far off still counts as met.</param>
/// <param name="Decimals">Decimals shown at most; below zero: exactly so many.</param>
/// <param name="Before">What stands before a value, such as "pH ".</param>
/// <param name="After">What stands after it: the unit.</param>
/// <param name="Above">What a value above may lead to.</param>
/// <param name="Below">What a value below may lead to.</param>
/// <param name="High">From here on a value above leads to something else; out of reach where it does not.</param>
/// <param name="FarAbove">To what.</param>
/// <param name="Low">From here down a value below leads to something else; out of reach where it does not.</param>
/// <param name="FarBelow">To what.</param>
internal sealed record OfflineAim(string Key, double Aim, double Slack, int Decimals, string Before, string After, string Above, string Below, double High, string FarAbove, double Low, string FarBelow)
{
    /// <summary>The aims of a step as the page carries them.</summary>
    public static string Json(Step step, MakerUnits units) => JsonSerializer.Serialize(Of(step, units), JsonSerializerOptions.Web);

    public static ImmutableArray<OfflineAim> Of(Step step, MakerUnits units) => [.. Deviation.Watched(step).Select(aim => One(step, aim, units))];

    private static OfflineAim One(Step step, Aim aim, MakerUnits units)
    {
        var target = aim.Target;
        var unit = target == Target.Dose ? Addition.Words(step.Addition!.Per) : units.UnitOf(target.Field.Unit);
        var at = units.FromCore(target.Field.Unit, aim.Value);
        var key = target == Target.FlocMinutes ? "floc" : target == Target.Minutes ? step.Kind == StepKind.Cut ? "cut" : "time" : target.Key;
        return new(
            key,
            at,
            Math.Round(units.FromCore(target.Field.Unit, aim.Value + aim.Slack) - at, 6),
            target == Target.Ph ? -2 : target.Field.Unit == "°C" ? 1 : 3,
            target == Target.Ph ? "pH " : "",
            unit.Length > 0 ? " " + unit : "",
            units.Say(Deviation.LeadsTo(step, target, above: true)),
            units.Say(Deviation.LeadsTo(step, target, above: false)),
            From(above: true),
            Far(above: true),
            From(above: false),
            Far(above: false));

        double From(bool above) => Deviation.FarOff(step, aim, above) is { } far ? units.FromCore(target.Field.Unit, far.From) : above ? 1e9 : -1e9;
        string Far(bool above) => Deviation.FarOff(step, aim, above) is { } far ? units.Say(far.Sentence) : "";
    }
}
