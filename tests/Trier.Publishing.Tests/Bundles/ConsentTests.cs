using System.Collections.Immutable;
using Trier.Publishing.Bundles;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Publishing.Tests.Bundles;

/// <summary>No name, remark or word leaves the house without consent: markers are planted in a record and looked for in every published file.</summary>
public sealed class ConsentTests
{
    private static readonly string[] Never = ["Marker in a note", "because of", "went home", "Qgroupq"];

    private static string Name(int i) => $"Qname{i}q";

    private static SampleAnswer Answer(int i) => new() { Liking = 1 + (i % 9), Words = [$"Qword{i}q"], Remark = $"Qremark{i}q, and 2 < 3" };

    [Fact]
    public void Without_consent_no_file_holds_a_name_a_remark_or_a_word()
    {
        var files = Bundle.Of(MadeUp.Publication(MadeUp.Record(name: Name, answer: Answer)));
        Assert.All(files, file =>
        {
            var text = file.Everything();
            Assert.True(text.Length > 20, file.Path);
            Assert.DoesNotContain("Qname", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Qremark", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Qword", text, StringComparison.Ordinal);
            Assert.All(Never, never => Assert.DoesNotContain(never, text, StringComparison.Ordinal));
        });
    }

    [Fact]
    public void What_was_agreed_to_is_there_and_no_more()
    {
        var files = Bundle.Of(MadeUp.Publication(MadeUp.Record(agreed: i => new(Named: i == 4, Quoted: i == 7), name: Name, answer: Answer)));
        foreach (var path in new[] { "index.html", "record.json", "verdict-a4.pdf", "tasters.csv" }) Assert.Contains("Qname4q", files.Single(file => file.Path == path).Everything(), StringComparison.Ordinal);
        foreach (var path in new[] { "index.html", "record.json", "verdict-a4.pdf", "ballots.csv" })
        {
            Assert.Contains("Qremark7q", files.Single(file => file.Path == path).Everything(), StringComparison.Ordinal);
            Assert.Contains("Qword7q", files.Single(file => file.Path == path).Everything(), StringComparison.Ordinal);
        }

        Assert.All(files, file => Assert.All(Enumerable.Range(0, 12), i =>
        {
            var text = file.Everything();
            if (i != 4) Assert.DoesNotContain(Name(i), text, StringComparison.Ordinal);
            if (i != 7) Assert.DoesNotContain($"Qremark{i}q", text, StringComparison.Ordinal);
            if (i != 7) Assert.DoesNotContain($"Qword{i}q", text, StringComparison.Ordinal);
        }));
    }

    [Fact]
    public void Nobody_under_twelve_is_named_whatever_was_agreed()
    {
        var published = PublishedRecord.Of(MadeUp.Record(agreed: _ => new(Named: true, Quoted: true), name: Name));
        Assert.Equal("Taster 4", published.Voters[3].Name);
        Assert.Equal(["Qname0q", "Qname1q", "Qname2q", "Taster 4"], published.Voters.Take(4).Select(voter => voter.Name));
    }

    [Fact]
    public void A_cold_leaves_no_trace_in_any_file()
    {
        var well = MadeUp.Record();
        var ill = well with { Voters = [.. well.Voters.Select((voter, i) => i is 0 or 8 ? voter with { Marks = voter.Marks | VoterMarks.LittleSmell } : voter)] };
        Assert.Contains(Judge.Of(ill, new(11)).Variants, variant => variant.Kind == VariantKind.WithoutCold);
        Assert.Equal(Bundle.Of(MadeUp.Publication(well)).Select(file => (file.Path, file.Everything())), Bundle.Of(MadeUp.Publication(ill)).Select(file => (file.Path, file.Everything())));
    }

