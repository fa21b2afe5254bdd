using System.Collections.Immutable;
using System.Security.Cryptography;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Web.Hosting;

/// <summary>Where the shell gets the chance that it hands to the core.</summary>
/// <param name="draw">Gives the next seed's value.</param>
internal sealed class Chance(Func<ulong> draw)
{
    /// <summary>Chance nobody can guess, which is what a tasting is given.</summary>
    public static Chance Unguessable() => new(() => BitConverter.ToUInt64(RandomNumberGenerator.GetBytes(8)));

    /// <summary>The next seed.</summary>
    public Seed Draw() => new(draw());

    /// <summary>Commits to the key an act draws, with a salt nobody can guess. Takes about a second: a case for <see cref="TrialStore.ActBesideAsync"/>.</summary>
    /// <param name="tasting">The tasting before the act.</param>
    /// <param name="outcome">What the act yields.</param>
    public static Outcome<ImmutableArray<DayEvent>> Committed(Tasting tasting, Outcome<ImmutableArray<DayEvent>> outcome) =>
        outcome.Then(events => Outcome.Of(Committing.With(tasting.Book, events, RandomNumberGenerator.GetBytes(Commitment.SaltBytes))));
}
