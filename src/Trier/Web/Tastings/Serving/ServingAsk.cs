using System.Globalization;
using Trier.Dairy.Quantities;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Plates;
using Trier.Trials.Tastings.Serving;
using Trier.Trials.Tastings.Steps;

namespace Trier.Web.Tastings.Serving;

/// <summary>What the portions page was asked, as typed, and what follows from it. Nothing of it is kept.</summary>
internal sealed class ServingAsk
{
    private static readonly Dictionary<string, string> Usual = new(StringComparer.Ordinal)
    {
        ["across"] = "15",
        ["tall"] = "7",
        ["cube"] = "15",
        ["cubes"] = "3",
        ["trim"] = "10",
        ["spare"] = "15",
        ["cave"] = "12",
        ["room"] = "20",
        ["goal"] = "17",
        ["first"] = "",
    };

    private readonly IQueryCollection _query;
    private readonly List<Problem> _problems = [];

    /// <summary>Reads the form.</summary>
    /// <param name="query">Its fields.</param>
    /// <param name="tasting">The trial.</param>
    public ServingAsk(IQueryCollection query, Tasting tasting)
    {
        _query = query;
        var size = Take(SampleSize.Create(Number("cube"), (int)Math.Clamp(Number("cubes"), 0, 99), Number("trim"), Number("spare")));
        Size = size;
        foreach (var field in new[] { "cave", "room", "goal" })
        {
            if (Number(field) is not (>= 0 and <= 35)) _problems.Add(new(field, "A temperature here is between 0 and 35 °C."));
        }

        if (Typed("first").Length > 0)
        {
            if (TimeOnly.TryParseExact(Typed("first"), ["HH:mm", "H:mm", "H.mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)) First = time;
            else _problems.Add(new("first", "Write the time as 16:10."));
        }

        if (size is null) return;
        Usually = Take(WheelCut.Create(Number("across"), Number("tall"), size));
        if (Usually is null) return;
        Spares = SparePlates.Of(tasting.Book);
        // A wheel with an allergen is cut last, on a board of its own.
        foreach (var entry in tasting.Book.Standing.OrderBy(entry => entry.Facts.Allergens.Length > 0))
        {
            var across = Typed($"across-{entry.Label}").Length > 0 ? Number($"across-{entry.Label}") : Number("across");
            var tall = Typed($"tall-{entry.Label}").Length > 0 ? Number($"tall-{entry.Label}") : Number("tall");
            var plates = (int)Math.Ceiling(Share(tasting.Book, entry.Wheel) * (Spares + tasting.Book.Present.Count(taster => !taster.LeftOff.Contains(entry.Wheel))) * (tasting.Book.Repeat == entry.Wheel ? 2 : 1));
            if (Take(WheelCut.Create(across, tall, size), entry) is { } cut) Wheels.Add(new(entry, cut, plates));
        }
    }

    /// <summary>How samples are cut; null where the form is wrong.</summary>
    public SampleSize? Size { get; }

    /// <summary>The wheel as it is usually; null where the form is wrong.</summary>
    public WheelCut? Usually { get; }

    /// <summary>When the first plate goes out, or null.</summary>
    public TimeOnly? First { get; }

    /// <summary>Plates planned for nobody on the list; they are cut, plated and bought for as the plating list has them.</summary>
    public int Spares { get; }

    /// <summary>The wheels in the order of cutting.</summary>
    public List<WheelToCut> Wheels { get; } = [];

    /// <summary>What is wrong with the form.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>Whether everything could be worked out.</summary>
    public bool Ok => _problems.Count == 0;

    /// <summary>A field as typed, or as it usually is.</summary>
    /// <param name="field">Its name.</param>
    public string Typed(string field) => _query.TryGetValue(field, out var typed) ? typed.ToString().Trim() : Usual.GetValueOrDefault(field, "");

    /// <summary>A field as a number; not a number where it is none. Comma and point both part the whole from the rest.</summary>
    /// <param name="field">Its name.</param>
    public double Number(string field) => double.TryParse(Typed(field).Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;

    /// <summary>Minutes a piece warms, to the next five; null where the room never brings it there.</summary>
    /// <param name="volumeOverSurface">Of the piece.</param>
    public int? Minutes(Length volumeOverSurface) =>
        Tempering.Minutes(volumeOverSurface, Temperature.FromCelsius(Number("cave")), Temperature.FromCelsius(Number("room")), Temperature.FromCelsius(Number("goal"))) is { } minutes
            ? (int)(5 * Math.Ceiling(minutes / 5))
            : null;

    /// <summary>The share of tasters a wheel goes to: all, but where everybody gets some of the first flight.</summary>
    private static double Share(DayBook book, WheelId wheel)
    {
        var first = book.Standing.Count(entry => !book.SecondFlight.Contains(entry.Wheel)) + (book.Repeat is null ? 0 : 1);
        return book.Plan.Serving?.SamplesEach is { } each && each < first && !book.SecondFlight.Contains(wheel) ? (double)each / first : 1;
    }

    private T? Take<T>(Outcome<T> outcome, Entry? entry = null)
        where T : class
    {
        if (outcome.TryGet(out var value)) return value;
        _problems.AddRange(outcome.Problems.Select(problem => entry is null || problem.Field is not ("across" or "tall") ? problem : new Problem($"{problem.Field}-{entry.Label}", $"{entry.Name}: {problem.Sentence}")));
        return null;
    }
}

/// <summary>One wheel to cut.</summary>
/// <param name="Entry">The wheel.</param>
/// <param name="Cut">How it is cut.</param>
/// <param name="Plates">Samples needed, those of spare plates included; a wheel served twice needs two a plate.</param>
internal sealed record WheelToCut(Entry Entry, WheelCut Cut, int Plates)
{
    /// <summary>Cubes needed, with some over for those that break.</summary>
    public int Cubes => Cut.Size.CubesFor(Plates);

    /// <summary>Quarters to cut; null where one wheel is not enough.</summary>
    public int? Quarters => Cut.QuartersFor(Cubes);
}
