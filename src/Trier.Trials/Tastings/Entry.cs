using Trier.Trials.Common;
using Trier.Trials.Makes;

namespace Trier.Trials.Tastings;

/// <summary>A wheel's place in a trial. Its facts are frozen at sealing; corrections after that keep the old value.</summary>
/// <param name="Wheel">Which wheel.</param>
/// <param name="Label">Two-sign label in this trial: W1, W2 and so on.</param>
/// <param name="Name">What people call the wheel.</param>
/// <param name="Mark">How it is drawn.</param>
/// <param name="Facts">What is known of it.</param>
public sealed record Entry(WheelId Wheel, string Label, string Name, WheelMark Mark, WheelFacts Facts);
