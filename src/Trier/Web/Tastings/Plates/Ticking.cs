using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Plates;

/// <summary>Ticking the plating as done.</summary>
internal static class Ticking
{
    /// <summary>Whether somebody has opened the key that stands: then their tick is no new opening.</summary>
    public static bool MayTick(DayBook book, string by, bool early) => book.KeyOpenings.Any(opening => opening.By == by && opening.Early == early);

    /// <summary>Ticks, or takes the tick away, as a form asks.</summary>
    public static Outcome<ImmutableArray<DayEvent>> Do(Tasting tasting, DateTimeOffset now, Posted posted) => tasting.Tick(now, posted.Text("tick"), done: !posted.Ticked("undone"));
}
