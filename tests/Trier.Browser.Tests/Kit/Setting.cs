using Trier.Trials.Makes;
using Trier.Trials.Plans;

namespace Trier.Browser.Tests.Kit;

/// <summary>How a table is laid where it is not laid as usual.</summary>
internal sealed record Setting
{
    /// <summary>What the ballot asks; null for the usual.</summary>
    public BallotPlan? Asked { get; init; }

    /// <summary>Whether the first plate is out; else the key is sealed and the guests are on their way.</summary>
    public bool Open { get; init; } = true;

    /// <summary>Whether the site is a process of its own, which a test can kill.</summary>
    public bool Killable { get; init; }

    /// <summary>Who has sent a ballot: what they were served first is their first place, and so on.</summary>
    public IReadOnlyList<string> Sent { get; init; } = [];

    /// <summary>What is known of wheels, by name.</summary>
    public IReadOnlyDictionary<string, WheelFacts> Facts { get; init; } = new Dictionary<string, WheelFacts>(StringComparer.Ordinal);
}
