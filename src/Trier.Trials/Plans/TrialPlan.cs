namespace Trier.Trials.Plans;

/// <summary>What a trial asks and how it will be answered: fixed when the key is sealed.</summary>
/// <param name="Title">Short title.</param>
/// <param name="Question">The one question.</param>
/// <param name="Host">Who holds the tasting: a club, a kitchen.</param>
/// <param name="Day">Day of the (first) sitting, or null while open.</param>
/// <param name="Rule">The rule that names the leader.</param>
/// <param name="JuniorsCount">Whether tasters under 12 count in the headline.</param>
/// <param name="Invented">Whether this is an invented example; every rendering then says so.</param>
public sealed record TrialPlan(string Title, string Question, string Host, DateOnly? Day, CountingRule Rule, bool JuniorsCount, bool Invented)
{
    /// <summary>What the ballot asks besides places; null in plans written before this could be chosen, where likings and remarks are asked.</summary>
    public BallotPlan? Ballot { get; init; }

    /// <summary>How the samples reach the tasters, or null for <see cref="ServingRules.Usual"/>.</summary>
    public ServingRules? Serving { get; init; }

    /// <summary>What the planner was told and worked from; null where nobody planned further than this.</summary>
    public PlanAims? Aims { get; init; }
}
