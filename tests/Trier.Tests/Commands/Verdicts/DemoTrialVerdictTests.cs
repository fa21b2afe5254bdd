using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trier.Commands.Verdicts;
using Trier.Demo;
using Trier.Statistics.Randomness;
using Trier.Storage;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;
using Trier.Web.Hosting;

namespace Trier.Tests.Commands.Verdicts;

/// <summary>The whole demo trial, with the day's marks, judged from its database.</summary>
public sealed class DemoTrialVerdictTests : IAsyncLifetime
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-tests-");
    private Verdict _verdict = null!;

    public async ValueTask InitializeAsync()
    {
        var settings = new HostSettings(_folder.FullName, 0, Lan: null);
        var id = await DemoTrial.SeedAsync(settings);
        using var writer = new WriterGate();
        var store = new TrialStore(new Databases(settings.Database), writer, TimeProvider.System);
        var tasting = (RevealedTasting)(await store.FindAsync(id))!;
        _verdict = Judge.Of(tasting.Record(await store.BallotsAsync(tasting)), new Seed(20250830));
    }

    [Fact]
    public void The_day_s_marks_take_it_from_shown_to_a_hint()
    {
        Assert.Equal((3, 11L, 12L, 14), (_verdict.Level.Level, _verdict.Panel.Voices, _verdict.Panel.Ballots, _verdict.Panel.Tasters));
        Assert.Equal("Thistle is our best bet: nobody put it last and it has the best average place.", _verdict.Words.Top[0]);
        Assert.Contains("Duarte and Caio compared notes and are one voice, which makes 11 voices", _verdict.Words.Top[1], StringComparison.Ordinal);
        Assert.Equal("Thistle came out ahead: a hint, not proof, for even if all wheels tasted alike, ballots this uneven would turn up about 1 time in 16.", _verdict.Words.Top[2]);
        Assert.Equal(["W2", "W1", "W3", "W6", "W5"], _verdict.Wheels.Select(w => w.Id));
    }

    [Fact]
    public void What_tips_it_is_told()
    {
        Variant One(VariantKind kind) => Assert.Single(_verdict.Variants, v => v.Kind == kind);

        // Firsts in the order Thistle, House, Hot, Old Hot, House 2.
        Assert.Equal([3L, 4, 1, 5, 0], One(VariantKind.WithTheKey).Firsts);
        Assert.Equal([27.5, 38, 38, 38, 53.5], _verdict.TallyWithTheKey.Select(t => t.RankSum));
        Assert.Equal([3L, 4, 1, 2, 0], One(VariantKind.WithoutJoined).Firsts);
        Assert.Equal([3L, 4, 1, 3, 0], One(VariantKind.WithoutJuniors).Firsts);
        Assert.Equal(5, One(VariantKind.JoinedApart).Level);
        Assert.Contains("With Benedita’s own ballot, not blind, Thistle still leads and Old Hot has the most firsts, 5 to 4.", _verdict.Words.Tips);
        Assert.Contains("House and Old Hot tie for the most firsts, 4 each, but Thistle has the best average place.", _verdict.Words.Disagreement);
        Assert.Equal("People who like milder and people who like stronger cheese parted over House and Old Hot.", _verdict.Words.Headlines[2]);
        Assert.Equal(["Hot", "House"], _verdict.SameRecipe.Select(s => s.Recipe));
        Assert.Contains(_verdict.Words.Limits, s => s.StartsWith("Short brine was withdrawn at 14:52", StringComparison.Ordinal));
        Assert.DoesNotContain(_verdict.Words.Limits, s => s.Contains("ballot file", StringComparison.Ordinal));
    }

    [Fact]
    public void What_cannot_be_known_names_the_old_wheel_s_age_and_withholds_the_recipe()
    {
        Assert.Contains("Thistle and House differ, as far as is written, in their recipe and their vat day alone; which of the two parts them cannot be told.", _verdict.Words.Limits);
        Assert.Contains("Old Hot was 553 days old, the next oldest 168: what people said of it may be its age, or lysozyme, milk or milk year, which came with it; nobody can take them apart here. Held against Hot, of the same recipe, it shows what all of these did together, and age alone cannot be named.", _verdict.Words.Limits);
        Assert.Contains("Two makes of House came out 1.2 places apart, Thistle and House 0.8 places: one make differs from the next at least as much, so nothing is said of recipes.", _verdict.Words.Limits);
    }

    [Fact]
    public void The_trial_that_follows_puts_Thistle_against_House_in_two_makes_each()
    {
        var follow = Trier.Trials.Plans.FollowUps.FollowUp.From(_verdict, DemoTrial.Id, new(_verdict.Record.Head.Title, "Which?", "", null, _verdict.Record.Plan.Rule, JuniorsCount: true, Invented: true)).Value;
        Assert.Equal("Thistle or House?", follow.Plan.Title);
        Assert.Equal(["Thistle 1", "House 1", "Thistle 2", "House 2"], follow.Wheels.Select(wheel => wheel.Name));
        Assert.Equal(161, follow.Plan.Aims!.AgeDays);
        Assert.InRange(follow.Plan.Aims.Tasters!.Value, 20, 40);
        Assert.Equal("Thistle leads, and against House it is open.", follow.Plan.Aims.Reasons[0]);
        Assert.Contains(follow.Plan.Aims.Reasons, reason => reason.StartsWith("Short brine was withdrawn and stays out here too", StringComparison.Ordinal));
        Assert.Contains(follow.Plan.Aims.Reasons, reason => reason.Contains("milder", StringComparison.Ordinal));
    }

    [Fact]
    public void The_camps_part_over_House_and_the_old_wheel()
    {
        var camps = _verdict.Deep!.Camps!;
        Assert.True(camps.Parted);
        // Of the 462 ways to deal six and five labels one is as uneven; with the two who compared notes as one voice one of 210.
        Assert.Equal((6, 4, 210.0), (camps.Milder, camps.Stronger, camps.Ways));
        Assert.Equal(1 / 210.0, camps.P.Value, 1e-12);
        Assert.Equal(["W1", "W6"], camps.Wheels.Where(wheel => wheel.Shown).Select(wheel => wheel.Id).Order(StringComparer.Ordinal));
        Assert.StartsWith("Shown: people who like milder cheese (6 voices) and people who like stronger cheese (4) parted over House and Old Hot: average places House at 1.3 against 4.1, Old Hot at 4.8 against 1.5; ", _verdict.Words.Disagreement[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Each_camp_has_a_bet_of_its_own()
    {
        double Chance(int camp, string wheel) => _verdict.Deep!.Chances!.InCamps[camp].Wheels.Single(found => found.Id == wheel).Chance;

        // A separate program gave .76 and .24, .82, .12 and .06, each taster a voice of their own.
        Assert.Equal(.76, Chance(0, "W1"), .025);
        Assert.Equal(.24, Chance(0, "W2"), .02);
        // The stronger camp holds the two who compared notes, half a voice each: less is known than by five voices.
        Assert.InRange(Chance(1, "W6"), .6, .82);
        Assert.StartsWith("The bet depends on whom you make it for: among the 6 who like milder cheese House is the bet, about ", _verdict.Words.Top[3], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void The_page_is_the_same_in_every_language_and_fits_eighty_columns(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        var plain = TerminalPage.Write(_verdict);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(plain, TerminalPage.Write(_verdict));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.All(plain.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains("  Odete     ▌○ House 2 │◆ Thistle │● House   │■ Hot        no Old Hot", plain, StringComparison.Ordinal);
        Assert.Contains("usually prefer milder", plain, StringComparison.Ordinal);
    }

    public ValueTask DisposeAsync()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        _folder.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    private sealed class Databases(string file) : IDbContextFactory<TrierDb>
    {
        public TrierDb CreateDbContext()
        {
            var options = new DbContextOptionsBuilder<TrierDb>();
            options.UseTrierSqlite(file);
            return new TrierDb(options.Options);
        }
    }
}
