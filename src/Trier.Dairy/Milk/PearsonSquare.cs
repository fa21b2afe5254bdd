using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>Two streams mixed to one content of one component: the Pearson square.</summary>
/// <remarks>
/// m2 = m1 (c1 - T)/(T - c2). Source [GuelphCheese], read. By mass, for any component that mixes by mass. Not for a ratio such as
/// protein to fat (see <see cref="Standardising"/>), and not by volume unless the densities are equal.
/// </remarks>
public static class PearsonSquare
{
    /// <summary>How much of the second stream brings the first to the target.</summary>
    /// <param name="first">Mass of the first stream.</param>
    /// <param name="firstContent">Its content c1.</param>
    /// <param name="secondContent">Content c2 of the second stream.</param>
    /// <param name="target">The target T, strictly between c2 and c1, or equal to c1 (then nothing is added).</param>
    public static Outcome<Mass> SecondStream(Mass first, Share firstContent, Share secondContent, Share target)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkMass, first.Kilograms)
            .Check(MilkFields.StreamFat, firstContent.Percent)
            .Check(MilkFields.StreamFat, secondContent.Percent)
            .Check(MilkFields.TargetContent, target.Percent);
        var between = (target > secondContent && target <= firstContent) || (target < secondContent && target >= firstContent);
        if (!gate.Shut && !between)
        {
            gate.Refuse(
                ProblemKind.Contradiction,
                MilkFields.TargetContent,
                $"Target content is {MilkFields.TargetContent.Show(target.Percent)}; mixing {Field.Number(firstContent.Percent)} % with {Field.Number(secondContent.Percent)} % reaches only what lies between them.");
        }

        if (gate.Shut) return gate.Refusal<Mass>();
        var second = first * ((firstContent - target) / (target - secondContent));
        return gate.Answer(second, new Working(
            "Pearson square",
            "m2 = m1 (c1 - T) / (T - c2)",
            [
                new("First stream m1", first.Kilograms, "kg"),
                new("Its content c1", firstContent.Percent, "%"),
                new("Content of the second c2", secondContent.Percent, "%"),
                new("Target T", target.Percent, "%"),
            ],
            [new("Second stream m2", second.Kilograms, "kg")],
            Sources.GuelphCheese)
        {
            Domain = "By mass; one component at a time",
        });
    }
}
