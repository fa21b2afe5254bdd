using System.Collections.Immutable;
using Trier.Publishing.Charts;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>A verdict as a document: what every writer (page, paper) lays out in its own way, word for word the same.</summary>
/// <param name="Title">The trial's title.</param>
/// <param name="Question">What was asked, or null.</param>
/// <param name="Where">Who held it and when; empty where not known.</param>
/// <param name="Stamp">The round stamp, or null.</param>
/// <param name="Say">The first sentences.</param>
/// <param name="Passages">What follows, in order; the first two stand on page one.</param>
/// <param name="Foot">One line under every page.</param>
public sealed record Document(string Title, string? Question, string Where, Drawing? Stamp, ImmutableArray<string> Say, ImmutableArray<DocumentPassage> Passages, string Foot);

/// <summary>A passage with its word in the margin.</summary>
/// <param name="Word">The word.</param>
/// <param name="Note">A note under it, or null.</param>
/// <param name="Blocks">What it holds.</param>
/// <param name="NewPage">Whether it begins a page on paper.</param>
public sealed record DocumentPassage(string Word, string? Note, ImmutableArray<Block> Blocks, bool NewPage = false);

/// <summary>Something in a passage.</summary>
public abstract record Block;

/// <summary>A paragraph.</summary>
/// <param name="Text">Its words.</param>
/// <param name="Strong">In heavier type.</param>
public sealed record Paragraph(string Text, bool Strong = false) : Block;

/// <summary>Items under each other.</summary>
/// <param name="Items">The items.</param>
public sealed record Listing(ImmutableArray<string> Items) : Block;

/// <summary>Words and what is said of each.</summary>
/// <param name="Items">The words with their sentences.</param>
public sealed record Terms(ImmutableArray<(string Term, string Text)> Items) : Block;

/// <summary>A chart.</summary>
/// <param name="Chart">Which.</param>
public sealed record Figure(VerdictChart Chart) : Block;

/// <summary>A table.</summary>
/// <param name="Caption">What it is called.</param>
/// <param name="Heads">Heads of its columns; numbers stand to the right.</param>
/// <param name="Rows">Its rows, a cell a column.</param>
public sealed record Table(string Caption, ImmutableArray<Head> Heads, ImmutableArray<ImmutableArray<Cell>> Rows) : Block;

/// <summary>A column's head.</summary>
/// <param name="Text">Its words.</param>
/// <param name="Number">Whether the column holds numbers.</param>
public sealed record Head(string Text, bool Number = true);

/// <summary>A cell.</summary>
/// <param name="Text">Its words.</param>
/// <param name="Best">Whether it is the best of its column.</param>
/// <param name="Look">A wheel's mark before it, or null.</param>
public sealed record Cell(string Text, bool Best = false, WheelLook? Look = null);
