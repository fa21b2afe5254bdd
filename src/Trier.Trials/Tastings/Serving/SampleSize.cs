using Trier.Dairy.Quantities;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Serving;

/// <summary>What one taster gets of one sample, and how it is cut.</summary>
public sealed record SampleSize
{
    private SampleSize(Length cube, int cubes, Length trim, double spare) => (Cube, Cubes, Trim, Spare) = (cube, cubes, trim, spare);

    /// <summary>Edge of a cube.</summary>
    public Length Cube { get; }

    /// <summary>Cubes a sample. Three leave one to go back to (common practice, no source).</summary>
    public int Cubes { get; }

    /// <summary>Rind cut away all round.</summary>
    public Length Trim { get; }

    /// <summary>Share cut on top of what is needed: 0.15 is 15 in 100.</summary>
    public double Spare { get; }

    /// <summary>Paste of one cubic centimetre, grams: semi-hard to hard cheese without many eyes, about 1.05 to 1.1 (from memory, unverified).</summary>
    public const double GramsPerCubicCentimetre = 1.08;

    /// <summary>Weight of one sample, an estimate.</summary>
    public Mass Weight => Mass.FromGrams(Cubes * Math.Pow(Cube.Centimetres, 3) * GramsPerCubicCentimetre);

    /// <summary>Cubes to cut for a number of plates, spare included.</summary>
    /// <param name="plates">0 or more.</param>
    public int CubesFor(int plates) => (int)Math.Ceiling(plates * Cubes * (1 + Spare) - 1e-9);

    /// <summary>A sample by its measures.</summary>
    /// <param name="cubeMillimetres">8 to 40.</param>
    /// <param name="cubes">1 to 6.</param>
    /// <param name="trimMillimetres">0 to 50.</param>
    /// <param name="sparePercent">0 to 100.</param>
    public static Outcome<SampleSize> Create(double cubeMillimetres, int cubes, double trimMillimetres, double sparePercent)
    {
        var problems = new List<Problem>();
        if (cubeMillimetres is not (>= 8 and <= 40)) problems.Add(new("cube", "A cube’s edge is between 8 and 40 mm."));
        if (cubes is not (>= 1 and <= 6)) problems.Add(new("cubes", "A sample is one to six cubes."));
        if (trimMillimetres is not (>= 0 and <= 50)) problems.Add(new("trim", "The rind cut away is between 0 and 50 mm."));
        if (sparePercent is not (>= 0 and <= 100)) problems.Add(new("spare", "The spare is between 0 and 100 in 100."));
        return problems.Count > 0
            ? Outcome.Fault<SampleSize>(problems)
            : Outcome.Of(new SampleSize(Length.FromMillimetres(cubeMillimetres), cubes, Length.FromMillimetres(trimMillimetres), sparePercent / 100));
    }
}
