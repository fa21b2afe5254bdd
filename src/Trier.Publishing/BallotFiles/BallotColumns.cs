using System.Collections.Immutable;

namespace Trier.Publishing.BallotFiles;

/// <summary>Column names of the layout with one row a sample.</summary>
internal static class BallotColumns
{
    public const string Taster = "taster";
    public const string Position = "position";
    public const string Code = "code";
    public const string Liking = "liking_1to9";
    public const string Salt = "salt_jar";
    public const string Place = "place";
    public const string Words = "words";
    public const string Remark = "remark";

    public static ImmutableArray<string> All { get; } = [Taster, Position, Code, Liking, Salt, Place, Words, Remark];
}
