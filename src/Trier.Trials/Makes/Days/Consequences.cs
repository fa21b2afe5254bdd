using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Days;

/// <summary>What a deviation may lead to. Common practice and the faults known for such causes; a hint, never a finding.</summary>
internal static class Consequences
{
    // Common practice, no source.
    private const double TooWarm = 38;

    public static string OfCut(bool late) => late
        ? "A late cut is a firmer gel: curd gives up whey less readily, and the wheel may come out moister."
        : "An early cut is a softer gel: fines and fat go with the whey, and the wheel may come out drier and smaller.";

    public static string Of(StepKind kind, Target target, bool above)
    {
        if (target == Target.Ph) return Acidity(kind, above);
        if (target == Target.FlocMinutes)
            return above
                ? "Cold milk, weak rennet or milk not acid enough can do that; more rennet next time brings it back."
                : "Warm or acid milk or strong rennet can do that; less rennet next time brings it back.";
        if (target == Target.Celsius) return Warmth(kind, above);
        if (target == Target.Minutes) return Time(kind, above);
        if (target == Target.Millimetres)
            return above ? "Larger curd keeps more whey: the wheel may come out moist and soft." : "Smaller curd loses more whey: the wheel may come out dry.";
        if (target == Target.Kilopascals)
            return above ? "Too much too soon closes the rind and traps whey." : "Too little leaves mechanical openings where mould can enter.";
        if (target == Target.BrinePercent)
            return above ? "Strong brine closes and cracks the rind and may salt less." : "Weak brine softens the rind and salts less; too little salt is a risk of its own.";
        if (target == Target.SaltPercentOfCurd || target == Target.Dose)
            return above ? "More than planned." : "Less than planned.";
        if (target == Target.HumidityPercent)
            return above ? "A rind that stays wet invites cat hair and slip." : "A rind that dries fast cracks, and mould and mites follow.";
        return "";
    }

    /// <summary>From a value on the sentence is another one: what is true a little off an aim is not true far off it.</summary>
    public static (double From, string Sentence)? Far(Step step, Aim aim, bool above)
    {
        if (aim.Target == Target.Celsius && above && step.Kind is StepKind.Ripen or StepKind.Heat or StepKind.Stir or StepKind.Cook)
            return (TooWarm, step.Kind == StepKind.Cook && aim.Value >= TooWarm ? Warmth(step.Kind, true) : $"{(step.Kind == StepKind.Cook ? Warmth(step.Kind, true) + " " : "")}From about 38 °C on a mesophilic culture slows, and hotter still it dies; a heat-loving one hurries.");
        if (aim.Target == Target.Ph && !above && Doubt.TooSourFrom(step) is { } sour)
            return (sour, "Milk this sour may already be curdling: check the meter, and add no rennet before it is checked.");
        return null;
    }

    private static string Acidity(StepKind kind, bool above) => (kind, above) switch
    {
        (StepKind.Brine or StepKind.Dry or StepKind.Press or StepKind.Salt, true) =>
            "Slow acid is how early gas and poison-forming germs get their chance: read again in two hours, and hold the wheel back if it is above 5.8 at 8 hours or 5.5 at 24 hours.",
        (StepKind.Brine or StepKind.Dry or StepKind.Press or StepKind.Salt, false) =>
            "Too acid a paste turns short, crumbly and sour, and below 5.0 it makes no eyes: into the brine soon.",
        (_, true) => "The culture is slow: give it time at this step rather than by the clock, and note it.",
        _ => "The culture is fast: go on sooner, or the paste may turn short and sour.",
    };

    private static string Warmth(StepKind kind, bool above) => (kind, above) switch
    {
        (StepKind.Cook, true) => "Hotter curd loses more whey and can case over: the wheel may come out dry and corky.",
        (StepKind.Cook, false) => "Cooler curd keeps more whey: the wheel may come out moist, soft and sour.",
        (StepKind.Renneting, true) => "Warmer milk sets faster.",
        (StepKind.Renneting, false) => "Cooler milk sets slower and softer.",
        (StepKind.Hoop, false) => "Cold curd does not knit: mechanical openings may stay.",
        (StepKind.Brine, true) => "Warm brine salts faster and lets the culture go on.",
        (StepKind.Brine, false) => "Cold brine salts slower: the wheel may stay short of salt.",
        (StepKind.Ripen or StepKind.Heat or StepKind.Stir, true) => "Warmer milk makes acid sooner: read the pH.",
        (StepKind.Ripen or StepKind.Heat or StepKind.Stir, false) => "Too cool a vat makes a slow culture.",
        _ => "",
    };

    private static string Time(StepKind kind, bool above) => (kind, above) switch
    {
        (StepKind.Ripen, true) => "A longer ripening starts more acid: rennet works faster and the paste may turn sour.",
        (StepKind.Ripen, false) => "A shorter ripening starts less acid: the milk sets slower.",
        (StepKind.Cook, true) => "A slower cook is gentler, but acid goes on meanwhile: read the pH.",
        (StepKind.Cook, false) => "Too fast a cook sets a skin on the grain and traps whey.",
        (StepKind.Stir or StepKind.Settle, true) => "Longer in the whey makes a drier, more acid curd.",
        (StepKind.Stir or StepKind.Settle, false) => "Shorter in the whey makes a moister curd.",
        (StepKind.Press, true) => "Longer in the press is mostly harmless while it is warm; acid goes on: read the pH.",
        (StepKind.Press, false) => "A short press may leave openings and whey.",
        (StepKind.Brine, true) => "Longer in brine is saltier and slows eyes: note it, and shorten the next one.",
        (StepKind.Brine, false) => "Too short in brine leaves too little salt, and salt guards against spoilage: salt it on top.",
        (StepKind.Drain or StepKind.Hoop or StepKind.Turn, true) => "Curd that cools and sours meanwhile knits less well.",
        _ => "",
    };
}
