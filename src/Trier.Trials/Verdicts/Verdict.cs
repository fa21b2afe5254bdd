using System.Collections.Immutable;
using Trier.Trials.Verdicts.Findings;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Verdicts;

/// <summary>
/// What may be concluded from one tasting: a set of findings, each computed from the record, a seed and an effort alone, and
/// the sentences made of them. Page, terminal, paper and JSON render these values; none of them computes.
/// </summary>
public sealed record Verdict
{
    /// <summary>Changes whenever the same record could get another number or sentence.</summary>
    public const string MethodsVersion = "5";

    /// <summary>What was judged.</summary>
    public required TastingRecord Record { get; init; }

    /// <summary>Where chance came from.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Who counts, and what n means.</summary>
    public required Panel Panel { get; init; }

    /// <summary>The wheels that count, repeats left out, best first by the planned rule; equals in the order of their ids.</summary>
    public required ImmutableArray<SampleRecord> Wheels { get; init; }

    /// <summary>Ids of the leaders by the planned rule; several where they tie, none where nothing can be counted.</summary>
    public required ImmutableArray<string> Leaders { get; init; }

    /// <summary>What is shown, on the ladder from 0 to 6.</summary>
    public required LevelFinding Level { get; init; }

    /// <summary>The counts, in the order of <see cref="Wheels"/>.</summary>
    public required ImmutableArray<TallyLine> Tally { get; init; }

    /// <summary>The counts with the ballots of those who knew the key put in, in the order of <see cref="Wheels"/>; empty where there are none.</summary>
    public required ImmutableArray<TallyLine> TallyWithTheKey { get; init; }

    /// <summary>Whether there is any difference; null where nothing can be tested.</summary>
    public required GateFinding? Gate { get; init; }

    /// <summary>Friedman's test on the complete ballots, each by itself; null where there is none.</summary>
    public required FriedmanFinding? Friedman { get; init; }

    /// <summary>Every pair, clearest first; empty where nothing can be tested.</summary>
    public required ImmutableArray<PairFinding> Pairs { get; init; }

    /// <summary>Who was placed above whom on how many ballots: one entry per ordered pair, in the order of <see cref="Wheels"/>.</summary>
    public required ImmutableArray<HeadToHeadFinding> HeadToHead { get; init; }

    /// <summary>The orders nearest to all ballots; null for more than twelve wheels or without a ballot.</summary>
    public required KemenyFinding? Kemeny { get; init; }

    /// <summary>Average places on complete ballots and adjusted ones on all ballots, in the order of <see cref="Wheels"/>.</summary>
    public required ImmutableArray<PlaceLine> Places { get; init; }

    /// <summary>The hidden repeats.</summary>
    public required ImmutableArray<RepeatFinding> Repeats { get; init; }

    /// <summary>Two wheels of one recipe.</summary>
    public required ImmutableArray<SameRecipeFinding> SameRecipe { get; init; }

    /// <summary>Whether the salt was just right, as counts; empty where it was not asked. In the order of <see cref="Wheels"/>.</summary>
    public required ImmutableArray<SaltFinding> Salt { get; init; }

    /// <summary>Other properties than salt, asked and counted in the same way; empty where none was asked.</summary>
    public ImmutableArray<PropertyFinding> Properties { get; init; } = [];

    /// <summary>How many would serve each wheel again; empty where it was not asked. In the order of <see cref="Wheels"/>.</summary>
    public ImmutableArray<AgainFinding> Again { get; init; } = [];

    /// <summary>Words ticked, the most ticked first; empty where none was.</summary>
    public ImmutableArray<WordFinding> WordCounts { get; init; } = [];

    /// <summary>Ballots on paper on which a place could not be read for certain; it counts as a tie.</summary>
    public int Unclear { get; init; }

    /// <summary>The tally by place points with other weights than those it shows: counts to look at, never the verdict.</summary>
    public ImmutableArray<Reweighed> OtherWeights { get; init; } = [];

    /// <summary>What was written about the wheels, in their order; wheels without a word are left out.</summary>
    public required ImmutableArray<SaidFinding> Said { get; init; }

    /// <summary>What takes longer; null until it is worked out.</summary>
    public required DeepFindings? Deep { get; init; }

    /// <summary>What happens to leader and level when something is counted another way; empty until it is worked out.</summary>
    public ImmutableArray<Variant> Variants => Deep?.Variants ?? [];

    /// <summary>The fewest ballots whose loss changes the leader; null where the lead is shared or nothing can be counted.</summary>
    public required FewestFinding? Fewest { get; init; }

    /// <summary>Every ballot, placed or not, in the order of the tasters' ids.</summary>
    public required ImmutableArray<BallotStrip> Ballots { get; init; }

    /// <summary>The sentences.</summary>
    public required VerdictWords Words { get; init; }

    /// <summary>What a reader must be warned of, one sentence each.</summary>
    public required ImmutableArray<string> Cautions { get; init; }

    /// <summary>The same verdict with what takes longer, and its sentences.</summary>
    /// <param name="deep">Worked out from this verdict's record and seed.</param>
    public Verdict With(DeepFindings deep)
    {
        var whole = this with { Deep = deep };
        return whole with { Words = Wording.Of(whole) };
    }

    /// <summary>A wheel that counts, or a sample that repeats one.</summary>
    /// <param name="id">Its id.</param>
    public SampleRecord Sample(string id) => Record.Samples.First(s => s.Id == id);
}
