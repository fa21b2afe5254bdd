using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes.Sheets;
using Trier.Web.Hosting;

namespace Trier.Web.Makes;

/// <summary>The units a maker chose, kept in a cookie: litres and °C with a decimal comma, or gallons and °F with a point.</summary>
internal sealed record MakerUnits(UnitSystem System)
{
    private const string Cookie = "trier-units";

    public static MakerUnits Metric { get; } = new(UnitSystem.Metric);

    public bool Us => System == UnitSystem.UsCustomary;

    public char Mark => Us ? '.' : ',';

    public string Degree => Us ? "°F" : "°C";

    public static MakerUnits Of(HttpContext context) => context.Request.Cookies[Cookie] == "us" ? new(UnitSystem.UsCustomary) : Metric;

    public static void Map(IEndpointRouteBuilder maker) => maker.MapPost("/units", (HttpContext context, IFormCollection form) =>
    {
        var posted = new Posted(form);
        context.Response.Cookies.Append(Cookie, posted.Text("units") == "us" ? "us" : "metric", new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromDays(3650), IsEssential = true });
        var back = posted.Text("back");
        return Page.GoTo(back.StartsWith('/') && !back.StartsWith("//", StringComparison.Ordinal) && !back.Contains('\\', StringComparison.Ordinal) ? back : "/recipes");
    });

    public string Write(Measure measure, double value) => FigureText.Write(measure, value, System, Mark);

    public string Write(Figure figure) => figure.InWords(System, Mark);

    /// <summary>A bare number with the maker's decimal mark.</summary>
    public string Number(double value, string format = "0.###") => value.ToString(format, CultureInfo.InvariantCulture).Replace('.', Mark);

    public double ToCelsius(double typed) => Us ? (typed - 32) * 5 / 9 : typed;

    public double FromCelsius(double celsius) => Us ? Math.Round((celsius * 9 / 5) + 32, 2) : celsius;

    /// <summary>Reads a number with a comma or a point; a blank is null, anything else a problem.</summary>
    public static double? Read(string text, string field, string label, List<Problem> problems)
    {
        var trimmed = text.Trim().Replace(" ", "", StringComparison.Ordinal);
        if (trimmed.Length == 0) return null;
        if (double.TryParse(trimmed.Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)) return number;
        problems.Add(new(field, $"{label}: “{text.Trim()}” is no number; write it as 12 or 12,5."));
        return null;
    }
}
