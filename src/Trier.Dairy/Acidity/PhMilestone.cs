using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Acidity;

/// <summary>The schedules the pH table knows.</summary>
public enum PhSchedule
{
    /// <summary>Swiss type.</summary>
    Swiss,

    /// <summary>Gouda type.</summary>
    Gouda,

    /// <summary>Cheddar of MNFS 53 %.</summary>
    CheddarLowMoisture,

    /// <summary>Cheddar of MNFS 57 %.</summary>
    CheddarHighMoisture,
}

/// <summary>A step of the vat day at which pH is read.</summary>
public enum PhStep
{
    /// <summary>Starter goes in.</summary>
    AddStarter,

    /// <summary>Rennet goes in.</summary>
    AddRennet,

    /// <summary>Cutting.</summary>
    Cut,

    /// <summary>Draining or dipping.</summary>
    DrainOrDip,

    /// <summary>Milling.</summary>
    Mill,

    /// <summary>Pressing begins.</summary>
    Press,

    /// <summary>Out of the mould.</summary>
    Demould,

    /// <summary>The lowest pH, about a week on.</summary>
    Minimum,
}

/// <summary>A pH to expect at a step. Source [GuelphCheese] table 16.1, read; card: Tables/ph_milestones.md.</summary>
/// <param name="Schedule">The schedule.</param>
/// <param name="Step">The step.</param>
/// <param name="After">Time from the start.</param>
/// <param name="Ph">The pH.</param>
public sealed record PhMilestone(PhSchedule Schedule, PhStep Step, TimeSpan After, Ph Ph)
{
    /// <summary>The table.</summary>
    public static readonly Listed<PhMilestone> All = EmbeddedTable.Read("ph_milestones", row => new PhMilestone(
        row.Word<PhSchedule>("style"), row.Word<PhStep>("step"), TimeSpan.FromMinutes(row.Number("minutes")), Ph.FromValue(row.Number("ph"))));

    /// <summary>One milestone, or null where the table has none.</summary>
    /// <param name="schedule">The schedule.</param>
    /// <param name="step">The step.</param>
    public static PhMilestone? Of(PhSchedule schedule, PhStep step) => All.FirstOrDefault(row => row.Schedule == schedule && row.Step == step);
}

/// <summary>A pH reading at a time from the start.</summary>
/// <param name="After">Time from any fixed start.</param>
/// <param name="Ph">The pH read.</param>
public sealed record PhReading(TimeSpan After, Ph Ph);

/// <summary>The rate between two readings: r = (pH1 - pH2)/(t2 - t1). Derived. pH is not linear near the buffer maximum (about 5.0): never extrapolate below 5.3.</summary>
public static class PhRates
{
    /// <summary>The rate; positive when pH falls.</summary>
    /// <param name="first">The earlier reading.</param>
    /// <param name="second">The later reading.</param>
    public static Outcome<PhRate> Between(PhReading first, PhReading second)
    {
        var minutes = (second.After - first.After).TotalMinutes;
        var gate = new Gate()
            .Check(AcidityFields.Ph, first.Ph.Value)
            .Check(AcidityFields.Ph, second.Ph.Value)
            .Check(AcidityFields.Interval, minutes);
        if (gate.Shut) return gate.Refusal<PhRate>();
        var rate = PhRate.FromUnitsPerHour((first.Ph.Value - second.Ph.Value) / minutes * 60);
        return gate.Answer(rate, new Working(
            "Rate of acidification",
            "r = (pH1 - pH2) / (t2 - t1)",
            [new("pH1", first.Ph.Value), new("pH2", second.Ph.Value), new("Time between", minutes, "min")],
            [new("Rate", rate.UnitsPerHour, "pH/h")],
            Sources.Arithmetic)
        {
            LikelyError = "Two readings good to 0.05 give a rate good to 0.07 over the hours between them.",
        });
    }
}
