using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Publishing.Recipes;

/// <summary>A recipe read from a file, not yet checked against the ranges.</summary>
/// <param name="Draft">What the file holds.</param>
/// <param name="Notes">What was guessed or left out; empty for the program's own format.</param>
public sealed record RecipeImport(RecipeDraft Draft, ImmutableArray<Problem> Notes);
