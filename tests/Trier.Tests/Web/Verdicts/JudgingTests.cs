using System.Collections.Immutable;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging.Abstractions;
using Trier.Statistics.Randomness;
using Trier.Storage;
using Trier.Storage.Verdicts;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;
using Trier.Web.Hosting;
using Trier.Web.Plans;
using Trier.Web.Verdicts;

namespace Trier.Tests.Web.Verdicts;

public sealed class JudgingTests
{
    private static readonly Verdict Headline = Judge.Headline(Record("ABC", "ABC", "BAC", "BCA", "BAC"), new Seed(1));

    [Fact]
    public async Task Work_that_is_stopped_is_not_begun_again_until_the_maker_says_so()
    {
        using var judging = new Judging(1, Headline);
        var begun = 0;
        Task<Verdict> Begin(CancellationToken stop)
        {
            begun++;
            return Task.Delay(Timeout.Infinite, stop).ContinueWith(_ => Headline, stop, TaskContinuationOptions.None, TaskScheduler.Default);
        }

        var first = judging.Whole(Begin);
        Assert.Same(first, judging.Whole(Begin));
        Assert.False(judging.Stopped);
        judging.Stop();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
        Assert.True(judging.Stopped);
        Assert.True(judging.Whole(Begin).IsCanceled);
        Assert.Equal(1, begun);
        judging.GoOn();
        Assert.False(judging.Stopped);
        Assert.Same(Headline, await judging.Whole(_ => Task.FromResult(Headline)));
        judging.Stop();
        Assert.False(judging.Stopped);
    }

    [Fact]
    public async Task Work_that_went_wrong_is_begun_again_at_the_next_look()
    {
        using var judging = new Judging(1, Headline);
        var failed = judging.Whole(_ => Task.FromException<Verdict>(new IOException("the disk is full")));
        Assert.True(failed.IsFaulted);
        judging.Forget(failed);
        var again = judging.Whole(_ => Task.FromResult(Headline));
        Assert.Same(Headline, await again);
        judging.Forget(again);
        Assert.Same(again, judging.Whole(_ => throw new InvalidOperationException()));
    }

