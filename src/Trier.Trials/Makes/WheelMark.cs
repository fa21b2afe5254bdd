namespace Trier.Trials.Makes;

/// <summary>How a wheel is drawn: shape says which recipe, fill says which wheel of it. Never shown without a name beside it.</summary>
/// <param name="Shape">1 to 8: disc, lozenge, block, wedge, drum, log, hex, cross.</param>
/// <param name="Fill">0 solid (the recipe's first wheel), 1 open (its second), 2 half-filled (its third and later ones).</param>
/// <param name="Tone">1 to 8: butter, river, crust, ash, plum, bark, curd, soot.</param>
public readonly record struct WheelMark(int Shape, int Fill, int Tone);
