using System.Collections.Immutable;

namespace Trier.Web.Makes.Sums;

/// <summary>A sum at the bench: what it asks for and what it answers. The answer itself is the Dairy room's.</summary>
internal abstract class BenchSum
{
    /// <summary>Every sum, in the order of a vat day.</summary>
    public static readonly ImmutableArray<BenchSum> All =
    [
        new HeatSum(), new PasteurisationSum(), new StandardisingSum(), new AciditySum(), new BrineSum(), new EveningOutSum(), new OwnDiffusionSum(), new CostSum(),
    ];

    /// <summary>Its name in the address.</summary>
    public abstract string Key { get; }

    /// <summary>What it is called.</summary>
    public abstract string Name { get; }

    /// <summary>What it answers, in a few words.</summary>
    public abstract string Answers { get; }

    /// <summary>What to know before trusting it; may be empty.</summary>
    public virtual string Mind => "";

    /// <summary>What it asks for.</summary>
    public abstract ImmutableArray<SumGroup> Groups { get; }

    /// <summary>Works it out; only called where every entry can be.</summary>
    /// <param name="work">The entries, and where the answers go.</param>
    public abstract void Work(SumWork work);
}
