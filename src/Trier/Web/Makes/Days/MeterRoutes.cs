using System.Text;
using Microsoft.AspNetCore.Mvc;
using Trier.Publishing.MeterFiles;
using Trier.Storage.Makes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Days;

/// <summary>A meter's file, read into a make. The columns chosen are kept in a cookie of this device.</summary>
internal static class MeterRoutes
{
    private const string Cookie = "trier-meter";
    private const char Apart = '\u001f';

    public static void MapMeters(this IEndpointRouteBuilder maker)
    {
        maker.MapGet("/makes/{id:guid}/meter", async (Guid id, HttpContext context, MakeStore makes) =>
            await makes.FindAsync(new(id)) is { } make ? Page.Of<MeterPage>(("Make", make), ("Columns", Remembered(context))) : Results.NotFound());
        maker.MapPost("/makes/{id:guid}/meter", ReadAsync).WithMetadata(new RequestSizeLimitAttribute(MeterFile.LargestBytes + 1_000_000));
    }

    private static async Task<IResult> ReadAsync(Guid id, HttpContext context, MakeStore makes)
    {
        if (await makes.FindAsync(new(id)) is not { } make) return Results.NotFound();
        var form = await context.Request.ReadFormAsync();
        var posted = new Posted(form);
        var remembered = Remembered(context);
        var chosen = posted.Text("time").Length > 0;
        var columns = (chosen ? new MeterColumns(posted.Text("time"), posted.Text("date"), posted.Text("value"), false) : remembered) with { IsTemperature = posted.Text("kind") is "celsius" or "fahrenheit", IsFahrenheit = posted.Text("kind") == "fahrenheit", Order = posted.Text("order") switch { "day" => DayOrder.DayFirst, "month" => DayOrder.MonthFirst, _ => DayOrder.FromFile } };
        if (form.Files["file"] is not { Length: > 0 } file) return Refused(make, columns, [new("file", "Choose the file the meter wrote.")]);
        if (file.Length > MeterFile.LargestBytes) return Refused(make, columns, [new("file", "The file is larger than 40 MB: cut it to the days of this make.")]);
        using var reader = new StreamReader(file.OpenReadStream(), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        var text = await reader.ReadToEndAsync();
        var header = MeterFile.Header(text);
        if (!header.TryGet(out var names)) return Refused(make, columns, header.Problems);
        var guessed = chosen ? columns : MeterFile.Guess(names, columns);
        var read = MeterFile.Read(text, Path.GetFileName(file.FileName), guessed, make.Begun.Begins);
        var part = posted.Number("part");
        var outcome = read.TryGet(out var curve) ? await makes.ActAsync(new(id), null, stands => stands.Keep(makes.Now, curve with { Part = part })) : Outcome.Fault<Make>(read.Problems);
        if (!outcome.Ok) return Page.Again<MeterPage>(("Make", make), ("Header", names), ("Columns", guessed), ("Faults", Page.Faults(outcome.Problems)));
        context.Response.Cookies.Append(Cookie, Uri.EscapeDataString(string.Join(Apart, guessed.Time, guessed.Date, guessed.Value, !guessed.IsTemperature ? "pH" : guessed.IsFahrenheit ? "fahrenheit" : "celsius")), new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromDays(3650), IsEssential = true });
        return Page.GoTo($"/makes/{id}/record");
    }

    private static Microsoft.AspNetCore.Http.HttpResults.RazorComponentResult<MeterPage> Refused(Make make, MeterColumns columns, IEnumerable<Problem> problems) => Page.Again<MeterPage>(("Make", make), ("Columns", columns), ("Faults", Page.Faults(problems)));

    private static MeterColumns Remembered(HttpContext context)
    {
        var parts = Uri.UnescapeDataString(context.Request.Cookies[Cookie] ?? "").Split(Apart);
        return parts.Length == 4 ? new(parts[0], parts[1], parts[2], parts[3] is "celsius" or "fahrenheit", parts[3] == "fahrenheit") : new("", "", "", false);
    }
}
