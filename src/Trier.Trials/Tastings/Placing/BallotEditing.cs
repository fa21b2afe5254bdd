using Trier.Trials.Common;
using Trier.Trials.Plans;

namespace Trier.Trials.Tastings.Placing;

/// <summary>Puts one answer, or new places, into a ballot; everything else of it stays.</summary>
public static class BallotEditing
{
    /// <summary>Most letters of a remark.</summary>
    public const int LongestRemark = 200;

    /// <summary>
    /// Answers for one sample. A liking once given is locked: it changes only as the correction of a slip, once, and the first answer is kept.
    /// </summary>
    /// <param name="ballot">The ballot so far.</param>
    /// <param name="plate">Every code dealt to this taster.</param>
    /// <param name="code">Which sample.</param>
    /// <param name="liking">1 to 9, or null where none is given.</param>
    /// <param name="remark">The remark as typed.</param>
    /// <param name="slip">Whether a slip is being corrected.</param>
    /// <returns>The ballot with the answer, or what stands in the way.</returns>
    public static Outcome<Ballot> Answer(Ballot ballot, IReadOnlyCollection<BlindCode> plate, BlindCode code, int? liking, string? remark, bool slip)
    {
        if (liking is < 1 or > 9) return Outcome.Fault<Ballot>("liking", "Liking runs from 1 to 9.");
        var words = string.Join(' ', (remark ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (words.Length > LongestRemark) return Outcome.Fault<Ballot>("remark", $"A remark has {LongestRemark} letters at most; this one has {words.Length}.");
        var before = ballot.Answers.GetValueOrDefault(code) ?? SampleAnswer.Nothing;
        var answer = Liked(before, liking, slip) with { Remark = words.Length == 0 ? null : words };
        return Ballot.Of(plate, Groups(ballot), ballot.Answers.SetItem(code, answer));
    }

    /// <summary>What is asked of one sample after the places. Can be changed until the ballots close.</summary>
    /// <param name="ballot">The ballot so far.</param>
    /// <param name="plate">Every code dealt to this taster.</param>
    /// <param name="code">Which sample.</param>
    /// <param name="asked">What the ballot asks.</param>
    /// <param name="amounts">Answers by property: -1, 0 or 1, or null where none is given. What is not asked is passed over.</param>
    /// <param name="words">Words ticked.</param>
    /// <param name="again">Whether they would serve it again, or null.</param>
    /// <returns>The ballot with the answers, or what stands in the way.</returns>
    public static Outcome<Ballot> AnswerAfter(
        Ballot ballot,
        IReadOnlyCollection<BlindCode> plate,
        BlindCode code,
        BallotPlan asked,
        IReadOnlyDictionary<string, int?> amounts,
        IReadOnlyCollection<string> words,
        bool? again)
    {
        if (words.Any(word => !asked.Words.Contains(word, StringComparer.Ordinal))) return Outcome.Fault<Ballot>("words", "Only the words of this ballot can be ticked.");
        if (amounts.Values.Any(amount => amount is < -1 or > 1)) return Outcome.Fault<Ballot>("right", "Too little, just right or too much.");
        var answer = ballot.Answers.GetValueOrDefault(code) ?? SampleAnswer.Nothing;
        foreach (var property in asked.Right) answer = answer.With(property, amounts.GetValueOrDefault(property));
        // As the host wrote them: the order on one taster's screen is no part of the answer.
        if (asked.Words.Length > 0) answer = answer with { Words = [.. asked.Words.Where(words.Contains)] };
        if (asked.Again) answer = answer with { Again = again };
        return Ballot.Of(plate, Groups(ballot), ballot.Answers.SetItem(code, answer));
    }

    /// <summary>Whether the liking of a sample can still be corrected as a slip.</summary>
    /// <param name="answer">What was said.</param>
    public static bool CanCorrect(SampleAnswer answer) => answer is { Liking: not null, FirstLiking: null };

    /// <summary>Gives a ballot new places.</summary>
    /// <param name="ballot">The ballot so far.</param>
    /// <param name="plate">Every code dealt to this taster.</param>
    /// <param name="places">The places.</param>
    public static Outcome<Ballot> Place(Ballot ballot, IReadOnlyCollection<BlindCode> plate, Placement places) =>
        Ballot.Of(plate, [.. places.Groups.Select(group => (IReadOnlyCollection<BlindCode>)group)], ballot.Answers);

    private static SampleAnswer Liked(SampleAnswer before, int? liking, bool slip)
    {
        if (before.Liking is not { } locked) return before with { Liking = liking };
        if (!slip || liking is null || liking == locked || !CanCorrect(before)) return before;
        return before with { Liking = liking, FirstLiking = locked };
    }

    private static IEnumerable<IReadOnlyCollection<BlindCode>> Groups(Ballot ballot) => ballot.Places.Select(group => (IReadOnlyCollection<BlindCode>)group);
}
