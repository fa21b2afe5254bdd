using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Cards;

/// <summary>A ballot written for a taster: typed in from paper, or by a scribe.</summary>
/// <param name="Lines">A line a sample, in serving order.</param>
/// <param name="Asked">What the ballot asks.</param>
public sealed record PaperSheet(ImmutableArray<PaperLine> Lines, BallotPlan Asked)
{
    /// <summary>What is known already, to go on from.</summary>
    /// <param name="served">The codes served, in order.</param>
    /// <param name="toPlace">Those of them that get a place.</param>
    /// <param name="ballot">The ballot so far.</param>
    /// <param name="asked">What the ballot asks.</param>
    public static PaperSheet Of(ImmutableArray<BlindCode> served, IReadOnlyCollection<BlindCode> toPlace, Ballot ballot, BallotPlan asked)
    {
        var groups = Placement.Of(ballot, toPlace).Groups;
        return new([.. served.Select(code =>
        {
            var before = groups.TakeWhile(group => !group.Contains(code)).ToList();
            var place = before.Count == groups.Length ? "" : Text(1 + before.Sum(group => group.Length));
            return PaperLine.Of(code, ballot.Answers.GetValueOrDefault(code), place, asked) with { HasPlace = toPlace.Contains(code) };
        })], asked);
    }

    /// <summary>The first sample before whose place one was left out, or null where places run from 1 without a gap.</summary>
    public BlindCode? LeavesOut
    {
        get
        {
            var places = Lines.Select(line => (line.Sample, Place: Number(line.Place))).Where(pair => pair.Place is not null).OrderBy(pair => pair.Place).ToList();
            var groups = places.GroupBy(pair => pair.Place!.Value).ToList();
            var next = 1;
            foreach (var group in groups)
            {
                if (group.Key != next) return group.First().Sample;
                next += group.Count();
            }

            return null;
        }
    }

    /// <summary>The sheet as posted.</summary>
    /// <param name="served">The codes served, in order.</param>
    /// <param name="toPlace">Those of them that get a place.</param>
    /// <param name="posted">The form.</param>
    /// <param name="asked">What the ballot asks.</param>
    internal static PaperSheet Of(ImmutableArray<BlindCode> served, IReadOnlyCollection<BlindCode> toPlace, Posted posted, BallotPlan asked) =>
        new([.. served.Select(code => PaperLine.Of(code, posted, asked) with { HasPlace = toPlace.Contains(code) })], asked);

    /// <summary>How many samples get a place.</summary>
    public int Places => Lines.Count(line => line.HasPlace);

    /// <summary>Reads the sheet into a ballot: equal places tie, gaps are used as order, an unclear place ties with the one it may share.</summary>
    /// <param name="plate">Every code dealt to this taster.</param>
    /// <param name="before">The ballot so far; what it says of samples withdrawn since stays.</param>
    /// <returns>The ballot, or everything that is wrong with the sheet.</returns>
    public Outcome<Ballot> Read(IReadOnlyCollection<BlindCode> plate, Ballot before)
    {
        var problems = new List<Problem>();
        var places = new Dictionary<BlindCode, WrittenPlace>();
        var answers = before.Answers;
        foreach (var line in Lines)
        {
            var liking = Number(line.Liking);
            if (line.Liking.Length > 0 && liking is not (>= 1 and <= 9)) problems.Add(new($"liking-{line.Sample}", $"Choose one of the nine lines for {line.Sample}, or leave it empty."));
            if (line.Remark.Length > BallotEditing.LongestRemark) problems.Add(new($"remark-{line.Sample}", $"A remark has {BallotEditing.LongestRemark} letters at most; the one for {line.Sample} has {line.Remark.Length}."));
            if (line.StrayTicks.Length > 0) problems.Add(new($"ticks-{line.Sample}", $"The letters beside the words run from a to {(char)('a' + Asked.Words.Length - 1)}; “{line.StrayTicks}” is none of them."));
            if (line.Amounts.Values.Any(amount => amount is < -1 or > 1)) problems.Add(new($"right-0-{line.Sample}", $"Too little, just right or too much for {line.Sample}, or nothing."));
            if (ReadPlace(line, problems) is { } place) places[line.Sample] = place;
            if (liking is >= 1 and <= 9 or null) answers = answers.SetItem(line.Sample, Answer(line, answers.GetValueOrDefault(line.Sample) ?? SampleAnswer.Nothing, liking));
        }

        if (problems.Count > 0) return Outcome.Fault<Ballot>(problems);
        var ballot = Ballot.Of(plate, Groups(places), answers);
        return ballot.Ok && ballot.Value.Equals(Ballot.Empty) ? Outcome.Fault<Ballot>($"liking-{Lines[0].Sample}", "Nothing is filled in yet: type at least one liking, remark or place.") : ballot;
    }

    private IEnumerable<IReadOnlyCollection<BlindCode>> Groups(Dictionary<BlindCode, WrittenPlace> places)
    {
        var certain = places.Values.Where(place => !place.Unclear).SelectMany(place => place.Readings).ToHashSet();
        return places.Select(pair => (pair.Key, Place: pair.Value.Counts(certain, Places))).Where(pair => pair.Place is not null)
            .GroupBy(pair => pair.Place!.Value, pair => pair.Key).OrderBy(group => group.Key).Select(group => (IReadOnlyCollection<BlindCode>)[.. group]);
    }

    private WrittenPlace? ReadPlace(PaperLine line, List<Problem> problems)
    {
        if (line.Place.Length == 0 || !line.HasPlace) return null;
        var place = WrittenPlace.Read(line.Place);
        if (place is null) problems.Add(new($"place-{line.Sample}", $"The place of {line.Sample} is a whole number from 1 to {Places}; “{line.Place}” is none. Where it cannot be read for certain, write 1? or 1/7."));
        else if (!place.Unclear && place.Readings[0] is var sure && (sure < 1 || sure > Places)) problems.Add(new($"place-{line.Sample}", $"The place of {line.Sample} is {sure}, but there are {Places} samples: write 1 to {Places}."));
        return place;
    }

    private SampleAnswer Answer(PaperLine line, SampleAnswer said, int? liking)
    {
        var answer = Corrected(said, liking) with { Remark = line.Remark.Length > 0 ? line.Remark : null, Unclear = line.HasPlace && WrittenPlace.Read(line.Place) is { Unclear: true } ? line.Place : null };
        foreach (var property in Asked.Right) answer = answer.With(property, line.Amounts.GetValueOrDefault(property));
        if (Asked.Words.Length > 0) answer = answer with { Words = line.Words };
        return Asked.Again ? answer with { Again = line.Again } : answer;
    }

    // A liking given on the phone and changed on paper keeps the first answer.
    private static SampleAnswer Corrected(SampleAnswer said, int? liking) =>
        said.Liking is { } first && liking != first ? said with { Liking = liking, FirstLiking = said.FirstLiking ?? first } : said with { Liking = liking };

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
