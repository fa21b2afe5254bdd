using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;
using Trier.Web.Plans;

namespace Trier.Web.Tastings.Plates;

/// <summary>A plate is given to somebody who has come.</summary>
internal static class HandingOut
{
    /// <summary>Does it as a form asks: the field <c>who</c> names the taster, <c>plate</c> the number on the card, or nothing for the next.</summary>
    public static Outcome<ImmutableArray<DayEvent>> Do(Tasting tasting, DateTimeOffset now, Posted posted) =>
        tasting is not OpenTasting open ? TrialPages.TooLate("plate", "Plates are given out while the tasting is open.")
        : posted.Id("who") is not { } who ? TrialPages.TooLate("handed", "Choose who comes.")
        : open.HandOut(now, new TasterId(who), posted.Text("plate").Length == 0 ? null : posted.Number("plate") ?? 0);
}
