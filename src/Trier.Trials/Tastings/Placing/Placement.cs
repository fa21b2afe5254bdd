using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Placing;

/// <summary>One row of the places: a code, and whether it shares the place of the row above.</summary>
/// <param name="Code">The code.</param>
/// <param name="Tied">Same place as the row above; never so in the first row.</param>
public readonly record struct PlaceRow(BlindCode Code, bool Tied);

/// <summary>Codes in places as a taster arranges them: rows, best first, no code twice.</summary>
public sealed class Placement
{
    private Placement(ImmutableArray<PlaceRow> rows) => Rows = rows is [{ Tied: true } first, ..] ? rows.SetItem(0, first with { Tied = false }) : rows;

    /// <summary>The rows, best first.</summary>
    public ImmutableArray<PlaceRow> Rows { get; }

    /// <summary>The same as a ballot keeps it: groups of codes, best first.</summary>
    public ImmutableArray<ImmutableArray<BlindCode>> Groups
    {
        get
        {
            var groups = ImmutableArray.CreateBuilder<ImmutableArray<BlindCode>>();
            foreach (var row in Rows)
            {
                if (row.Tied) groups[^1] = groups[^1].Add(row.Code);
                else groups.Add([row.Code]);
            }

            return groups.ToImmutable();
        }
    }

    /// <summary>The places a ballot holds, without codes that are no longer served.</summary>
    /// <param name="ballot">The ballot.</param>
    /// <param name="served">Codes served now.</param>
    public static Placement Of(Ballot ballot, IReadOnlyCollection<BlindCode> served)
    {
        var rows = ImmutableArray.CreateBuilder<PlaceRow>();
        foreach (var group in ballot.Places)
        {
            var tied = false;
            foreach (var code in group.Where(served.Contains))
            {
                rows.Add(new PlaceRow(code, tied));
                tied = true;
            }
        }

        return new(rows.ToImmutable());
    }

    /// <summary>Reads places as a form posts them.</summary>
    /// <param name="plate">Every code that was dealt to this taster.</param>
    /// <param name="served">Those of them served now; a code withdrawn while the page was open is passed over.</param>
    /// <param name="order">Codes, best first.</param>
    /// <param name="tied">Codes that share the place of the code above.</param>
    /// <returns>The places, or every code that is unknown or stands twice.</returns>
    public static Outcome<Placement> Read(IReadOnlyCollection<BlindCode> plate, IReadOnlyCollection<BlindCode> served, IEnumerable<string> order, IEnumerable<string> tied)
    {
        var problems = new List<Problem>();
        var rows = ImmutableArray.CreateBuilder<PlaceRow>();
        var seen = new HashSet<BlindCode>();
        var joined = tied.ToHashSet(StringComparer.Ordinal);
        // A tied row whose group lost its first code to a withdrawal stays tied only to what is left of that group.
        var groupHasRow = false;
        foreach (var text in order)
        {
            var isTied = joined.Contains(text);
            if (!isTied) groupHasRow = false;
            if (!BlindCode.TryParse(text, out var code) || !plate.Contains(code)) problems.Add(new("places", $"Sample {text} is not on this plate."));
            else if (!seen.Add(code)) problems.Add(new("places", $"Sample {code} stands in the places twice: give it one place."));
            else if (served.Contains(code))
            {
                rows.Add(new PlaceRow(code, isTied && groupHasRow));
                groupHasRow = true;
            }
        }

        return problems.Count > 0 ? Outcome.Fault<Placement>(problems) : Outcome.Of(new Placement(rows.ToImmutable()));
    }

    /// <summary>Applies one press of a key. A press that can do nothing (up in the first row, a code that is not served) changes nothing.</summary>
    /// <param name="move">The press.</param>
    /// <param name="served">Codes served now.</param>
    public Placement Apply(PlaceMove move, IReadOnlyCollection<BlindCode> served)
    {
        var rows = Rows.ToList();
        var at = rows.FindIndex(row => row.Code == move.Code);
        switch (move.Deed)
        {
            case PlaceDeed.Place when at < 0 && served.Contains(move.Code):
                rows.Add(new PlaceRow(move.Code, Tied: false));
                break;
            case PlaceDeed.Same when at > 0:
                rows[at] = rows[at] with { Tied = !rows[at].Tied };
                break;
            case PlaceDeed.Up when at > 0:
                Swap(rows, at - 1);
                break;
            case PlaceDeed.Down when at >= 0 && at < rows.Count - 1:
                Swap(rows, at);
                break;
        }

        return new([.. rows]);
    }

    // A code that leaves a tied group takes no one along.
    private static void Swap(List<PlaceRow> rows, int upper)
    {
        Detach(rows, upper + 1);
        Detach(rows, upper);
        (rows[upper], rows[upper + 1]) = (rows[upper + 1], rows[upper]);
    }

    private static void Detach(List<PlaceRow> rows, int at)
    {
        if (!rows[at].Tied && at + 1 < rows.Count && rows[at + 1].Tied) rows[at + 1] = rows[at + 1] with { Tied = false };
        rows[at] = rows[at] with { Tied = false };
    }
}
