using System.Globalization;
using System.Text.RegularExpressions;
using Trier.Dairy.Quantities;
using Trier.Trials.Common;
using Trier.Trials.Makes.Sheets;
using Trier.Web.Hosting;

namespace Trier.Web.Makes;

/// <summary>The units a maker chose, kept in a cookie: litres and °C with a decimal comma, or gallons and °F with a point.</summary>
internal sealed partial record MakerUnits(UnitSystem System)
{
    private const string Cookie = "trier-units";

    public static MakerUnits Metric { get; } = new(UnitSystem.Metric);

    public bool Us => System == UnitSystem.UsCustomary;

    public MakerUnits Other => Us ? Metric : new(UnitSystem.UsCustomary);

    public string InWords => Us ? "gallons, pounds and °F" : "litres, grams and °C";

    public char Mark => Us ? '.' : ',';

    public Notation Notation => new(System, Mark);

    public string Degree => Us ? "°F" : "°C";

    /// <summary>The field or part of an address that says in which units the amounts beside it were typed.</summary>
    public const string Field = "units";

    /// <summary>The word for these units in a form or an address.</summary>
    public string Word => Us ? "us" : "metric";

    public static MakerUnits Of(HttpContext context) => Named(context.Request.Cookies[Cookie]);

    /// <summary>The units of this word; metric for any other word and for none.</summary>
    public static MakerUnits Named(string? word) => word == "us" ? new(UnitSystem.UsCustomary) : Metric;

    /// <summary>The units a form was typed in: those it was shown in, whatever was chosen on another page since.</summary>
    public static MakerUnits Typed(Posted posted, HttpContext context) => posted.Optional(Field) is { } word ? Named(word) : Of(context);

    /// <summary>Shows numbers in these units from now on, on this device.</summary>
    public void Choose(HttpContext context) =>
        context.Response.Cookies.Append(Cookie, Word, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromDays(3650), IsEssential = true });

    public static void Map(IEndpointRouteBuilder maker) => maker.MapPost("/units", (HttpContext context, IFormCollection form) =>
    {
        var posted = new Posted(form);
        Named(posted.Text(Field)).Choose(context);
        var back = posted.Text("back");
        return Page.GoTo(back.StartsWith('/') && !back.StartsWith("//", StringComparison.Ordinal) && !back.Contains('\\', StringComparison.Ordinal) ? back : "/recipes");
    });

    public string Write(Measure measure, double value) => Notation.Write(measure, value);

    public string Write(Figure figure) => figure.InWords(Notation);

    /// <summary>A sentence of the core as this maker reads it.</summary>
    public string Say(string sentence) => Notation.Say(sentence);

    /// <summary>A formula with the page's decimal sign; its constants stay in the units of its source.</summary>
    public string Formula(string formula) => new Notation(UnitSystem.Metric, Mark).Say(formula);

    /// <summary>A wheel's fact as this maker reads it; facts are kept metric with a decimal comma.</summary>
    public string SayFact(string fact) => Us ? Say(DecimalComma().Replace(fact, ".")) : fact;

    /// <summary>Problems as this maker reads them.</summary>
    public IEnumerable<Problem> Say(IEnumerable<Problem> problems) => problems.Select(problem => problem with { Sentence = Say(problem.Sentence) });

    /// <summary>A bare number with the maker's decimal mark.</summary>
    public string Number(double value, string format = "0.###") => value.ToString(format, CultureInfo.InvariantCulture).Replace('.', Mark);

    public double ToCelsius(double typed) => ToCore("°C", typed);

    /// <summary>The unit a maker types where the core holds this one.</summary>
    public string UnitOf(string core) => !Us ? core : core switch { "°C" => "°F", "kPa" => "psi", "cm" => "in", "kg" => "lb", "L" => "gal", _ => core };

    /// <summary>A typed number in the core's unit.</summary>
    public double ToCore(string core, double typed) => !Us ? typed : core switch { "°C" => (typed - 32) * 5 / 9, "kPa" => Pressure.FromPoundsPerSquareInch(typed).Kilopascals, "cm" => typed * 2.54, "kg" => Mass.FromPounds(typed).Kilograms, "L" => Volume.FromUsGallons(typed).Litres, _ => typed };

    /// <summary>A number of the core as the maker would type it.</summary>
    public double FromCore(string core, double value) => !Us ? value : core switch
    {
        "°C" => Math.Round((value * 9 / 5) + 32, 2),
        "kPa" => Math.Round(Pressure.FromKilopascals(value).PoundsPerSquareInch, 3),
        "cm" => Math.Round(value / 2.54, 4),
        "kg" => Math.Round(Mass.FromKilograms(value).Pounds, 4),
        "L" => Math.Round(Volume.FromLitres(value).UsGallons, 5),
        _ => value,
    };

    /// <summary>Reads a number with a comma or a point; a blank is null, anything else a problem.</summary>
    public static double? Read(string text, string field, string label, List<Problem> problems)
    {
        var trimmed = text.Trim().Replace(" ", "", StringComparison.Ordinal);
        if (trimmed.Length == 0) return null;
        if (double.TryParse(trimmed.Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)) return number;
        problems.Add(new(field, $"{label}: “{text.Trim()}” is no number; write it as 12 or 12.5."));
        return null;
    }

    [GeneratedRegex(@"(?<=\d),(?=\d)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DecimalComma();
}
