using Trier.Trials.Makes.Sheets;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Sums;

/// <summary>Sums at the bench: plain questions in the address, so that one can be kept, sent and asked again.</summary>
internal static class SumRoutes
{
    public static void MapSums(this IEndpointRouteBuilder maker) => maker.MapGet("/makes/sums", (HttpContext context) =>
    {
        string Text(string name) => context.Request.Query[name].ToString().Trim();
        // Numbers kept in an address stay in the units they were typed in, whatever this device shows otherwise.
        var units = Text("units") switch { "us" => new MakerUnits(UnitSystem.UsCustomary), "metric" => MakerUnits.Metric, _ => MakerUnits.Of(context) };
        if (BenchSum.All.FirstOrDefault(sum => sum.Key == Text("sum")) is not { } asked) return Page.Of<SumsPage>(("Chosen", units));
        // A link to a sum opens it with nothing typed: that is no fault.
        if (context.Request.Query.Keys.All(key => key is "sum" or "units")) return Page.Of<SumsPage>(("Chosen", units), ("Unfolded", asked.Key));
        var work = SumWork.Of(asked, Text, units);
        return work.Problems.Count > 0 ? Page.Again<SumsPage>(("Chosen", units), ("Asked", work)) : Page.Of<SumsPage>(("Chosen", units), ("Asked", work));
    });
}
