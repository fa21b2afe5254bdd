using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Cards;

/// <summary>One sample's line of a paper ballot, as typed.</summary>
/// <param name="Sample">The code.</param>
/// <param name="Liking">Liking 1 to 9, or empty.</param>
/// <param name="Remark">The remark, or empty.</param>
/// <param name="Place">The place, or empty.</param>
public sealed record PaperLine(BlindCode Sample, string Liking, string Remark, string Place);

/// <summary>A paper ballot as the host typed it.</summary>
/// <param name="Lines">A line a sample, in serving order.</param>
public sealed record PaperSheet(ImmutableArray<PaperLine> Lines)
{
    /// <summary>What is known already, to go on from.</summary>
    /// <param name="served">The codes served, in order.</param>
    /// <param name="ballot">The ballot so far.</param>
    public static PaperSheet Of(ImmutableArray<BlindCode> served, Ballot ballot)
    {
        var groups = Placement.Of(ballot, served).Groups;
        return new([.. served.Select(code =>
        {
            var said = ballot.Answers.GetValueOrDefault(code);
            var before = groups.TakeWhile(group => !group.Contains(code)).ToList();
            var place = before.Count == groups.Length ? "" : Text(1 + before.Sum(group => group.Length));
            return new PaperLine(code, said?.Liking is { } liking ? Text(liking) : "", said?.Remark ?? "", place);
        })]);
    }

    /// <summary>The sheet as posted.</summary>
    /// <param name="served">The codes served, in order.</param>
    /// <param name="posted">The form.</param>
    internal static PaperSheet Of(ImmutableArray<BlindCode> served, Posted posted) =>
        new([.. served.Select(code => new PaperLine(code, posted.Text($"liking-{code}"), posted.Text($"remark-{code}"), posted.Text($"place-{code}")))]);

    /// <summary>Reads the sheet into a ballot: equal places tie, gaps are used as order.</summary>
    /// <param name="plate">Every code dealt to this taster.</param>
    /// <param name="before">The ballot so far; what it says of samples withdrawn since stays.</param>
    /// <returns>The ballot, or everything that is wrong with the sheet.</returns>
    public Outcome<Ballot> Read(IReadOnlyCollection<BlindCode> plate, Ballot before)
    {
        var problems = new List<Problem>();
        var answers = before.Answers;
        var places = new SortedDictionary<int, List<BlindCode>>();
        foreach (var line in Lines)
        {
            var liking = Number(line.Liking);
            if (line.Liking.Length > 0 && liking is not (>= 1 and <= 9)) problems.Add(new($"liking-{line.Sample}", $"Choose one of the nine lines for {line.Sample}, or leave it empty."));
            if (line.Remark.Length > BallotEditing.LongestRemark) problems.Add(new($"remark-{line.Sample}", $"A remark has {BallotEditing.LongestRemark} letters at most; the one for {line.Sample} has {line.Remark.Length}."));
            var said = answers.GetValueOrDefault(line.Sample) ?? SampleAnswer.Nothing;
            if (liking is >= 1 and <= 9 or null) answers = answers.SetItem(line.Sample, Corrected(said, liking) with { Remark = line.Remark.Length > 0 ? line.Remark : null });
            if (line.Place.Length == 0) continue;
            if (Number(line.Place) is not { } place) problems.Add(new($"place-{line.Sample}", $"The place of {line.Sample} is a whole number from 1 to {Lines.Length}; “{line.Place}” is none."));
            else if (place < 1 || place > Lines.Length) problems.Add(new($"place-{line.Sample}", $"The place of {line.Sample} is {place}, but there are {Lines.Length} samples: write 1 to {Lines.Length}."));
            else if (places.TryGetValue(place, out var tied)) tied.Add(line.Sample);
            else places[place] = [line.Sample];
        }

        if (problems.Count > 0) return Outcome.Fault<Ballot>(problems);
        var ballot = Ballot.Of(plate, places.Values, answers);
        return ballot.Ok && ballot.Value.Equals(Ballot.Empty) ? Outcome.Fault<Ballot>($"liking-{Lines[0].Sample}", "Nothing is filled in yet: type at least one liking, remark or place.") : ballot;
    }

    // A liking given on the phone and changed on paper keeps the first answer.
    private static SampleAnswer Corrected(SampleAnswer said, int? liking) =>
        said.Liking is { } first && liking != first ? said with { Liking = liking, FirstLiking = said.FirstLiking ?? first } : said with { Liking = liking };

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
