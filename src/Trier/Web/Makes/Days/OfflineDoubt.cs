using System.Text.Json;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;

namespace Trier.Web.Makes.Days;

/// <summary>What the page itself must know to ask about an odd reading before it goes out, also while the host is away.</summary>
/// <param name="From">Low end of what is believed, in the maker's units.</param>
/// <param name="To">High end, in the maker's units.</param>
/// <param name="Ask">The question; {v} is what was typed.</param>
internal sealed record OfflineDoubt(double From, double To, string Ask)
{
    /// <summary>The doubts of a field as the page carries them.</summary>
    public static string Json(Step step, Target target, MakerUnits units) => JsonSerializer.Serialize(
        Doubt.Of(step, target).Select(doubt => new OfflineDoubt(
            units.FromCore(target.Field.Unit, doubt.From),
            units.FromCore(target.Field.Unit, doubt.To),
            units.Say(doubt.Question).Replace(Doubt.Value, $"{Doubt.Value}{(target.Field.Unit.Length > 0 ? " " + units.UnitOf(target.Field.Unit) : "")}", StringComparison.Ordinal))),
        JsonSerializerOptions.Web);
}
