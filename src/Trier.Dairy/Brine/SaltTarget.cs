using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>Salt of the finished cheese of a style.</summary>
/// <param name="Style">The style.</param>
/// <param name="From">Low end.</param>
/// <param name="To">High end.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record SaltTarget(Style Style, Share From, Share To, Status Status, string Source)
{
    /// <summary>The table; card: Tables/salt_targets.md.</summary>
    public static readonly Listed<SaltTarget> All = EmbeddedTable.Read("salt_targets", row => new SaltTarget(
        row.Word<Style>("style"), Share.FromPercent(row.Number("low_pct")), Share.FromPercent(row.Number("high_pct")), row.Word<Status>("status"), row.Text("source")));

    /// <summary>The target of a style, or null.</summary>
    /// <param name="style">The style.</param>
    public static SaltTarget? Of(Style style) => All.FirstOrDefault(row => row.Style == style);
}

/// <summary>Salt on milled curd for a named cheese.</summary>
/// <param name="Cheese">The cheese in words.</param>
/// <param name="From">Low end, part of the curd.</param>
/// <param name="To">High end, part of the curd.</param>
/// <param name="Status">How it is known.</param>
/// <param name="Source">The source named in the table.</param>
public sealed record DrySaltingGuide(string Cheese, Share From, Share To, Status Status, string Source)
{
    /// <summary>The table; card: Tables/dry_salting.md.</summary>
    public static readonly Listed<DrySaltingGuide> All = EmbeddedTable.Read("dry_salting", row => new DrySaltingGuide(
        row.Text("cheese"), Share.FromPercent(row.Number("low_pct_of_curd")), Share.FromPercent(row.Number("high_pct_of_curd")), row.Word<Status>("status"), row.Text("source")));
}
