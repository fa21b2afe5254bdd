using Trier.Dairy.Milk;

namespace Trier.Web.Makes.Sums;

/// <summary>Whose milk it is, for sums that need no more of it than the average.</summary>
internal static class MilkEntries
{
    public static readonly SumField Animal = SumField.Choice("animal", "Milk of the", [.. Enum.GetNames<Species>().Select(name => (name.ToLowerInvariant(), name.ToLowerInvariant()))]);

    public static MilkComposition Average(this SumWork work) => TypicalMilk.Of(Enum.Parse<Species>(work.Chosen(Animal.Key), ignoreCase: true)).Milk;
}
