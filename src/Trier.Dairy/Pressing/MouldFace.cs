using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Pressing;

/// <summary>The face of a mould that the follower presses on.</summary>
public sealed record MouldFace
{
    private MouldFace(Area area) => Area = area;

    /// <summary>Its area.</summary>
    public Area Area { get; }

    /// <summary>A round face: A = pi d^2/4.</summary>
    /// <param name="diameter">Diameter.</param>
    public static Outcome<MouldFace> Round(Length diameter)
    {
        var gate = new Gate().Check(PressFields.MouldWidth, diameter.Centimetres);
        if (gate.Shut) return gate.Refusal<MouldFace>();
        return Face(gate, Math.PI * diameter.Metres * diameter.Metres / 4, "A = pi d^2 / 4", [new("Diameter d", diameter.Centimetres, "cm")]);
    }

    /// <summary>A rectangular face: A = a b.</summary>
    /// <param name="length">One side.</param>
    /// <param name="width">The other side.</param>
    public static Outcome<MouldFace> Rectangular(Length length, Length width)
    {
        var gate = new Gate().Check(PressFields.MouldWidth, length.Centimetres).Check(PressFields.MouldWidth, width.Centimetres);
        if (gate.Shut) return gate.Refusal<MouldFace>();
        return Face(gate, length.Metres * width.Metres, "A = a b", [new("Side a", length.Centimetres, "cm"), new("Side b", width.Centimetres, "cm")]);
    }

    private static Outcome<MouldFace> Face(Gate gate, double squareMetres, string formula, Listed<Given> inputs)
    {
        var area = Area.FromSquareMetres(squareMetres);
        return gate.Answer(new MouldFace(area), new Working("Face of the mould", formula, inputs, [new("Area A", area.SquareCentimetres, "cm2")], Sources.Arithmetic));
    }
}
