using System.Collections.Immutable;
using Trier.Dairy.Acidity;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Days;

/// <summary>A reading that can be but hardly is: it is asked about once, and kept where the maker says it again.</summary>
/// <param name="Target">What is read.</param>
/// <param name="From">Low end of what is believed at once.</param>
/// <param name="To">High end of what is believed at once.</param>
/// <param name="Question">The question, with <see cref="Value"/> where the reading stands.</param>
public sealed record Doubt(Target Target, double From, double To, string Question)
{
    /// <summary>Stands in a question for the reading.</summary>
    public const string Value = "{v}";

    private const string Again = "Touch again to keep it.";

    // So far below the aim, milk is near the pH at which it curdles in warmth without rennet (common practice, no source).
    private const double FarBelow = 0.5;

    /// <summary>Whether a reading is doubted.</summary>
    /// <param name="reading">The reading, in the target's unit.</param>
    public bool Holds(double reading) => reading < From || reading > To;

    /// <summary>The doubts a step's readings are held against, the gravest first.</summary>
    /// <param name="step">The step.</param>
    /// <param name="target">What is read.</param>
    public static ImmutableArray<Doubt> Of(Step step, Target target)
    {
        if (target == Target.Ph)
        {
            var usual = AcidityFields.PhOfMilkAndCurd;
            var (from, to) = (Write.Number(usual.UsuallyFrom), Write.Number(usual.UsuallyTo));
            var outside = new Doubt(target, usual.UsuallyFrom, usual.UsuallyTo, $"pH {Value} is outside what milk and curd show, about {from} to {to}: is the meter right? {Again}");
            return TooSourFrom(step) is { } sour
                ? [outside, new(target, sour, usual.UsuallyTo, $"pH {Value} is far below the aim of {Write.Number(step[target]!.Value)}: such milk may already be curdling. Check the meter, and add no rennet before it is checked. {Again}")]
                : [outside];
        }

        if (target == Target.Celsius && StepShape.Of(step.Kind).FirstOrDefault(wanted => wanted.Target == target) is { } shape)
        {
            // What the recipe itself aims at is no surprise.
            var aim = step[target]?.Value ?? shape.From;
            var (low, high) = (Math.Min(shape.From, aim), Math.Max(shape.To, aim));
            return [new(target, low, high, $"Temperature is {Value}, where {Write.Number(low)} to {Write.Number(high)} °C is usual at this step: is the thermometer right? {Again}")];
        }

        return [];
    }

    /// <summary>The pH below which milk before its rennet may already be curdling; null where the step comes later or aims at none.</summary>
    /// <param name="step">The step.</param>
    public static double? TooSourFrom(Step step) => step.Kind is StepKind.Ripen or StepKind.Renneting && step[Target.Ph] is { } aim ? aim.Value - FarBelow : null;
}
