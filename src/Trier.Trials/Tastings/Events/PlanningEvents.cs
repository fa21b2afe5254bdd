using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;

namespace Trier.Trials.Tastings.Events;

/// <summary>The trial was begun, or its plan written anew while still a draft.</summary>
/// <param name="At">When.</param>
/// <param name="Plan">The plan.</param>
public sealed record TrialPlanned(DateTimeOffset At, TrialPlan Plan) : DayEvent(At);

/// <summary>A wheel was entered.</summary>
/// <param name="At">When.</param>
/// <param name="Entry">The entry.</param>
public sealed record EntryAdded(DateTimeOffset At, Entry Entry) : DayEvent(At);

/// <summary>A wheel was taken off a draft again.</summary>
/// <param name="At">When.</param>
/// <param name="Wheel">Which wheel.</param>
public sealed record EntryRemoved(DateTimeOffset At, WheelId Wheel) : DayEvent(At);

/// <summary>A wheel's name or facts were corrected. The old ones stay in the earlier events.</summary>
/// <param name="At">When.</param>
/// <param name="Wheel">Which wheel.</param>
/// <param name="Name">The name from now on.</param>
/// <param name="Facts">The facts from now on.</param>
public sealed record EntryCorrected(DateTimeOffset At, WheelId Wheel, string Name, WheelFacts Facts) : DayEvent(At);

/// <summary>Which wheel is served twice, or that none is.</summary>
/// <param name="At">When.</param>
/// <param name="Wheel">The wheel, or null for none.</param>
public sealed record RepeatChosen(DateTimeOffset At, WheelId? Wheel) : DayEvent(At);

/// <summary>A wheel goes into the second flight, after the others and not placed among them, or back into the first.</summary>
/// <param name="At">When.</param>
/// <param name="Wheel">Which wheel.</param>
/// <param name="Second">Whether it is the second flight.</param>
public sealed record FlightChosen(DateTimeOffset At, WheelId Wheel, bool Second) : DayEvent(At);

/// <summary>A taster sits with a group that tastes together, or no longer does.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
/// <param name="Group">What the group is called, or null for none.</param>
public sealed record GroupJoined(DateTimeOffset At, TasterId Taster, string? Group) : DayEvent(At);

/// <summary>A taster was put on the list.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Their id.</param>
/// <param name="Number">Their number.</param>
/// <param name="Name">Their name.</param>
/// <param name="KnowsTheKey">Whether they know which code is which wheel.</param>
/// <param name="Junior">Under 12.</param>
/// <param name="Sitting">Which sitting, from 1.</param>
public sealed record TasterAdded(DateTimeOffset At, TasterId Taster, int Number, string Name, bool KnowsTheKey, bool Junior, int Sitting) : DayEvent(At);

/// <summary>A taster was taken off the list. What they sent stays.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
public sealed record TasterLetGo(DateTimeOffset At, TasterId Taster) : DayEvent(At);

/// <summary>A taster's name was corrected. The old one stays in the earlier events.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
/// <param name="Name">The name from now on.</param>
/// <param name="Junior">Under 12.</param>
public sealed record TasterCorrected(DateTimeOffset At, TasterId Taster, string Name, bool Junior) : DayEvent(At);

/// <summary>Which wheels stay off a taster's plate. Carries no reason.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Whose plate.</param>
/// <param name="Wheels">All wheels left off from now on.</param>
public sealed record SampleLeftOff(DateTimeOffset At, TasterId Taster, ImmutableArray<WheelId> Wheels) : DayEvent(At);

/// <summary>What a taster said, before tasting, that they usually like.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
/// <param name="Taste">What.</param>
public sealed record TasteDeclared(DateTimeOffset At, TasterId Taster, DeclaredTaste Taste) : DayEvent(At);