    [Fact]
    public async Task A_verdict_that_cannot_be_kept_is_shown_and_kept_later()
    {
        await using var evening = await Evening.BeginAsync();
        await evening.ActAsync<OpenTasting>(tasting => tasting.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(tasting => tasting.Reveal(evening.Trials.Now));
        var disk = new FullDisk(evening.Services.GetRequiredService<IDbContextFactory<TrierDb>>());
        var findings = new FindingsStore(disk, evening.Services.GetRequiredService<WriterGate>());
        using var judged = new JudgedTastings(evening.Trials, findings, evening.Services.GetRequiredService<IHostApplicationLifetime>(), NullLogger<JudgedTastings>.Instance);
        var here = TestContext.Current.CancellationToken;
        async Task<JudgingState> LookAsync() => (await judged.FindAsync(evening.Trial, TimeSpan.FromMinutes(1), here))!.Progress.State;

        disk.FullFrom = 1;
        Assert.Equal(JudgingState.Failed, await LookAsync());
        // Twice it is looked whether the answer is known; the third is to keep it, and so is the fourth, at the end of the same look.
        (disk.Opened, disk.FullFrom) = (0, 3);
        Assert.Equal(JudgingState.Whole, await LookAsync());
        Assert.Equal(4, disk.Opened);
        disk.FullFrom = int.MaxValue;
        var headline = (await judged.FindAsync(evening.Trial, TimeSpan.Zero, here))!.Verdict;
        Assert.NotNull(await findings.FindAsync(headline, here));
        disk.Opened = 0;
        Assert.Equal(JudgingState.Whole, await LookAsync());
        Assert.Equal(0, disk.Opened);
    }

    [Fact]
    public async Task What_takes_long_and_cannot_be_kept_is_shown_and_kept_later_and_is_begun_again_where_it_went_wrong()
    {
        await using var evening = await Evening.BeginAsync();
        var disk = new FullDisk(evening.Services.GetRequiredService<IDbContextFactory<TrierDb>>());
        var store = new KeptStore(disk, evening.Services.GetRequiredService<WriterGate>());
        using var kept = new KeptWork(store, evening.Services.GetRequiredService<IHostApplicationLifetime>(), NullLogger<KeptWork>.Instance);
        var here = TestContext.Current.CancellationToken;
        var worked = 0;
        async Task<string?> LookAsync() => (await kept.FindAsync("key", (_, _) => ++worked == 1 ? throw new InvalidOperationException("once") : $"answer {worked}", TimeSpan.FromMinutes(1), here)).Found;

        Assert.Null(await LookAsync());
        (disk.Opened, disk.FullFrom) = (0, 2);
        Assert.Equal("answer 2", await LookAsync());
        disk.FullFrom = int.MaxValue;
        Assert.Null(await store.FindAsync<string>("key", here));
        Assert.Equal("answer 2", await LookAsync());
        Assert.Equal("answer 2", await store.FindAsync<string>("key", here));
        Assert.Equal(2, worked);
    }

    // Opens no database from a certain time on.
    private sealed class FullDisk(IDbContextFactory<TrierDb> real) : IDbContextFactory<TrierDb>
    {
        public int Opened { get; set; }

        public int FullFrom { get; set; } = int.MaxValue;

        public TrierDb CreateDbContext() => ++Opened >= FullFrom ? throw new IOException("The disk is full.") : real.CreateDbContext();
    }

    [Fact]
    public void Weights_that_are_tried_are_counted_or_refused_in_a_sentence()
    {
        var untouched = TriedWeights.Read(null, Headline);
        Assert.Equal("2 1 0", untouched.Asked);
        Assert.Null(untouched.Count);
        var firsts = TriedWeights.Read("1 0 0", Headline);
        Assert.Empty(firsts.Faults);
        Assert.Equal([2, 3, 0], firsts.Count!.Lines.OrderBy(line => line.Id, StringComparer.Ordinal).Select(line => line.Points!.Value));
        Assert.NotNull(TriedWeights.Read("2,5 1 0", Headline).Count);
        Assert.Equal("3 wheels need 3 numbers; there are 2.", Assert.Single(TriedWeights.Read("3 1", Headline).Faults).Sentence);
        Assert.Equal("Points fall from the first place to the last.", Assert.Single(TriedWeights.Read("1 2 3", Headline).Faults).Sentence);
        Assert.StartsWith("“x” is no number", Assert.Single(TriedWeights.Read("x 2 1", Headline).Faults).Sentence, StringComparison.Ordinal);
        Assert.StartsWith("“99999999999” is no number", Assert.Single(TriedWeights.Read("99999999999 2 1", Headline).Faults).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("9999999 0.055 0", "A place has 1000 points at most.")]
    [InlineData("1000.001 1 0", "A place has 1000 points at most.")]
    [InlineData("1.0004 1 0", "Points have three decimals at most.")]
    [InlineData("0.0005 0.0001 0", "Points have three decimals at most.")]
    [InlineData("1000 0.001 0", null)]
    [InlineData("1.0000 0.5 0", null)]
    public void Weights_that_the_count_cannot_carry_are_refused_in_a_sentence(string typed, string? sentence)
    {
        var tried = TriedWeights.Read(typed, Headline);
        Assert.Equal(sentence, tried.Faults.SingleOrDefault()?.Sentence);
        Assert.Equal(sentence is null, tried.Count is { Leaders.Length: > 0 });
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("en-US")]
    public void Weights_are_written_the_same_whatever_language_the_machine_speaks(string culture)
    {
        var weighted = Judge.Headline(Headline.Record with { Plan = new(new CountingRule.PlacePoints([4.5m, 3.125m, 0m]), JuniorsCount: true) }, new Seed(1));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal("4,5 3,125 0", TriedWeights.Read(null, weighted).Asked);
            Assert.Equal("place points 4,5-3,125-0", RuleWords.Of(weighted.Record.Plan.Rule));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static TastingRecord Record(params string[] ballots) => new(
        new RecordHead("Test", "Which?", null, null, Invented: true, FromFile: false),
        new JudgingPlan(CountingRule.Default, JuniorsCount: true),
        [.. "ABC".Select(sign => new SampleRecord($"{sign}", $"Wheel {sign}", null, null, null, WheelFacts.Of([])))],
        [.. ballots.Select((ballot, i) => new VoterRecord($"T{i}", $"T{i}", VoterRole.Guest, VoterMarks.None, [], null, null, [], [.. ballot.Select(sign => ImmutableArray.Create($"{sign}"))], [], ImmutableSortedDictionary<string, SampleAnswer>.Empty))],
        [],
        []);
}
