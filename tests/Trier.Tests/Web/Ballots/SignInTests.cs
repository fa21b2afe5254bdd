using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Tastings.Ballots;

namespace Trier.Tests.Web.Ballots;

public class SignInTests
{
    [Fact]
    public async Task Everything_is_said_on_one_page_and_nothing_has_to_be()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        Assert.Contains("Ballots are published as numbers.", phone.Text, StringComparison.Ordinal);
        await phone.PressAsync(("taste", "milder"), ("cold", "yes"), ("named", "yes"), ("quoted", "yes"));
        Assert.Equal($"{door.Path}/sample/1", phone.Path);
        var ada = await evening.TasterAsync("Ada");
        Assert.Equal((DeclaredTaste.Milder, true, new Agreed(true, true), false, false), (ada.Taste, ada.NoSmell, ada.Agreed, ada.Junior, ada.AsksHost));

        await phone.GetAsync((await evening.DoorAsync("Bruno")).Path);
        await phone.PressAsync();
        Assert.EndsWith("/sample/1", phone.Path, StringComparison.Ordinal);
        var bruno = await evening.TasterAsync("Bruno");
        Assert.Equal((null, false, Agreed.ToNothing), (bruno.Taste, bruno.NoSmell, bruno.Agreed));
    }

    [Fact]
    public async Task What_somebody_may_not_eat_leaves_their_plate_and_no_page_says_why()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        using var maker = await evening.MakerAsync();
        var book = (await evening.TastingAsync()).Book;
        var egg = book.Key!.Of(book.Entries[2].Wheel)[0].Code;
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        await phone.PressAsync(("no", "egg"));
        // The plate in front of her still holds it: she is told to wait before any sample is named.
        Assert.EndsWith("/hold", phone.Path, StringComparison.Ordinal);
        Assert.Contains("Wait, Ada: do not taste yet.", phone.Text, StringComparison.Ordinal);
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path + "/sample/1");
        Assert.Contains("Sample 1 of 3", phone.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(egg, await evening.ServedAsync("Ada"));
        Assert.Contains(egg, await evening.ServedAsync("Bruno"));

        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.Contains("Ada’s plate has changed.", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("egg", maker.Text, StringComparison.Ordinal);

        // A key drawn anew for a withdrawal does not make the host forget it.
        await maker.GetAsync($"/trials/{evening.Trial.Value}/wheels/{book.Entries[3].Wheel.Value}");
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/withdraw", ("reason", "blown")));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.Contains("Ada’s plate has changed.", maker.Text, StringComparison.Ordinal);

        await phone.PressAsync(("liking", "5"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.DoesNotContain("plate has changed", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Raw_milk_can_be_left_off_and_something_else_brings_the_host()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        using var maker = await evening.MakerAsync();
        var book = (await evening.TastingAsync()).Book;
        var raw = book.Key!.Of(book.Entries[1].Wheel)[0].Code;
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        await phone.PressAsync(("no", "raw milk"), ("other", "yes"));
        Assert.EndsWith("/hold", phone.Path, StringComparison.Ordinal);
        Assert.DoesNotContain(raw, await evening.ServedAsync("Ada"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/board");
        Assert.Contains("Go and ask Ada what to leave off", maker.Text, StringComparison.Ordinal);

        var ada = await evening.TasterAsync("Ada");
        await maker.GetAsync($"/trials/{evening.Trial.Value}/tasters/{ada.Id.Value}");
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/tasters/{ada.Id.Value}/left-off", ("off", book.Entries[0].Wheel.Value.ToString()), ("off", book.Entries[1].Wheel.Value.ToString())));
        Assert.Equal(2, (await evening.ServedAsync("Ada")).Length);

        await phone.GetAsync((await evening.DoorAsync("Ada")).Path + "/sample/1");
        await phone.PressAsync(("liking", "5"));
        await maker.GetAsync($"/trials/{evening.Trial.Value}/tasters/{ada.Id.Value}");
        await maker.PostAsync(maker.Form($"/trials/{evening.Trial.Value}/tasters/{ada.Id.Value}/left-off", ("off", book.Entries[0].Wheel.Value.ToString())));
        Assert.Contains("This ballot has begun", maker.Text, StringComparison.Ordinal);
        Assert.Equal(2, (await evening.ServedAsync("Ada")).Length);
    }

    [Fact]
    public async Task Raw_milk_and_a_child_are_told_beside_each_other_until_it_is_left_off()
    {
        await using var evening = await Evening.BeginAsync();
        using var maker = await evening.MakerAsync();
        var trial = $"/trials/{evening.Trial.Value}";
        await maker.GetAsync(trial);
        Assert.DoesNotContain("raw-milk cheese for small children", maker.Text, StringComparison.Ordinal);
        var ada = (await evening.TasterAsync("Ada")).Id.Value;
        await maker.GetAsync($"{trial}/tasters/{ada}");
        await maker.PostAsync(maker.Form($"{trial}/tasters/{ada}", ("junior", "yes")));
        foreach (var page in new[] { trial, $"{trial}/plates" })
        {
            await maker.GetAsync(page);
            Assert.Contains("Ada is under 12, and ", maker.Text, StringComparison.Ordinal);
            Assert.Contains("Health authorities commonly advise against raw-milk cheese for small children.", maker.Text, StringComparison.Ordinal);
        }

        var book = (await evening.TastingAsync()).Book;
        await maker.GetAsync($"{trial}/tasters/{ada}");
        await maker.PostAsync(maker.Form($"{trial}/tasters/{ada}/left-off", [.. HouseLine.Holding(book, [HouseLine.RawMilk]).Select(wheel => ("off", wheel.Value.ToString()))]));
        await maker.GetAsync(trial);
        Assert.DoesNotContain("Ada is under 12", maker.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_guest_can_sign_in_before_the_plates_are_dealt()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        using var phone = evening.NewPhone();
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        await phone.PressAsync(("no", "egg"), ("taste", "stronger"));
        Assert.Contains("Kept. You can change it until you taste.", phone.Text, StringComparison.Ordinal);
        await evening.OpenAsync();
        Assert.Equal(3, (await evening.ServedAsync("Ada")).Length);
        await phone.GetAsync((await evening.DoorAsync("Ada")).Path);
        Assert.Contains("Three small cheeses", phone.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Once_an_answer_is_in_nothing_said_before_tasting_can_change()
    {
        await using var evening = await Evening.BeginAsync();
        using var phone = evening.NewPhone();
        var door = await evening.DoorAsync("Ada");
        await phone.GetAsync(door.Path);
        var again = phone.Form(null, ("taste", "stronger"), ("cold", "yes"));
        await phone.PressAsync(("taste", "milder"));
        await phone.PressAsync(("liking", "5"));
        await phone.PostAsync(again);
        var ada = await evening.TasterAsync("Ada");
        Assert.Equal((DeclaredTaste.Milder, false), (ada.Taste, ada.NoSmell));
    }

    [Fact]
    public async Task A_cold_is_told_in_the_verdict_as_a_number_and_beside_no_name()
    {
        await using var evening = await Evening.BeginAsync();
        foreach (var (name, cold) in new[] { ("Ada", true), ("Bruno", false), ("Cleo", false) })
        {
            using var phone = evening.NewPhone();
            await phone.GetAsync((await evening.DoorAsync(name)).Path);
            await phone.PressAsync(cold ? [("cold", "yes")] : []);
            var served = await evening.ServedAsync(name);
            for (var i = 0; i < served.Length; i++) await phone.PressAsync(("liking", $"{8 - i}"));
            foreach (var code in served.Order()) await phone.PressAsync(("move", $"place:{code}"));
            await phone.PressAsync();
            await phone.PressAsync();
        }

        await evening.ActAsync<OpenTasting>(tasting => tasting.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(tasting => tasting.Reveal(evening.Trials.Now));
        var revealed = (RevealedTasting)await evening.TastingAsync();
        var record = revealed.Record(await evening.Trials.BallotsAsync(revealed, TestContext.Current.CancellationToken));
        var verdict = Trier.Trials.Verdicts.Judge.Of(record, new(1));
        var variant = Assert.Single(verdict.Variants, one => one.Kind == Trier.Trials.Verdicts.Findings.VariantKind.WithoutCold);
        Assert.Equal("without the 1 who signed in with a cold or little smell", variant.Label);
        Assert.Equal("", variant.Subject);
        Assert.DoesNotContain(record.Voters.SelectMany(voter => voter.Remarks), remark => remark.Contains("cold", StringComparison.Ordinal) || remark.Contains("smell", StringComparison.Ordinal));
    }
}
