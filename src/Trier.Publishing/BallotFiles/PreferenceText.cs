using System.Collections.Immutable;
using System.Globalization;

namespace Trier.Publishing.BallotFiles;

/// <summary>
/// The open text formats for preference data, <c>.soc .soi .toc .toi</c>: header lines such as
/// <c># ALTERNATIVE NAME 1: Thistle</c>, then rows such as <c>12: 2,1,{3,4}</c>. Only the form with header lines is read.
/// </summary>
internal static class PreferenceText
{
    private const string NamePrefix = "ALTERNATIVE NAME ";

    public static bool Looks(string text) => text.AsSpan().TrimStart() is ['#', ..];

    /// <summary>Whether the text is the older form, which begins with a bare number of alternatives.</summary>
    public static bool LooksOlder(string text)
    {
        var lines = text.Split('\n', 4);
        return lines.Length > 2
            && int.TryParse(lines[0].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out _)
            && lines[1].TrimStart().StartsWith("1,", StringComparison.Ordinal);
    }

    public static ParsedBallots Read(string text, Faults faults)
    {
        var names = new SortedDictionary<int, string>();
        int? announced = null;
        var orders = new List<(int Line, int Count, ImmutableArray<ImmutableArray<int>> Groups)>();
        var lines = text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim();
            if (line.Length == 0) continue;
            if (line[0] == '#') ReadHeader(line[1..].Trim(), i + 1, names, ref announced, faults);
            else if (ReadOrder(line, i + 1, faults) is { } order) orders.Add(order);
        }

        if (announced is { } number)
        {
            for (var a = 1; a <= Math.Min(number, BallotFile.MostSamples + 1); a++)
                if (!names.ContainsKey(a)) names[a] = a.ToString(CultureInfo.InvariantCulture);
        }

        foreach (var twice in names.GroupBy(n => n.Value, StringComparer.Ordinal).Where(g => g.Count() > 1))
            faults.Add("alternative name", $"The name {Faults.Quote(twice.Key)} is given to {twice.Count()} alternatives; give each its own.");
        var codes = names.Values.ToImmutableArray();
        var named = new List<CountedOrder>();
        foreach (var (line, count, groups) in orders)
        {
            var unknown = groups.SelectMany(g => g).Where(a => !names.ContainsKey(a)).Distinct().ToList();
            foreach (var a in unknown)
                faults.AtLine(line, "order", string.Create(CultureInfo.InvariantCulture, $"unknown code {a}; the header names the alternatives {string.Join(", ", names.Keys.Take(20))}."));
            if (unknown.Count > 0) continue;
            var order = new CountedOrder(line, count, [.. groups.Select(g => g.Select(a => names[a]).ToImmutableArray())]);
            Orders.CheckTwice(order, faults);
            named.Add(order);
        }

        if (orders.Count == 0 && !faults.Any) faults.Add("file", "The file has header lines and no ballots; write rows such as “12: 2,1,{3,4}”.");
        return Orders.Expand(codes, named, faults);
    }

    private static void ReadHeader(string header, int line, SortedDictionary<int, string> names, ref int? announced, Faults faults)
    {
        var colon = header.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0) return;
        var (key, value) = (header[..colon].Trim(), header[(colon + 1)..].Trim());
        if (key.StartsWith(NamePrefix, StringComparison.OrdinalIgnoreCase))
        {
            if (!int.TryParse(key[NamePrefix.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var number) || value.Length == 0)
                faults.AtLine(line, "alternative name", "write it as “# ALTERNATIVE NAME 1: name”.");
            else if (!names.TryAdd(number, value))
                faults.AtLine(line, "alternative name", string.Create(CultureInfo.InvariantCulture, $"alternative {number} is named twice; take one out."));
        }
        else if (string.Equals(key, "NUMBER ALTERNATIVES", StringComparison.OrdinalIgnoreCase))
        {
            if (int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) announced = number;
            else faults.AtLine(line, "number alternatives", $"{Faults.Quote(value)} is no whole number.");
        }
    }

    private static (int Line, int Count, ImmutableArray<ImmutableArray<int>> Groups)? ReadOrder(string text, int line, Faults faults)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0)
        {
            faults.AtLine(line, null, $"{Faults.Quote(text)} is no ballot row; write “12: 2,1,{{3,4}}”, the count before the colon.");
            return null;
        }

        var count = Orders.Count(text[..colon].Trim(), line, faults);
        var groups = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        List<int>? tied = null;
        foreach (var part in text[(colon + 1)..].Split(','))
        {
            var token = part.Trim();
            var opens = token.StartsWith('{');
            var closes = token.EndsWith('}');
            var inner = token.TrimStart('{').TrimEnd('}').Trim();
            var wellFormed = int.TryParse(inner, NumberStyles.None, CultureInfo.InvariantCulture, out var alternative);
            if (!wellFormed || (opens && tied is not null) || (closes && !opens && tied is null))
            {
                faults.AtLine(line, "order", $"{Faults.Quote(token)} is no alternative; write their numbers parted by commas, tied ones between {{ and }}.");
                return null;
            }

            if (opens) tied = [];
            if (tied is null) groups.Add([alternative]);
            else tied.Add(alternative);
            if (!closes) continue;
            groups.Add([.. tied!]);
            tied = null;
        }

        if (tied is null) return count is null ? null : (line, count.Value, groups.ToImmutable());
        faults.AtLine(line, "order", "a { opens and never closes; close the tied group with }.");
        return null;
    }
}
