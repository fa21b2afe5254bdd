using System.Text;
using CsCheck;
using Trier.Publishing.BallotFiles;

namespace Trier.Publishing.Tests.BallotFiles;

public class FaultTests
{
    [Theory]
    [InlineData("", "The file is empty; it needs a header line and at least one ballot.")]
    [InlineData(" \n\t\n", "The file is empty; it needs a header line and at least one ballot.")]
    [InlineData("taster,317,582\n", "The file has a header and no ballots; add at least one row.")]
    [InlineData("hello\nworld\n", "Line 1: the header begins with “hello”; it must be “taster” and the codes, or “taster, code, place”, or “count, order”.")]
    [InlineData("taster,317\nAna,1\n", "The file holds one sample; a comparison needs at least two.")]
    [InlineData("count,order\n3,A\n", "The file holds one sample; a comparison needs at least two.")]
    [InlineData("taster,317,582,317\nAna,1,2,3\n", "Line 1, 317: the code stands twice in the header; each sample has one column.")]
    [InlineData("taster,317,\nAna,1,2\n", "Line 1, column 3: the header names no code; write the sample's code there or take the column out.")]
    [InlineData("taster,317,582\nAna,1,2\nAna,2,1\n", "Line 3, taster: “Ana” stands on line 2 already; each taster has one row.")]
    [InlineData("taster,317,582\nAna,1,first\n", "Line 2, 582: “first” is no number; write 1 for the best, 2 for the next, and leave the cell empty where there is no place.")]
    [InlineData("taster,317,582\nAna,1e0,2\n", "Line 2, 317: “1e0” is no number; write 1 for the best, 2 for the next, and leave the cell empty where there is no place.")]
    [InlineData("taster,317,582\nAna,0,2\n", "Line 2, 317: place 0, but there are 2 samples; places run from 1 to 2.")]
    [InlineData("taster,317,582\nAna,1,7\n", "Line 2, 582: place 7, but there are 2 samples; places run from 1 to 2.")]
    [InlineData("taster,317,582\nAna,-1,2\n", "Line 2, 317: place -1, but there are 2 samples; places run from 1 to 2.")]
    [InlineData("taster,317,582\nAna,1,2,5,1\n", "Line 2: 5 cells, but the header names 3; a decimal comma needs semicolons between the cells.")]
    [InlineData("taster,317,582\n,1,2\n", "Line 2, taster: no name or number; each row needs one.")]
    [InlineData("taster,code,place\nAna,317,1\nAna,317,2\nAna,582,2\n", "Line 3, code: “Ana” has “317” on line 2 already; a taster has one row for each code.")]
    [InlineData("taster,code\nAna,317\nAna,582\n", "Line 1, place: the header has no such column; it needs taster, code and place.")]
    [InlineData("taster,code,place,liking_1to9\nAna,317,1,10\nAna,582,2,5\n", "Line 2, liking_1to9: “10” is no whole number from 1 to 9; correct it or leave the cell empty.")]
    [InlineData("taster,code,place,salt_jar\nAna,317,1,0.5\nAna,582,2,0\n", "Line 2, salt_jar: “0.5” is no whole number from -1 to 1; correct it or leave the cell empty.")]
    [InlineData("taster,code,place,position\nAna,317,1,1\nAna,582,2,1\n", "Line 3, position: “Ana” has position 1 twice; each sample has its own.")]
    [InlineData("taster,code,place\nAna,,1\nAna,582,2\nAna,317,1\n", "Line 2, code: no code; each row needs the code of one sample.")]
    [InlineData("taster,code,place,remark\nAna,317,1,good, very\nAna,582,2,\n", "Line 2: 5 cells, but the header names 4; put a remark with commas, or a decimal comma, between quotation marks.")]
    [InlineData("taster,code,place,remark\nAna,317,1,\"good\nAna,582,2,\n", "Line 2: a quotation mark opens and never closes; close it or take it out.")]
    [InlineData("count,order\n0,A>B\n", "Line 2, count: “0” is no whole number from 1 to 100000; write how many ballots have this order.")]
    [InlineData("count,order\n1,A>B>A\n", "Line 2, order: “A” stands twice; each sample has one place.")]
    [InlineData("count,order\n1,A>>B\n", "Line 2, order: “A>>B” has an empty place; write it as B>A=C>D, best first.")]
    [InlineData("count,order\n99999,A>B\n99999,B>A\n", "The counts sum to 199998 ballots; a file may hold 100000.")]
    [InlineData("# NUMBER ALTERNATIVES: 2\n3: 1,5\n", "Line 2, order: unknown code 5; the header names the alternatives 1, 2.")]
    [InlineData("# NUMBER ALTERNATIVES: 2\n3: 1,{2\n", "Line 2, order: a { opens and never closes; close the tied group with }.")]
    [InlineData("# NUMBER ALTERNATIVES: 2\n3: 1,2,1\n", "Line 2, order: “1” stands twice; each sample has one place.")]
    [InlineData("# TITLE: nothing\n", "The file has header lines and no ballots; write rows such as “12: 2,1,{3,4}”.")]
    [InlineData("# NUMBER ALTERNATIVES: 2\nabc\n", "Line 2: “abc” is no ballot row; write “12: 2,1,{3,4}”, the count before the colon.")]
    [InlineData("3\n1,Ann\n2,Bob\n3,Cy\n4,4,1\n4,1,2,3\n", "Line 1: this is the older form of the preference-data formats, without header lines; bring it to the form with “# ALTERNATIVE NAME 1: ...” and rows such as “12: 2,1,{3,4}”.")]
    public void Each_fault_is_answered_by_one_sentence_with_line_and_field(string text, string sentence)
    {
        var outcome = Reading.Text(text);
        Assert.Equal([sentence], outcome.Sentences());
    }

