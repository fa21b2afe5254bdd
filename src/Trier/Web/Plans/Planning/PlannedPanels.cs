using Trier.Storage.Verdicts;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Panels;
using Trier.Web.Hosting;

namespace Trier.Web.Plans.Planning;

/// <summary>What panels could show, simulated once for every plan and kept.</summary>
internal sealed class PlannedPanels(KeptWork work)
{
    /// <summary>What there is; work begins at the first look.</summary>
    /// <param name="outline">The plan.</param>
    /// <param name="patience">How long to wait for the whole.</param>
    /// <param name="cancellation">Stops the wait, not the work.</param>
    public Task<KeptProgress<PanelFindings>> FindAsync(TrialOutline outline, TimeSpan patience, CancellationToken cancellation) =>
        PanelPlanning.Can(outline)
            ? work.FindAsync(Key(outline), (progress, stop) => PanelPlanning.Find(outline, PanelPlanning.UsualPanels, progress, stop), patience, cancellation)
            : Task.FromResult(new KeptProgress<PanelFindings>(null, 1));

    private static string Key(TrialOutline outline) => KeptStore.Key(new
    {
        Of = "panels",
        PanelPlanning.MethodsVersion,
        Seed = PanelPlanning.Seed.Value,
        Panels = PanelPlanning.UsualPanels,
        outline.Rule,
        outline.Tasters,
        outline.Preference,
        Wheels = outline.Wheels.Select(wheel => new { wheel.Recipe, Made = wheel.Facts.MadeOn is not null }),
    });
}
