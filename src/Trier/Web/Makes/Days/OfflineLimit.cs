using System.Text.Json;
using Trier.Trials.Makes.Days;

namespace Trier.Web.Makes.Days;

/// <summary>What the page itself must know to say that the acid came too slowly, also while the host is away.</summary>
/// <param name="From">Hours after the start.</param>
/// <param name="Most">The highest pH from then on.</param>
/// <param name="Say">The sentence; {h} are the hours, {v} is the pH.</param>
internal sealed record OfflineLimit(double From, double Most, string Say)
{
    /// <summary>The limits as the page carries them, the latest first.</summary>
    public static string Json(MakerUnits units) => JsonSerializer.Serialize(
        SlowAcid.Limits.Select(limit => new OfflineLimit(limit.Hours, limit.Ph, SlowAcid.Words("{h}", "{v}", units.Number(limit.Ph)))), JsonSerializerOptions.Web);
}
