using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>Whether a cheese lies inside a limit.</summary>
public enum Standing
{
    /// <summary>The whole band is inside.</summary>
    Inside,

    /// <summary>The whole band is outside.</summary>
    Outside,

    /// <summary>Not known, or the band straddles the limit.</summary>
    Unknown,
}

/// <summary>What is known of a cheese; leave null what is not.</summary>
/// <param name="Moisture">Moisture.</param>
/// <param name="FatInDryMatter">Fat in dry matter.</param>
/// <param name="MoistureInFatFree">Moisture in fat-free substance.</param>
/// <param name="Salt">Salt.</param>
/// <param name="AgeInDays">Age.</param>
/// <param name="FromRawMilk">Whether the milk was not pasteurised.</param>
public sealed record KnownCheese(
    Estimate<Share>? Moisture = null,
    Estimate<Share>? FatInDryMatter = null,
    Estimate<Share>? MoistureInFatFree = null,
    Estimate<Share>? Salt = null,
    int? AgeInDays = null,
    bool? FromRawMilk = null);

/// <summary>One limit and where the cheese stands.</summary>
/// <param name="Limit">The limit in words.</param>
/// <param name="Standing">Inside, outside, unknown.</param>
public sealed record LimitStanding(string Limit, Standing Standing);

/// <summary>A name's limits. A legal name has more conditions than these; inside here does not make a cheese that cheese.</summary>
/// <param name="Authority">Whose standard.</param>
/// <param name="Reference">Section or file.</param>
/// <param name="Cheese">The name.</param>
/// <param name="MoistureFrom">Least moisture, per cent, or null.</param>
/// <param name="MoistureTo">Most moisture, per cent, or null.</param>
/// <param name="FatInDryMatterFrom">Least fat in dry matter, per cent, or null.</param>
/// <param name="FatInDryMatterTo">Most fat in dry matter, per cent, or null.</param>
/// <param name="MoistureInFatFreeTo">Most moisture in fat-free substance, per cent, or null.</param>
/// <param name="SaltFrom">Least salt, per cent, or null.</param>
/// <param name="SaltTo">Most salt, per cent, or null.</param>
/// <param name="Days">Least age in days, or null.</param>
/// <param name="DaysOnlyIfRaw">Whether the age is asked of unpasteurised milk only.</param>
/// <param name="Status">How the limits are known.</param>
/// <param name="Evidence">What was seen.</param>
public sealed record StandardOfIdentity(
    string Authority,
    string Reference,
    string Cheese,
    double? MoistureFrom,
    double? MoistureTo,
    double? FatInDryMatterFrom,
    double? FatInDryMatterTo,
    double? MoistureInFatFreeTo,
    double? SaltFrom,
    double? SaltTo,
    int? Days,
    bool DaysOnlyIfRaw,
    Status Status,
    string Evidence)
{
    /// <summary>The table; card: Tables/standards_of_identity.md. Laws change.</summary>
    public static readonly Listed<StandardOfIdentity> All = EmbeddedTable.Read("standards_of_identity", row => new StandardOfIdentity(
        row.Text("authority"),
        row.Text("reference"),
        row.Text("cheese"),
        row.NumberOrNone("moisture_above_pct"),
        row.NumberOrNone("moisture_max_pct"),
        row.NumberOrNone("fdm_min_pct"),
        row.NumberOrNone("fdm_max_pct"),
        row.NumberOrNone("mnfs_max_pct"),
        row.NumberOrNone("salt_min_pct"),
        row.NumberOrNone("salt_max_pct"),
        (int?)row.NumberOrNone("age_days"),
        row.Text("age_only_if_raw") == "yes",
        row.Word<Status>("status"),
        row.Text("evidence")));

    /// <summary>Where a cheese stands at each limit this standard has.</summary>
    /// <param name="cheese">What is known.</param>
    public Listed<LimitStanding> Judge(KnownCheese cheese)
    {
        var list = new List<LimitStanding>();
        Add("moisture", cheese.Moisture, MoistureFrom, MoistureTo);
        Add("fat in dry matter", cheese.FatInDryMatter, FatInDryMatterFrom, FatInDryMatterTo);
        Add("moisture in fat-free substance", cheese.MoistureInFatFree, null, MoistureInFatFreeTo);
        Add("salt", cheese.Salt, SaltFrom, SaltTo);
        if (Days is { } days)
        {
            var standing = DaysOnlyIfRaw && cheese.FromRawMilk == false ? Standing.Inside
                : cheese.AgeInDays is not { } age ? Standing.Unknown
                : age >= days ? Standing.Inside
                : DaysOnlyIfRaw && cheese.FromRawMilk is null ? Standing.Unknown : Standing.Outside;
            list.Add(new LimitStanding($"age at least {days} days{(DaysOnlyIfRaw ? " if the milk was not pasteurised" : string.Empty)}", standing));
        }

        return [.. list];

        void Add(string what, Estimate<Share>? known, double? from, double? to)
        {
            if (from is null && to is null) return;
            var words = (from, to) switch
            {
                ({ } low, { } high) => $"{what} {Field.Number(low)} to {Field.Number(high)} %",
                ({ } low, null) => $"{what} at least {Field.Number(low)} %",
                _ => $"{what} at most {Field.Number(to!.Value)} %",
            };
            list.Add(new LimitStanding(words, Stand(known, from ?? double.NegativeInfinity, to ?? double.PositiveInfinity)));
        }
    }

    /// <summary>Fat the wet cheese must hold at the most moisture allowed: FDM x (100 - M)/100, or null without both limits. Derived.</summary>
    public Share? LeastFatAtMostMoisture =>
        FatInDryMatterFrom is { } fat && MoistureTo is { } moisture ? Share.FromPercent(fat * (100 - moisture) / 100) : null;

    private static Standing Stand(Estimate<Share>? known, double from, double to)
    {
        if (known is not { } band) return Standing.Unknown;
        if (band.Low.Percent >= from && band.High.Percent <= to) return Standing.Inside;
        return band.High.Percent < from || band.Low.Percent > to ? Standing.Outside : Standing.Unknown;
    }
}
