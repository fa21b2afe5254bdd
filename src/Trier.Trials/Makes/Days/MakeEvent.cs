using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>Something that happened to a make. Appended, never changed; what the make is now is read from all of them.</summary>
/// <param name="At">When it was written down.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "event")]
[JsonDerivedType(typeof(MakeBegun), "begun")]
[JsonDerivedType(typeof(StepStarted), "step started")]
[JsonDerivedType(typeof(StepDone), "step done")]
[JsonDerivedType(typeof(StepCorrected), "step corrected")]
[JsonDerivedType(typeof(DeedUndone), "deed undone")]
[JsonDerivedType(typeof(VatSplit), "vat split")]
[JsonDerivedType(typeof(WheelsBorn), "wheels born")]
[JsonDerivedType(typeof(WheelWeighed), "wheel weighed")]
[JsonDerivedType(typeof(MeterRead), "meter read")]
public abstract record MakeEvent(DateTimeOffset At);

/// <summary>A make was begun by one version of a recipe. The recipe is kept whole: a later version changes nothing here.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Name">What people call it.</param>
/// <param name="RecipeId">Which recipe.</param>
/// <param name="Version">Which version.</param>
/// <param name="Recipe">The recipe as it was.</param>
/// <param name="Vat">The day's milk and means.</param>
/// <param name="Begins">When the first step begins.</param>
/// <param name="Invented">Whether this is an invented example; every page then says so.</param>
public sealed record MakeBegun(DateTimeOffset At, string Name, RecipeId RecipeId, int Version, RecipeDraft Recipe, VatDraft Vat, DateTimeOffset Begins, bool Invented = false) : MakeEvent(At);

/// <summary>The rennet went in: the clock of a renneting step runs from here.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Step">The step's number.</param>
/// <param name="When">When it happened.</param>
/// <param name="Part">The part of a split vat, or null for the whole.</param>
/// <param name="Used">The lot of rennet, or null where none was named.</param>
public sealed record StepStarted(DateTimeOffset At, int Step, DateTimeOffset When, int? Part = null, ThingId? Used = null) : MakeEvent(At);

/// <summary>A step was done.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Step">The step's number.</param>
/// <param name="Mark">When and how.</param>
/// <param name="Part">The part of a split vat, or null for the whole.</param>
public sealed record StepDone(DateTimeOffset At, int Step, StepMark Mark, int? Part = null) : MakeEvent(At);

/// <summary>What was written of a step was a slip; the old value stays in the earlier event.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Step">The step's number.</param>
/// <param name="Mark">What stands from now on.</param>
/// <param name="Why">Why, in a few words; may be empty.</param>
/// <param name="Part">The part of a split vat, or null for the whole.</param>
/// <param name="Started">When the rennet went in, where that was the slip; else null.</param>
public sealed record StepCorrected(DateTimeOffset At, int Step, StepMark Mark, string Why, int? Part = null, DateTimeOffset? Started = null) : MakeEvent(At);

/// <summary>The last touch was taken back at once.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Sequence">Which event.</param>
public sealed record DeedUndone(DateTimeOffset At, int Sequence) : MakeEvent(At);

/// <summary>The vat was split: from a step on each part goes its own way.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="From">The first step done part by part.</param>
/// <param name="Parts">The parts; their numbers are their places here, from 1.</param>
public sealed record VatSplit(DateTimeOffset At, int From, ImmutableArray<VatPart> Parts) : MakeEvent(At);

/// <summary>The vat's wheels got their numbers.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Wheels">The wheels.</param>
public sealed record WheelsBorn(DateTimeOffset At, ImmutableArray<BornWheel> Wheels) : MakeEvent(At);

/// <summary>The weight written of a wheel was a slip; the old value stays in the earlier event.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Number">The wheel's number.</param>
/// <param name="Kilograms">What stands from now on, or null where it was not weighed.</param>
/// <param name="Why">Why, in a few words; may be empty.</param>
public sealed record WheelWeighed(DateTimeOffset At, int Number, double? Kilograms, string Why) : MakeEvent(At);

/// <summary>A meter's file was read in.</summary>
/// <param name="At">When it was written down.</param>
/// <param name="Curve">The readings kept.</param>
public sealed record MeterRead(DateTimeOffset At, MeterCurve Curve) : MakeEvent(At);

/// <summary>A wheel as it came out of the mould.</summary>
/// <param name="Wheel">Names it for good.</param>
/// <param name="Number">Its number in this house, printed on its label.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kilograms">Its mass, or null where it was not weighed.</param>
/// <param name="Differs">What was done otherwise with this wheel than with the others of the vat; empty for nothing.</param>
/// <param name="Part">The part of a split vat it came from, or null.</param>
public sealed record BornWheel(WheelId Wheel, int Number, string Name, double? Kilograms, string Differs, int? Part = null);

/// <summary>An event with its place in the row.</summary>
/// <param name="Sequence">1, 2, 3 ... within the make.</param>
/// <param name="Event">What happened.</param>
public sealed record LoggedMake(int Sequence, MakeEvent Event);
