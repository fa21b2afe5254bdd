using System.Collections.Immutable;
using System.Globalization;
using Trier.Publishing.Bundles;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Publishing.Tests.Bundles;

/// <summary>A made-up trial with everything a bundle has to hold: camps, a repeat, a tie, a torn ballot, a withdrawn wheel, notes, marks, quotes.</summary>
internal static class MadeUp
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 16, 12, 0, 0, TimeSpan.FromHours(1));
    private static readonly ImmutableArray<string> Orders =
    [
        "A B C D A2", "A B D C A2", "A A2 B C D", "A C B=D A2", "B A C D A2", "A B C A2",
        "D C B A A2", "D C A2 B A", "D B C A A2", "C D B A A2", "D C B A A2", "",
    ];

    public static TastingRecord Record(Func<int, Agreed>? agreed = null, Func<int, string>? name = null, Func<int, SampleAnswer>? answer = null)
    {
        var wheels = new[] { ("A", "House", "417"), ("B", "Thistle", "593"), ("C", "Hot", "238"), ("D", "Old Hot", "946") };
        var samples = wheels.Select((wheel, i) => new SampleRecord(wheel.Item1, wheel.Item2, wheel.Item3, null, new WheelMark(i + 1, i % 3, i + 1), Facts(i)))
            .Append(new SampleRecord("A2", "House again", "862", "A", new WheelMark(1, 0, 1), Facts(0)));
        return new(
            new("Thistle or calf?", "Which do we like best?", "The Broom Round", new DateOnly(2026, 5, 16), Invented: true, FromFile: false),
            new(CountingRule.Default, JuniorsCount: true),
            [.. samples],
            [.. Orders.Select((order, i) => Voter(i, order, agreed?.Invoke(i) ?? Agreed.ToNothing, name?.Invoke(i) ?? $"Person {i}", answer))],
            [new("E", "Short brine", Noon.AddHours(2), "rind crack, musty", WhileTasting: true, [name?.Invoke(1) ?? "Person 1"], new WheelMark(5, 0, 5))],
            [
                new(DayNoteKind.SpokenAloud, Noon.AddHours(3), $"At 15:00 {name?.Invoke(2) ?? "Person 2"} said what sample 946 was.") { Published = "At 15:00 somebody said aloud what sample 946 was." },
                new(DayNoteKind.Other, Noon.AddHours(4), $"{name?.Invoke(3) ?? "Person 3"} went home."),
            ]);
    }

    /// <summary>The same where the ballot asked about firmness and crumb and whether to serve it again, and one place on paper was unclear.</summary>
    public static TastingRecord Asked()
    {
        var record = Record(answer: i => new SampleAnswer { Liking = 1 + (i % 9), Again = i % 4 == 0 ? null : i % 3 > 0 }.With("firmness", i % 4 == 3 ? null : (i % 4) - 1).With("crumb", i % 5 == 0 ? 1 : null));
        return record with { Voters = [.. record.Voters.Select((voter, i) => i == 4 ? voter with { Marks = voter.Marks | VoterMarks.Unclear, Answers = voter.Answers.SetItem("B", voter.Answers["B"] with { Unclear = "1 or 7" }) } : voter)] };
    }

    public static Publication Publication(TastingRecord record, ulong seed = 11) => new()
    {
        Verdict = Judge.Of(PublishedRecord.Of(record), new Seed(seed)),
        Day = new DateOnly(2026, 5, 17),
        Key = new(new TrialId(new Guid("0198fb52-6c00-7000-8000-000000000001")), [new Commitment(1, 1, "000102030405060708090a0b0c0d0e0f", "zoo able about above absent", ["trier key 1", "tasting 0198fb52-6c00-7000-8000-000000000001", "key 1", "previous none", "417 A counts House"])], "zoo able about above absent"),
        OpenedAt = Noon.AddHours(5),
    };

    private static VoterRecord Voter(int i, string order, Agreed agreed, string name, Func<int, SampleAnswer>? answer)
    {
        var places = order.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(group => group.Split('=').ToImmutableArray()).ToImmutableArray();
        var marks = i switch { 2 => VoterMarks.Late, 3 => VoterMarks.Junior, 6 or 7 => VoterMarks.ComparedNotes, 11 => VoterMarks.LeftEarly, _ => VoterMarks.None };
        return new(
            string.Create(CultureInfo.InvariantCulture, $"T{i + 1:00}"),
            name,
            i == 10 ? VoterRole.KnewTheKey : VoterRole.Guest,
            marks,
            [$"came 15:0{i % 10} because of {name}"],
            i < 6 ? DeclaredTaste.Milder : DeclaredTaste.Stronger,
            i is 6 or 7 ? 1 : null,
            ["A", "B", "C", "D", "A2"],
            places,
            [],
            new[] { "A", "B", "C", "D", "A2" }.ToImmutableSortedDictionary(id => id, id => answer?.Invoke(i) ?? new SampleAnswer { Liking = 1 + (((i * 3) + id[0]) % 9), Salt = ((i + id[0]) % 3) - 1 }, StringComparer.Ordinal))
        {
            Agreed = agreed,
            Sitting = 1,
            Group = i is 0 or 1 ? "the house of Qgroupq" : null,
        };
    }

    private static WheelFacts Facts(int i) => WheelFacts.Of([new("recipe", i < 2 ? "House" : "Hot"), new("made", $"2025-1{i % 3}-0{i + 1}"), new("notes", "Marker in a note")]);
}