    [Fact]
    public void All_faults_of_a_file_are_told_at_once()
    {
        var outcome = Reading.Text("taster,317,582\nAna,9,x\n,1,2\nAna,1,2\n");
        Assert.Equal(
            ["line 2, 317", "line 2, 582", "line 3, taster", "line 4, taster"],
            outcome.Problems.Select(p => p.Field));
    }

    [Fact]
    public void A_thousand_faults_are_counted_and_not_listed()
    {
        var text = new StringBuilder("taster,317,582\n");
        for (var i = 0; i < 1000; i++) text.Append('t').Append(i).Append(",x,1\n");
        var sentences = Reading.Text(text.ToString()).Sentences();
        Assert.Equal(51, sentences.Count);
        Assert.Equal("And 950 more faults of these kinds; mend the ones above and try again.", sentences[^1]);
    }

    [Theory]
    [InlineData("862", "999", "--repeat 862=999: unknown code “999”; the file has 417, 593, 862.")]
    [InlineData("862", "862", "--repeat 862=862: a code cannot repeat itself; name the check first, then the code that counts.")]
    public void A_repeat_must_name_codes_of_the_file(string check, string counts, string sentence) =>
        Assert.Equal([sentence], Reading.Text("taster,417,593,862\nAna,1,2,3\n", Unplaced.NotTasted, (check, counts)).Sentences());

    [Fact]
    public void Repeats_may_not_leave_a_single_sample_nor_form_a_chain()
    {
        Assert.Equal(["Without the repeats there is one sample; a comparison needs at least two."], Reading.Text("taster,417,862\nAna,1,2\n", Unplaced.NotTasted, ("862", "417")).Sentences());
        Assert.Equal(["--repeat 1=2: “2” is itself a check; name the code that counts."], Reading.Text("taster,1,2,3,4\nAna,1,2,3,4\n", Unplaced.NotTasted, ("1", "2"), ("2", "3")).Sentences());
    }

    [Fact]
    public void A_file_over_32_MB_is_refused_by_its_size() =>
        Assert.Equal(["The file is larger than 32 MB, so it is no ballot file; hand in the ballots alone."], Reading.Bytes(new byte[(32 * 1024 * 1024) + 1]).Sentences());

    [Fact]
    public void Bytes_that_are_no_text_are_named_with_their_line()
    {
        byte[] latin = [.. "taster,1,2\nAm"u8, 0xE9, .. "lia,1,2\n"u8];
        Assert.Equal(["Line 2 holds bytes that are no UTF-8 or UTF-16 text; save the ballots as CSV in UTF-8."], Reading.Bytes(latin).Sentences());
    }

    [Fact]
    public void Random_bytes_never_throw_and_always_get_a_sentence() =>
        Gen.Byte.Array[0, 400].Sample(bytes => Answered(bytes), iter: 20_000);

    [Fact]
    public void Bytes_changed_at_random_in_a_sound_file_are_read_or_refused_and_never_throw()
    {
        var demo = Reading.Demo;
        Gen.Select(Gen.Int[0, demo.Length - 1], Gen.Byte, Gen.Int[0, demo.Length - 1], Gen.Byte).Sample(
            (at, value, at2, value2) =>
            {
                var copy = (byte[])demo.Clone();
                (copy[at], copy[at2]) = (value, value2);
                return Answered(copy);
            },
            iter: 2_000);
    }

    [Fact]
    public void Text_made_of_the_layouts_own_marks_is_read_or_refused_and_never_throws() =>
        Gen.OneOf("taster", "code", "place", "count", "order", ",", ";", "\t", "\n", "\"", "#", ":", "{", "}", ">", "=", "1", "2", "2,5", "A", "ALTERNATIVE NAME 1: ", "# NUMBER ALTERNATIVES: 3\n")
            .Array[1, 30].Sample(parts => Answered(Encoding.UTF8.GetBytes(string.Concat(parts))), iter: 20_000);

    private static bool Answered(byte[] bytes)
    {
        var outcome = Reading.Bytes(bytes);
        return outcome.Ok ? outcome.Value.Samples.Length >= 2 : outcome.Problems.All(p => p.Sentence.EndsWith('.') && p.Field.Length > 0);
    }
}