    [Fact]
    public void What_else_was_asked_is_told_as_counts_by_wheel_and_beside_nobody()
    {
        var record = MadeUp.Asked();
        var (home, files) = (Judge.Of(record, new(11)), Bundle.Of(MadeUp.Publication(record)));
        var read = PublishedRecordJson.Read(files.Single(file => file.Path == "record.json").Bytes.AsSpan()).Value.Record;
        Assert.All(read.Voters, voter => Assert.All(voter.Answers.Values, answer => Assert.Equal((null, null, null), (answer.Right, answer.Again, answer.Unclear))));
        Assert.All(read.Voters, voter => Assert.False(voter.Marks.HasFlag(VoterMarks.Unclear)));
        Assert.DoesNotContain("\"right\"", files.Text("record.json"), StringComparison.Ordinal);
        var told = Judge.Of(read, new(11));
        Assert.Equal((1, 1), (home.Unclear, told.Unclear));
        Assert.Contains("On 1 ballot on paper a place could not be read", string.Join(' ', told.Words.Limits), StringComparison.Ordinal);
        Assert.Equal(home.Again, told.Again);
        Assert.NotEmpty(told.Again);
        Assert.Equal(Counts(home), Counts(told));
        Assert.Equal(["crumb", "firmness"], told.Properties.Select(property => property.Property));
        Assert.All(told.Properties.SelectMany(property => property.Wheels), line => Assert.Null(line.LikingWhereRight));
        foreach (var path in new[] { "index.html", "verdict-a4.pdf" }) Assert.Contains("Wasthefirmnessright?", string.Concat(files.Single(file => file.Path == path).Everything().Where(sign => !char.IsWhiteSpace(sign))), StringComparison.Ordinal);

        static IEnumerable<(string, string, int, int, int)> Counts(Verdict verdict) => verdict.Properties.SelectMany(property => property.Wheels.Select(line => (property.Property, line.Id, line.TooLittle.Count, line.JustRight, line.TooMuch.Count)));
    }

    [Fact]
    public void Who_may_not_be_quoted_is_in_no_count_of_words()
    {
        var told = MadeUp.Publication(MadeUp.Record(agreed: i => new(false, i is 1 or 2), answer: _ => new() { Words = ["nutty"] })).Verdict;
        Assert.Equal([2, 2, 2, 2], Assert.Single(told.WordCounts).Ticks);
    }

    [Fact]
    public void A_pictures_file_holds_pixels_and_nothing_else()
    {
        var files = Bundle.Of(MadeUp.Publication(MadeUp.Record()));
        var pictures = files.Where(file => file.Path.EndsWith(".png", StringComparison.Ordinal)).ToList();
        Assert.Equal(16, pictures.Count);
        Assert.All(pictures, picture => Assert.Empty(Png.Chunks(picture.Bytes.AsSpan()).Except(["IHDR", "sBIT", "IDAT", "IEND"])));
    }

    [Fact]
    public void A_verdict_of_the_whole_record_cannot_be_published() =>
        Assert.Throws<ArgumentException>(() => Bundle.Of(new Publication { Verdict = Judge.Of(MadeUp.Record(), new(1)) }));

    [Fact]
    public void The_published_record_gives_itself_again_and_keeps_every_number()
    {
        var record = MadeUp.Record(agreed: i => new(i % 2 == 0, i % 3 == 0), name: Name, answer: Answer);
        var published = PublishedRecord.Of(record);
        Assert.Equal(PublishedRecordJson.Write(published, 1), PublishedRecordJson.Write(PublishedRecord.Of(published), 1));
        var (whole, told) = (Judge.Of(record, new(3)), Judge.Of(published, new(3)));
        Assert.Equal((whole.Level.Level, whole.Gate!.P.Value, whole.Panel.Voices), (told.Level.Level, told.Gate!.P.Value, told.Panel.Voices));
        Assert.Equal(whole.Tally.Select(line => (line.Id, line.RankSum, line.Firsts)), told.Tally.Select(line => (line.Id, line.RankSum, line.Firsts)));
        Assert.Equal(whole.Variants.Select(variant => (variant.Kind, variant.Level, variant.Effect)), told.Variants.Select(variant => (variant.Kind, variant.Level, variant.Effect)));
    }
}
