using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;

namespace Trier.Web.Plans;

/// <summary>What every route of a trial does the same way.</summary>
internal static class TrialPages
{
    /// <summary>Shows a page of a trial.</summary>
    /// <typeparam name="T">The page; takes the trial as <c>Tasting</c>.</typeparam>
    public static async Task<IResult> ShowAsync<T>(Guid id, TrialStore trials)
        where T : IComponent =>
        await trials.FindAsync(new(id)) is { } tasting ? Page.Of<T>(("Tasting", tasting)) : Results.NotFound();

    /// <summary>Does an act and goes on; where it is refused, says why on a page of its own with the way back.</summary>
    public static async Task<IResult> DoAsync(Guid id, TrialStore trials, string then, Func<Tasting, Outcome<ImmutableArray<DayEvent>>> act) =>
        Then(await trials.ActAsync(new(id), act), then);

    /// <summary>The same for an act that may commit to a key, which takes long.</summary>
    public static async Task<IResult> CommitAsync(Guid id, TrialStore trials, string then, Func<Tasting, Outcome<ImmutableArray<DayEvent>>> act) =>
        Then(await trials.ActBesideAsync(new(id), (tasting, _) => Chance.Committed(tasting, act(tasting))), then);

    private static IResult Then(Outcome<Tasting> outcome, string then) => outcome.Ok ? Page.GoTo(then) : Page.Again<RefusedPage>(("Problems", outcome.Problems), ("Back", then));

    /// <summary>Refuses an act that its step no longer allows.</summary>
    public static Outcome<ImmutableArray<DayEvent>> TooLate(string field, string sentence) => Outcome.Fault<ImmutableArray<DayEvent>>(field, sentence);
}
