using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Verdicts.Publishing;

/// <summary>That a name or somebody's words were taken out of a version after it was published: how many and when, never whose or what.</summary>
public static class TakenOutNote
{
    /// <summary>One sentence for each day on which something was taken out, oldest first; empty where nothing was.</summary>
    /// <param name="book">The day book as it stands.</param>
    /// <param name="version">The version.</param>
    /// <param name="then">Its published record with what was agreed then.</param>
    /// <param name="now">The same with what is agreed now.</param>
    public static ImmutableArray<string> Of(DayBook book, PublishedVersion version, TastingRecord then, TastingRecord now)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(version);
        ArgumentNullException.ThrowIfNull(then);
        ArgumentNullException.ThrowIfNull(now);
        var pairs = then.Voters.Zip(now.Voters).ToList();
        var names = pairs.Where(pair => LostName(pair.First, pair.Second)).Select(pair => Day(book, version, pair.First.Id, agreed => agreed.Named)).ToList();
        var words = pairs.Where(pair => LostWords(pair.First, pair.Second)).Select(pair => Day(book, version, pair.First.Id, agreed => agreed.Quoted)).ToList();
        return [.. names.Concat(words).Distinct().Order().Select(day => Sentence(day, names.Count(one => one == day), words.Count(one => one == day)))];
    }

    /// <summary>Whether a name stood there and no longer does.</summary>
    internal static bool LostName(VoterRecord before, VoterRecord after) => before.Agreed.Named && !after.Agreed.Named;

    /// <summary>Whether somebody's words stood there and no longer do; who wrote nothing loses nothing.</summary>
    internal static bool LostWords(VoterRecord before, VoterRecord after) =>
        before.Agreed.Quoted && !after.Agreed.Quoted && before.Answers.Values.Any(answer => answer.Remark is not null || !answer.Words.IsEmpty);

    /// <summary>The day since which it is no longer agreed to.</summary>
    private static DateOnly Day(DayBook book, PublishedVersion version, string label, Func<Agreed, bool> agreed)
    {
        var who = book.Tasters.First(taster => taster.Label == label).Id;
        var since = book.Log.Skip(version.Through).Select(logged => logged.Event).OfType<AgreementGiven>().Where(given => given.Taster == who).Reverse().TakeWhile(given => !agreed(given.Agreed)).Last();
        return DateOnly.FromDateTime(since.At.DateTime);
    }

    private static string Sentence(DateOnly day, int names, int words)
    {
        string?[] gone = [names == 0 ? null : $"{Phrase.Number(names)} {Phrase.Verb(names, "name", "names")}", words == 0 ? null : $"the words of {Phrase.Number(words)} {Phrase.Verb(words, "taster", "tasters")}"];
        return $"Taken out on {day.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture)}: {Phrase.List(gone.OfType<string>())}. No place and no test changes.";
    }
}
