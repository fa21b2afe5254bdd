using Trier.Publishing.Writing;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Charts;

/// <summary>Makes the places-by-wheel chart of a verdict.</summary>
public static class VerdictPlaces
{
    /// <summary>The lanes of the ballots that count.</summary>
    /// <param name="verdict">The verdict.</param>
    public static PlacesData Of(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var looks = VerdictLooks.Of(verdict.Record);
        var counted = verdict.Ballots.Where(ballot => ballot.Standing == StripStanding.Counted).Select(ballot => (Camp: CampOf(ballot.Taste), Places: MidPlaces.Of(ballot.Groups.Add(ballot.Below)))).ToList();
        var lanes = verdict.Wheels.Select(wheel => new PlacesLane(
            wheel.Name,
            looks[wheel.Id],
            [.. counted.Where(ballot => ballot.Places.ContainsKey(wheel.Id)).Select(ballot => new PlacesDot(ballot.Places[wheel.Id], ballot.Camp))],
            Averages(verdict, wheel.Id)));
        string Key(Camp camp, string words) => counted.Count(ballot => ballot.Camp == camp) is var count and > 0 ? $"{words}, {Numbers.Plain(count)}" : "";
        return new(
            [.. lanes],
            verdict.Wheels.Length,
            Key(Camp.Milder, "above the line: prefer milder"),
            Key(Camp.Stronger, "below the line: prefer stronger"),
            Key(Camp.None, "on the line: said neither"),
            "Where each taster placed each wheel",
            string.Join(" ", verdict.Tally.Select(line => $"{verdict.Sample(line.Id).Name}: {string.Join(", ", Averages(verdict, line.Id).DefaultIfEmpty("no average"))}; {Numbers.Plain(line.Firsts)} first, {Numbers.Plain(line.Lasts)} last.")));
    }

    private static Camp CampOf(DeclaredTaste? taste) => taste switch { DeclaredTaste.Milder => Camp.Milder, DeclaredTaste.Stronger => Camp.Stronger, _ => Camp.None };

    private static IReadOnlyList<string> Averages(Verdict verdict, string id) =>
        verdict.Deep?.Camps?.Wheels.First(wheel => wheel.Id == id) is { Milder: { } milder, Stronger: { } stronger }
            ? [$"milder {Numbers.Places(milder, 2)}", $"stronger {Numbers.Places(stronger, 2)}"]
            : verdict.Tally.First(line => line.Id == id).AveragePlace is { } place ? [$"average {Numbers.Places(place, 2)}"] : [];
}
