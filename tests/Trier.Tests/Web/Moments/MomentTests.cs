using System.Text.RegularExpressions;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Tests.Web.Ballots;
using Trier.Tests.Web.Roles;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Plates;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;

namespace Trier.Tests.Web.Moments;

/// <summary>What goes wrong on the one afternoon that cannot be repeated, and what the maker does then: each by the forms of the maker's own pages, without script.</summary>
public sealed partial class MomentTests
{
    [Fact]
    public async Task A_wheel_is_pulled_an_hour_before_the_guests_arrive()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        await PostAsync(maker, evening, "", "seal");
        var before = (await evening.TastingAsync()).Book;
        var (gone, stays) = (before.Entries[1], before.Entries[0]);
        var code = before.Key!.Of(gone.Wheel)[0].Code;
        await maker.GetAsync(Path(evening, $"wheels/{gone.Wheel.Value}"));
        await maker.PostAsync(maker.Form(Path(evening, "withdraw"), ("reason", "smells of ammonia"), ("by", "Ana"), ("repeat", stays.Wheel.Value.ToString())));
        Assert.EndsWith("/plates", maker.Path, StringComparison.Ordinal);
        Assert.DoesNotMatch(KeySpy.Seen(code), maker.Html);
        var after = (await evening.TastingAsync()).Book;
        Assert.Contains(code, after.Key!.Retired);
        // Guests see no gap: the free place went to a second serving, never next to the first.
        Assert.All(after.Present, taster => Assert.Equal(4, after.Served(taster.Id).Length));
        Assert.Equal(0, PlateFacts.Of(after)!.Adjacent);
        await maker.GetAsync(Path(evening, "cards?only=changed"));
        Assert.All(after.Present, taster => Assert.Contains(taster.Name, maker.Text, StringComparison.Ordinal));
        await evening.ActAsync<SealedTasting>(ready => ready.Open(evening.Trials.Now));
        var withdrawal = Assert.Single((await RevealedAsync(evening)).Withdrawals);
        Assert.Equal((gone.Name, "smells of ammonia", false), (withdrawal.Name, withdrawal.Reason, withdrawal.WhileTasting));
    }

    [Fact]
    public async Task A_wheel_is_pulled_after_a_guest_tasted_it_and_plates_still_in_the_kitchen_are_made_again()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        var book = (await evening.TastingAsync()).Book;
        var gone = book.Entries[1];
        var code = book.Key!.Of(gone.Wheel)[0].Code;
        await SendAsync(evening, "Ada");
        var cleo = await evening.TasterAsync("Cleo");
        var (ada, bruno) = (await evening.ServedAsync("Ada"), await evening.ServedAsync("Bruno"));
        await maker.GetAsync(Path(evening, $"wheels/{gone.Wheel.Value}"));
        await maker.PostAsync(maker.Form(Path(evening, "withdraw"), ("reason", "blue inside"), ("kitchen", cleo.Id.Value.ToString()), ("repeat", book.Entries[0].Wheel.Value.ToString())));
        Assert.Contains($"Take sample {code} off every plate.", maker.Text, StringComparison.Ordinal);
        Assert.Equal(ada.Where(served => served != code), await evening.ServedAsync("Ada"));
        Assert.Equal(bruno.Where(served => served != code), await evening.ServedAsync("Bruno"));
        Assert.Equal(4, (await evening.ServedAsync("Cleo")).Length);
        await maker.GetAsync(Path(evening, "cards?only=changed"));
        Assert.Contains("Cleo", maker.Text, StringComparison.Ordinal);
        var record = await RevealedAsync(evening);
        Assert.Equal(["Ada"], Assert.Single(record.Withdrawals).HadIt);
        // Her order of the others stands as she gave it.
        Assert.Equal(3, record.Voters.Single(voter => voter.Name == "Ada").Places.Length);
    }

    [Fact]
    public async Task A_guest_arrives_half_an_hour_late()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        await PostAsync(maker, evening, "board", "tasters", ("taster", "Dora"));
        var book = (await evening.TastingAsync()).Book;
        var dora = book.Tasters.Single(taster => taster.Name == "Dora");
        Assert.Equal((4, 4), (book.Plate(dora.Id)!.Number, book.Served(dora.Id).Length));
        Assert.Single(book.Late, late => late.Taster == dora.Id);
        Assert.Contains("The samples have stood for", maker.Text, StringComparison.Ordinal);
        await SendAsync(evening, "Dora");
        Assert.True((await RevealedAsync(evening)).Voters.Single(voter => voter.Name == "Dora").Marks.HasFlag(VoterMarks.Late));
    }

    [Fact]
    public async Task A_guest_may_not_eat_one_wheel_and_nobody_else_sees_why()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        var egg = (await evening.TastingAsync()).Book.Entries[2];
        var bruno = await evening.TasterAsync("Bruno");
        await PostAsync(maker, evening, $"tasters/{bruno.Id.Value}", $"tasters/{bruno.Id.Value}/left-off", ("off", egg.Wheel.Value.ToString()));
        await evening.OpenAsync();
        var book = (await evening.TastingAsync()).Book;
        Assert.DoesNotContain(book.Served(bruno.Id), code => book.Key![code]!.Wheel == egg.Wheel);
        Assert.Equal((3, 4), (book.Served(bruno.Id).Length, book.Served(book.Tasters[0].Id).Length));
        var phone = evening.NewPhone();
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        Assert.DoesNotContain("Bruno", phone.Text, StringComparison.Ordinal);
        await SendAsync(evening, "Bruno");
        var voter = (await RevealedAsync(evening)).Voters.Single(voter => voter.Name == "Bruno");
        Assert.Equal((3, true), (voter.Places.Length, voter.Marks.HasFlag(VoterMarks.FewerSamples)));
    }

    [Fact]
    public async Task Two_guests_compare_notes()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        var (ada, bruno) = (await evening.TasterAsync("Ada"), await evening.TasterAsync("Bruno"));
        await maker.GetAsync(Path(evening, "board"));
        var (action, fields) = maker.Form(Path(evening, "room/compared"));
        await maker.PostAsync((action, [.. fields, new("people", ada.Id.Value.ToString()), new("people", bruno.Id.Value.ToString())]));
        Assert.Contains("Ada and Bruno compared notes.", maker.Text, StringComparison.Ordinal);
        foreach (var name in new[] { "Ada", "Bruno", "Cleo" }) await SendAsync(evening, name);
        var voters = (await RevealedAsync(evening)).Voters;
        Assert.NotNull(voters[0].Voice);
        Assert.Equal(voters[0].Voice, voters[1].Voice);
        Assert.Null(voters[2].Voice);
        Assert.All(voters, voter => Assert.Equal(4, voter.Places.Length));
    }

    [Fact]
    public async Task Somebody_says_aloud_what_a_sample_is()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        await SendAsync(evening, "Ada");
        var code = (await evening.ServedAsync("Ada"))[0];
        await PostAsync(maker, evening, "board", "room/spoken", ("first", code.ToString()), ("words", "that is the old one"));
        await SendAsync(evening, "Bruno");
        var record = await RevealedAsync(evening);
        Assert.Contains(record.Notes, note => note.Kind == DayNoteKind.SpokenAloud && note.Sentence.Contains("that is the old one", StringComparison.Ordinal));
        Assert.Empty(record.Voters.Single(voter => voter.Name == "Ada").Named);
        Assert.Single(record.Voters.Single(voter => voter.Name == "Bruno").Named);
    }

    [Fact]
    public async Task Two_codes_were_swapped_on_one_plate()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        var served = await evening.ServedAsync("Ada");
        await SendAsync(evening, "Ada");
        await SendAsync(evening, "Bruno");
        var ada = await evening.TasterAsync("Ada");
        await PostAsync(maker, evening, "board", "room/swapped", ("who", ada.Id.Value.ToString()), ("first", served[0].ToString()), ("second", served[1].ToString()), ("reason", "the card lay turned"), ("witness", "Cleo"));
        var book = (await evening.TastingAsync()).Book;
        Assert.Equal(served, book.Served(ada.Id));
        var record = await RevealedAsync(evening);
        string Label(BlindCode code) => book.Entry(book.Key![code]!.Wheel)!.Label;
        var places = record.Voters.Single(voter => voter.Name == "Ada").Places.Select(group => Assert.Single(group)).ToList();
        Assert.Equal([Label(served[1]), Label(served[0]), Label(served[2]), Label(served[3])], places);
        Assert.Contains(record.Notes, note => note.Kind == DayNoteKind.CodesSwapped && note.Sentence.Contains("seen by Cleo", StringComparison.Ordinal));
        Assert.False(record.Voters.Single(voter => voter.Name == "Bruno").Marks.HasFlag(VoterMarks.Corrected));
    }

    [Fact]
    public async Task The_host_peeks_for_a_running_result_and_is_asked_twice_before_the_key_opens()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        await SendAsync(evening, "Ada");
        foreach (var page in new[] { "board", "room?still" })
        {
            await maker.GetAsync(Path(evening, page));
            Assert.All(Evening.Names, wheel => Assert.DoesNotContain(wheel, maker.Text, StringComparison.Ordinal));
        }

        await PostAsync(maker, evening, "plating", "plating", ("who", "maker"));
        Assert.Contains("Open the key before the ballots are closed?", maker.Text, StringComparison.Ordinal);
        Assert.Empty((await evening.TastingAsync()).Book.KeyOpenings);
        Assert.All(Evening.Names, wheel => Assert.DoesNotContain(wheel, maker.Text, StringComparison.Ordinal));
        await maker.PostAsync(maker.Form(Path(evening, "plating")));
        Assert.All(Evening.Names, wheel => Assert.Contains(wheel, maker.Text, StringComparison.Ordinal));
        await SendAsync(evening, "Bruno");
        var record = await RevealedAsync(evening);
        Assert.Contains(record.Notes, note => note.Kind == DayNoteKind.KeyOpenedEarly);
        Assert.False(record.Voters.Single(voter => voter.Name == "Ada").Marks.HasFlag(VoterMarks.AfterKeyOpened));
        Assert.True(record.Voters.Single(voter => voter.Name == "Bruno").Marks.HasFlag(VoterMarks.AfterKeyOpened));
    }

    [Fact]
    public async Task Only_six_of_fourteen_come()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        for (var i = 4; i <= 14; i++) await evening.ActAsync<DraftTasting>(draft => draft.AddTaster(evening.Trials.Now, new TasterId(Guid.NewGuid()), $"Guest {i}", false, false, 1));
        var maker = await evening.MakerAsync();
        await PostAsync(maker, evening, "", "seal");
        var here = (await evening.TastingAsync()).Book.Tasters.Where((_, index) => index % 5 != 2 && index % 2 == 0).Select(taster => taster.Id).Take(6).ToList();
        await maker.GetAsync(Path(evening, "plates"));
        var (action, fields) = maker.Form(Path(evening, "only-these"));
        await maker.PostAsync((action, [.. fields.Where(field => field.Key != "here"), .. here.Select(taster => KeyValuePair.Create("here", taster.Value.ToString()))]));
        var book = (await evening.TastingAsync()).Book;
        Assert.Equal(here, book.Plates.Values.Select(plate => plate.Taster));
        var facts = PlateFacts.Of(book)!;
        Assert.Equal(here.Count, facts.Plates);
        Assert.InRange(facts.Balance.PositionSpread, 0, 1);
        Assert.Contains($"{here.Count} plates, 4 samples each.", maker.Text, StringComparison.Ordinal);
        Assert.Contains($"What {here.Count} tasters can show", maker.Text, StringComparison.Ordinal);
        await evening.ActAsync<SealedTasting>(ready => ready.Open(evening.Trials.Now));
        // One more comes after all, and says at the table which plate stands there.
        var late = book.Tasters.First(taster => !here.Contains(taster.Id));
        var phone = evening.NewPhone();
        await phone.GetAsync((await evening.DoorAsync(late.Name)).Path);
        Assert.Contains("Which number is on your plate?", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync(("plate", "1"));
        Assert.Contains("This plate is not free.", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync(("plate", $"{here.Count + 1}"));
        Assert.Equal(here.Count + 1, (await evening.TastingAsync()).Book.Plate(late.Id)!.Number);
        Assert.Equal(4, (await evening.ServedAsync(late.Name)).Length);
    }

    [Fact]
    public async Task A_sample_falls_two_people_share_a_link_and_a_plate_is_made_again()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        var (ada, served) = (await evening.TasterAsync("Ada"), await evening.ServedAsync("Ada"));
        await PostAsync(maker, evening, "board", "room/dropped", ("who", ada.Id.Value.ToString()), ("first", served[0].ToString()), ("replaced", ""));
        Assert.Equal(served.Skip(1), await evening.ServedAsync("Ada"));
        await PostAsync(maker, evening, "board", "room/undo");
        Assert.Equal(served, await evening.ServedAsync("Ada"));
        await PostAsync(maker, evening, "board", "room/parted", ("who", ada.Id.Value.ToString()), ("second", "Dora"));
        var book = (await evening.TastingAsync()).Book;
        Assert.Contains(book.Compared, compared => compared.Tasters.SequenceEqual([ada.Id, book.Tasters[3].Id]));
        Assert.Equal(4, (await evening.ServedAsync("Dora")).Length);
        await PostAsync(maker, evening, "plates", "make-again", ("number", "2"), ("reason", "it fell"));
        Assert.Contains("cards?only=2", maker.Path, StringComparison.Ordinal);
        Assert.Contains("Bruno", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Cleo", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plater_ticks_the_work_in_its_order_and_no_tick_is_another_opening()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        await evening.ActAsync<DraftTasting>(draft => draft.Seal(evening.Trials.Now, new Seed(7)));
        var plater = evening.NewPhone();
        var path = await evening.Helpers.PathAsync(evening.Trial, Trier.Web.Access.Helper.Plater);
        await plater.GetAsync(path);
        await plater.PostAsync((path, [new("by", "Gus")]));
        // The wheel with an allergen is cut last.
        Assert.True(plater.Text.IndexOf(Evening.Names[3], StringComparison.Ordinal) < plater.Text.IndexOf(Evening.Names[2], StringComparison.Ordinal));
        await plater.PostAsync((path, [new("by", "Gus"), new("tick", "cut W1")]));
        await plater.PostAsync((path, [new("by", "Gus"), new("tick", "plate 2")]));
        Assert.Contains("1 of 3 plates are ready.", plater.Text, StringComparison.Ordinal);
        var book = (await evening.TastingAsync()).Book;
        Assert.Equal((1, 2), (book.KeyOpenings.Length, book.Plated.Count));
        await plater.PostAsync((path, [new("by", "Somebody else"), new("tick", "plate 3")]));
        Assert.Equal(2, (await evening.TastingAsync()).Book.KeyOpenings.Length);
        await evening.ActAsync<SealedTasting>(ready => ready.MakeAgain(evening.Trials.Now, 2, "it fell"));
        Assert.DoesNotContain("plate 2", (await evening.TastingAsync()).Book.Plated);
    }

    [Fact]
    public async Task A_scribe_reaches_the_ballots_they_are_named_for_and_is_never_somebody_who_saw_the_key()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        var ada = await evening.TasterAsync("Ada");
        await PostAsync(maker, evening, $"tasters/{ada.Id.Value}", $"tasters/{ada.Id.Value}/scribe", ("scribe", "Gus"));
        var scribe = evening.NewPhone();
        await scribe.GetAsync(await evening.Helpers.PathAsync(evening.Trial, Trier.Web.Access.Helper.Scribe));
        Assert.Contains("The ballot of Ada", scribe.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Bruno", scribe.Text, StringComparison.Ordinal);
        Assert.Contains((await evening.DoorAsync("Ada")).Path, scribe.Html, StringComparison.Ordinal);
        await evening.ActAsync<OpenTasting>(open => open.OpenKey(evening.Trials.Now, "Hugo", early: false, taster: null));
        await PostAsync(maker, evening, $"tasters/{ada.Id.Value}", $"tasters/{ada.Id.Value}/scribe", ("scribe", "hugo"));
        Assert.Contains("has seen the key", maker.Text, StringComparison.Ordinal);
        await SendAsync(evening, "Ada");
        Assert.Contains("written down by Gus", (await RevealedAsync(evening)).Voters.Single(voter => voter.Name == "Ada").Remarks);
    }

    [Fact]
    public async Task One_person_walks_the_whole_ballot_beforehand_and_nothing_of_it_is_left()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        var maker = await evening.MakerAsync();
        await PostAsync(maker, evening, "practice", "practice");
        var link = new Uri(DoorOf().Match(maker.Html).Groups["to"].Value);
        Assert.NotEqual(evening.Address.Port, link.Port);
        using var phone = new Phone(new Uri(link.GetLeftPart(UriPartial.Authority)));
        await phone.GetAsync(link.AbsolutePath);
        Assert.Equal(System.Net.HttpStatusCode.OK, phone.Answer.StatusCode);
        Assert.All(Evening.Names, wheel => Assert.DoesNotContain(wheel, phone.Text, StringComparison.Ordinal));
        // The link of the dry run opens nothing at the real table.
        var real = evening.NewPhone();
        await real.GetAsync(link.AbsolutePath);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, real.Answer.StatusCode);
        await PostAsync(maker, evening, "practice", "practice/end");
        await Assert.ThrowsAsync<HttpRequestException>(() => phone.GetAsync(link.AbsolutePath));
        Assert.IsType<DraftTasting>(await evening.TastingAsync());
    }

    [GeneratedRegex("href=\"(?<to>http://[^\"]+/t/[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DoorOf();

    private static string Path(Evening evening, string page) => $"/trials/{evening.Trial.Value}{(page.Length > 0 ? "/" : "")}{page}";

    /// <summary>Opens a page of the maker and presses one of its keys.</summary>
    private static async Task PostAsync(Phone maker, Evening evening, string page, string act, params (string Name, string Value)[] given)
    {
        await maker.GetAsync(Path(evening, page));
        await maker.PostAsync(maker.Form(Path(evening, act) + "\"", given));
    }

    /// <summary>A taster puts their samples in the order they were served and sends.</summary>
    [Fact]
    public async Task A_ballot_sent_from_a_phone_is_not_opened_in_passing_by_whoever_types_paper_in()
    {
        await using var evening = await Evening.BeginAsync();
        var maker = await evening.MakerAsync();
        await SendAsync(evening, "Ada");
        var page = Path(evening, $"paper/{(await evening.TasterAsync("Ada")).Id.Value}");
        await maker.GetAsync(page);
        Assert.Contains("Ada’s ballot is in.", maker.Text, StringComparison.Ordinal);
        Assert.All(await evening.ServedAsync("Ada"), code => Assert.DoesNotContain(code.ToString(), maker.Text, StringComparison.Ordinal));
        await maker.GetAsync($"{page}?show=1");
        Assert.All(await evening.ServedAsync("Ada"), code => Assert.Contains($"place-{code}", maker.Html, StringComparison.Ordinal));
    }

    private static async Task SendAsync(Evening evening, string name)
    {
        var taster = await evening.TasterAsync(name);
        var served = await evening.ServedAsync(name);
        var ballot = Ballot.Of(served, served.Select(code => new[] { code }), []).Value;
        Assert.True((await evening.Trials.ReceiveAsync(evening.Trial, new BallotSend(new RevisionId(Guid.NewGuid()), taster.Id, null, "a phone", BallotSource.Phone, BallotStage.Sent, ballot))).Ok);
    }

    private static async Task<TastingRecord> RevealedAsync(Evening evening)
    {
        await evening.ActAsync<OpenTasting>(open => open.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(closed => closed.Reveal(evening.Trials.Now));
        var tasting = (RevealedTasting)await evening.TastingAsync();
        return tasting.Record(await evening.Trials.BallotsAsync(tasting));
    }
}
