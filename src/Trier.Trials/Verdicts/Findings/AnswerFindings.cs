using System.Collections.Immutable;
using Trier.Statistics.Ratings;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>Whether one wheel's salt, or another property asked in the same way, was just right, as counts over everyone who tasted blind.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="TooLittle">Those who found too little.</param>
/// <param name="JustRight">How many found it just right.</param>
/// <param name="LikingWhereRight">Their mean liking; null where none of them gave one.</param>
/// <param name="TooMuch">Those who found too much.</param>
public sealed record SaltFinding(string Id, SaltGroup TooLittle, int JustRight, double? LikingWhereRight, SaltGroup TooMuch)
{
    /// <summary>How many were asked and answered.</summary>
    public int Answers => TooLittle.Count + JustRight + TooMuch.Count;
}

/// <summary>Those who found the salt amiss one way.</summary>
/// <param name="Count">How many.</param>
/// <param name="Drop">How much less they liked the wheel than those who found it just right; null where either side gave no liking.</param>
public sealed record SaltGroup(int Count, MeanDrop? Drop);

/// <summary>What was written about one wheel, its fondest taster first.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Remarks">Remarks and words.</param>
public sealed record SaidFinding(string Id, ImmutableArray<Said> Remarks);

/// <summary>One taster on one wheel.</summary>
/// <param name="Taster">Who.</param>
/// <param name="Place">Where they placed it, shared places as the mean; null where they did not.</param>
/// <param name="Liking">Their liking, or null.</param>
/// <param name="Remark">The remark, or null.</param>
/// <param name="Words">Words ticked.</param>
public sealed record Said(string Taster, double? Place, int? Liking, string? Remark, ImmutableArray<string> Words);
