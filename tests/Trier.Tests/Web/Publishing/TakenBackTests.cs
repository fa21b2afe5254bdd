using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using Trier.Storage.Tastings;
using Trier.Tests.Web.Ballots;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using UglyToad.PdfPig;

namespace Trier.Tests.Web.Publishing;

/// <summary>A name or somebody's words taken back on the real site: gone at once from every file of every version, with a dated note that does not repeat it.</summary>
public sealed class TakenBackTests
{
    private static readonly string[] Markers = ["Qnameq", "Qremarkq", "Qwordq"];

    [Fact]
    public async Task What_is_taken_back_is_gone_from_every_file_of_every_version_and_a_dated_note_says_so()
    {
        await using var evening = await Evening.BeginAsync(open: false);
        await evening.ActAsync<DraftTasting>(draft => draft.AddTaster(evening.Trials.Now, new TasterId(Guid.NewGuid()), "Qnameq", knowsTheKey: false, junior: false, 1));
        await evening.OpenAsync();
        foreach (var name in new[] { "Ada", "Bruno", "Cleo" }) await SendAsync(evening, name, SampleAnswer.Nothing);
        await SendAsync(evening, "Qnameq", new() { Liking = 8, Remark = "Qremarkq of hay", Words = ["Qwordq"] });
        var who = (await evening.TasterAsync("Qnameq")).Id;
        await evening.ActAsync<Tasting>(tasting => tasting.Agree(evening.Trials.Now, who, new(Named: true, Quoted: true)));
        await evening.ActAsync<OpenTasting>(open => open.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(closed => closed.Reveal(evening.Trials.Now));
        var (stranger, maker, page) = (evening.NewPhone(), await evening.MakerAsync(), $"/trials/{evening.Trial.Value}/publish");
        await maker.GetAsync(page);
        await maker.PostAsync(maker.Form(page));
        await evening.ActAsync<RevealedTasting>(revealed => revealed.Mend(evening.Trials.Now, who, Ballot.Stored([.. revealed.Book.Served(who).Select(code => ImmutableArray.Create(code))], Answers(revealed.Book.Served(who)[0])), "the paper was lost", "Bruno"));
        await maker.GetAsync(page);
        await maker.PostAsync(maker.Form(page));
        Assert.Contains("“Qremarkq of hay”", maker.Text, StringComparison.Ordinal);
        foreach (var version in new[] { 1, 2 }) Assert.Equal(Markers, Markers.Where(Everything(await FilesAsync(stranger, evening, version)).Contains));

        // One press for the name, one for the words.
        await maker.PostAsync(maker.Form($"{page}/take-back", ("what", "name")));
        await maker.PostAsync(maker.Form($"{page}/take-back", ("what", "words")));
        Assert.Contains("Nobody agreed to be quoted.", maker.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Take the", maker.Text, StringComparison.Ordinal);
        await maker.PostAsync(maker.Form(page));
        var today = evening.Trials.Now.ToString("dd/MM/yyyy", System.Globalization.CultureInfo.InvariantCulture);
        var note = $"Taken out on {today}: 1 name and the words of 1 taster. No place and no test changes.";
        foreach (var version in new[] { 1, 2, 3 })
        {
            var files = await FilesAsync(stranger, evening, version);
            Assert.All(files, file => Assert.All(Markers, marker => Assert.False(file.Text.Contains(marker, StringComparison.Ordinal), $"version {version}, {file.Name}: {marker}")));
            // The last was drawn after it, and tells it among its corrections.
            string[] telling = ["the page", "README.md", "index.html", "verdict-a4.pdf"];
            var said = version < 3 ? note : "1 name was taken out; 1 taster’s words were taken out.";
            Assert.All(files.Where(file => telling.Contains(file.Name)), file => Assert.Contains(Bare(said), Bare(file.Text), StringComparison.Ordinal));
        }

        await maker.GetAsync(page);
        Assert.Equal(2, maker.Text.Split(note).Length - 1);
    }

    [Fact]
    public async Task Nothing_is_taken_back_twice_and_a_stranger_takes_nothing_back()
    {
        await using var evening = await Evening.BeginAsync();
        await SendAsync(evening, "Ada", SampleAnswer.Nothing);
        var ada = (await evening.TasterAsync("Ada")).Id;
        await evening.ActAsync<Tasting>(tasting => tasting.Agree(evening.Trials.Now, ada, new(Named: true, Quoted: false)));
        await evening.ActAsync<OpenTasting>(open => open.Close(evening.Trials.Now));
        await evening.ActAsync<ClosedTasting>(closed => closed.Reveal(evening.Trials.Now));
        var (stranger, maker, page) = (evening.NewPhone(), await evening.MakerAsync(), $"/trials/{evening.Trial.Value}/publish");
        await maker.GetAsync(page);
        var press = maker.Form($"{page}/take-back");
        await stranger.PostAsync(press);
        Assert.True((await evening.TasterAsync("Ada")).Agreed.Named);
        await maker.PostAsync(press);
        var events = (await evening.TastingAsync()).Book.Log.Length;
        Assert.Equal(Agreed.ToNothing, (await evening.TasterAsync("Ada")).Agreed);
        await maker.PostAsync(press);
        Assert.Equal(events, (await evening.TastingAsync()).Book.Log.Length);
    }

    /// <summary>What anyone can fetch of one version: the page, the sheets, and every file of the bundle.</summary>
    private static async Task<List<(string Name, string Text)>> FilesAsync(Phone stranger, Evening evening, int version)
    {
        var at = $"/published/{evening.Trial.Value}/{version}";
        var files = new List<(string, string)> { ("the page", System.Net.WebUtility.HtmlDecode((await stranger.GetAsync(at)).Html)) };
        foreach (var pdf in new[] { "summary.pdf", "verdict.pdf" }) files.Add((pdf, Read(pdf, await (await stranger.FetchAsync($"{at}/{pdf}")).Content.ReadAsByteArrayAsync())));
        using var zip = new ZipArchive(await (await stranger.FetchAsync($"{at}/bundle.zip")).Content.ReadAsStreamAsync());
        foreach (var entry in zip.Entries)
        {
            using var bytes = new MemoryStream();
            await using (var stream = entry.Open()) await stream.CopyToAsync(bytes);
            files.Add((entry.FullName, Read(entry.FullName, bytes.ToArray())));
        }

        Assert.True(files.Count > 40, $"Only {files.Count} files were looked at.");
        return files;
    }

    private static string Everything(IEnumerable<(string Name, string Text)> files) => string.Concat(files.Select(file => file.Text));

    private static string Read(string name, byte[] bytes)
    {
        if (!name.EndsWith(".pdf", StringComparison.Ordinal)) return System.Net.WebUtility.HtmlDecode(Encoding.UTF8.GetString(bytes)) + Encoding.Latin1.GetString(bytes);
        using var pdf = PdfDocument.Open(bytes);
        return string.Concat(pdf.GetPages().Select(page => page.Text)) + pdf.Information.Title;
    }

    private static string Bare(string text) => string.Concat(text.Where(sign => !char.IsWhiteSpace(sign)));

    private static ImmutableSortedDictionary<BlindCode, SampleAnswer> Answers(BlindCode code) =>
        ImmutableSortedDictionary<BlindCode, SampleAnswer>.Empty.Add(code, new() { Liking = 8, Remark = "Qremarkq of hay", Words = ["Qwordq"] });

    private static async Task SendAsync(Evening evening, string name, SampleAnswer said)
    {
        var served = await evening.ServedAsync(name);
        var ballot = Ballot.Stored([.. served.Reverse().Select(code => ImmutableArray.Create(code))], ImmutableSortedDictionary<BlindCode, SampleAnswer>.Empty.Add(served[0], said));
        Assert.True((await evening.Trials.ReceiveAsync(evening.Trial, new BallotSend(new RevisionId(Guid.NewGuid()), (await evening.TasterAsync(name)).Id, null, "a phone", BallotSource.Phone, BallotStage.Sent, ballot))).Ok);
    }
}
