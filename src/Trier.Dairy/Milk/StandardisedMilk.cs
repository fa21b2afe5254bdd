using Trier.Dairy.Quantities;

namespace Trier.Dairy.Milk;

/// <summary>What is done to a milk to standardise it.</summary>
public enum StandardisingStep
{
    /// <summary>Skim is added: there was too much fat.</summary>
    AddSkim,

    /// <summary>Cream is taken off: there was too much fat.</summary>
    RemoveCream,

    /// <summary>Cream is added: there was too little fat.</summary>
    AddCream,

    /// <summary>Skim is taken off: there was too little fat.</summary>
    RemoveSkim,
}

/// <summary>The plan and its result.</summary>
/// <param name="Step">What to do.</param>
/// <param name="Amount">How much of the skim or cream; zero or more.</param>
/// <param name="Stream">The skim or cream: its fat and protein.</param>
/// <param name="Result">The milk afterwards: its mass, fat and protein.</param>
public sealed record StandardisedMilk(StandardisingStep Step, Mass Amount, MilkPortion Stream, MilkPortion Result)
{
    /// <summary>Protein over fat afterwards.</summary>
    public double ProteinToFat => Result.Protein / Result.Fat;
}

/// <summary>A mass of milk, skim or cream with its fat and protein.</summary>
/// <param name="Mass">The mass.</param>
/// <param name="Fat">Fat.</param>
/// <param name="Protein">Protein.</param>
public sealed record MilkPortion(Mass Mass, Share Fat, Share Protein)
{
    /// <summary>Mass of the fat.</summary>
    public Mass FatMass => Mass * Fat.Fraction;

    /// <summary>Mass of the protein.</summary>
    public Mass ProteinMass => Mass * Protein.Fraction;

    /// <summary>This stream with another added.</summary>
    /// <param name="other">The other stream.</param>
    public MilkPortion With(MilkPortion other) => Blend(Mass + other.Mass, FatMass + other.FatMass, ProteinMass + other.ProteinMass);

    /// <summary>This stream with another taken off.</summary>
    /// <param name="other">The other stream, smaller than this.</param>
    public MilkPortion Without(MilkPortion other) => Blend(Mass - other.Mass, FatMass - other.FatMass, ProteinMass - other.ProteinMass);

    private static MilkPortion Blend(Mass mass, Mass fat, Mass protein) =>
        new(mass, Share.FromFraction(fat / mass), Share.FromFraction(protein / mass));
}
