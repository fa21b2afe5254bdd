using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>What a taster says before the first bite.</summary>
/// <param name="Taste">What they usually like, or null where they left it open.</param>
/// <param name="NoSmell">A cold, or little smell today.</param>
/// <param name="Junior">Under 12, and a parent said yes.</param>
/// <param name="Agreed">What may be published.</param>
/// <param name="MayNotHave">Wheels that hold something they may not eat.</param>
/// <param name="AsksHost">Something else they may not eat: the host goes and asks.</param>
public sealed record SignIn(DeclaredTaste? Taste, bool NoSmell, bool Junior, Agreed Agreed, ImmutableArray<WheelId> MayNotHave, bool AsksHost);
