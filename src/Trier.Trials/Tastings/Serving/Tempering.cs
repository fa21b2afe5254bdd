using Trier.Dairy.Quantities;

namespace Trier.Trials.Tastings.Serving;

/// <summary>
/// How long a piece takes to warm from the cave towards the room: cooling by Newton's law with one temperature throughout the piece,
/// t = tau ln((room - start) / (room - goal)), tau = rho cp (V/A) / h (textbook lumped heat capacity, good below a Biot number of about 0.1, so for cubes; larger
/// pieces are slower inside than this says).
/// </summary>
/// <remarks>
/// rho cp = 1069 kg/m3 x 2756 J/(kg K): a pressed cheese of 37 % moisture at 11 °C by the component formulas of [ChoiOkos1986], read in code listings; measured Cheddar has 2444 to 3096 J/(kg K).
/// h = 8 W/(m2 K) for still air, 5 to 12, from memory, high confidence. Minutes may be off by a third either way: damp on a cold face speeds it, a cover slows it.
/// </remarks>
public static class Tempering
{
    private const double HeatPerCubicMetre = 1069.0 * 2756;
    private const double StillAir = 8;

    /// <summary>Minutes until a piece reaches its goal; null where the room never brings it there.</summary>
    /// <param name="volumeOverSurface">V/A of the piece.</param>
    /// <param name="start">Where it comes from.</param>
    /// <param name="room">The room.</param>
    /// <param name="goal">What it should reach.</param>
    public static double? Minutes(Length volumeOverSurface, Temperature start, Temperature room, Temperature goal)
    {
        if (goal.Celsius <= start.Celsius) return 0;
        if (goal.Celsius >= room.Celsius) return null;
        var tau = HeatPerCubicMetre * volumeOverSurface.Metres / StillAir;
        return tau * Math.Log((room.Celsius - start.Celsius) / (room.Celsius - goal.Celsius)) / 60;
    }

    /// <summary>V/A of a cube: a sixth of its edge.</summary>
    /// <param name="edge">The edge.</param>
    public static Length OfCube(Length edge) => Length.FromMetres(edge.Metres / 6);

    /// <summary>V/A of part of a cylinder.</summary>
    /// <param name="across">Diameter.</param>
    /// <param name="tall">Height.</param>
    /// <param name="quarters">1 to 4; 4 is the whole wheel, without a cut face.</param>
    public static Length OfQuarters(Length across, Length tall, int quarters)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(quarters, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(quarters, 4);
        double radius = across.Metres / 2, share = quarters / 4.0;
        var volume = Math.PI * radius * radius * tall.Metres * share;
        var faces = quarters == 4 ? 0 : 2 * radius * tall.Metres;
        return Length.FromMetres(volume / ((2 * Math.PI * radius * radius * share) + (2 * Math.PI * radius * tall.Metres * share) + faces));
    }
}
