using Trier.Trials.Common;

namespace Trier.Trials.Makes;

/// <summary>One cheese from a make. It can be in several trials: at three months and at six.</summary>
/// <param name="Id">Names it for good.</param>
/// <param name="Name">What people call it: "Thistle".</param>
/// <param name="Facts">What is known of it.</param>
public sealed record Wheel(WheelId Id, string Name, WheelFacts Facts);
