using System.Collections.Immutable;
using System.Text;
using Trier.Publishing.BallotFiles;

namespace Trier.Publishing.Bundles;

/// <summary>What every column of a bundle's tables means.</summary>
internal static class DataDictionary
{
    private static readonly ImmutableArray<(string File, string Column, string Meaning, string Values)> Lines =
    [
        ("ballots.csv", "taster", "Who: the number of a taster, as in tasters.csv", "T01, T02 ..."),
        ("ballots.csv", "position", "When this taster got the sample, first to last", "1, 2, 3 ...; empty: not recorded"),
        ("ballots.csv", "code", "The blind code on the sample; wheels.csv says which wheel it was", "three digits, or as in the file that was judged"),
        ("ballots.csv", "liking_1to9", "How much the taster liked it", "1 dislike very much ... 9 like very much; empty: not given"),
        ("ballots.csv", "salt_jar", "Whether the salt was just right", "-1 too little, 0 just right, 1 too much; empty: not asked or not given"),
        ("ballots.csv", "place", "The taster's place for it among all samples they placed, the second serving of a cheese included; ties share the mean of their places", "1 best; 2.5: shared second and third; empty: no place"),
        ("ballots.csv", "words", "Words the taster ticked, only by consent", "joined by +"),
        ("ballots.csv", "remark", "What the taster wrote, only by consent", "text; an apostrophe before = + - @ keeps a spreadsheet from taking it for a formula"),
        ("tasters.csv", "taster", "The number of a taster", "T01, T02 ..."),
        ("tasters.csv", "shown_as", "How the taster is called in the verdict: a number, or a name by consent", "text"),
        ("tasters.csv", "said_beforehand", "What they said, before tasting, that they usually like", "milder, stronger, no idea; empty: did not say"),
        ("tasters.csv", "counts", "Whether the ballot counts in the headline", "counted, partial (places too few wheels), apart (not blind, or a junior by plan), no places"),
        ("tasters.csv", "marks", "What the verdict has to say about the ballot", "words joined by +"),
        ("tasters.csv", "voice", "Tasters with the same number compared notes and are one voice", "a number; empty: a voice of their own"),
        ("tasters.csv", "sitting", "Which sitting they came to", "1, 2 ...; empty: not recorded"),
        ("wheels.csv", "wheel", "A wheel, or its second serving", "W1, W1 again ..."),
        ("wheels.csv", "name", "What people call it", "text"),
        ("wheels.csv", "code", "Its blind code", "three digits; empty: every taster had own codes"),
        ("wheels.csv", "repeat_of", "For a second serving that is only a check: the wheel that counts", "as in column wheel"),
        ("wheels.csv", "every further column", "A fact of the wheel in the maker's own words, as fixed before the tasting, with later corrections", "text; dates as year-month-day"),
    ];

    public static string Write()
    {
        var text = new StringBuilder("file,column,meaning,values\n");
        foreach (var (file, column, meaning, values) in Lines) text.AppendJoin(',', new[] { file, column, meaning, values }.Select(CsvCell.Quoted)).Append('\n');
        return text.ToString();
    }
}
