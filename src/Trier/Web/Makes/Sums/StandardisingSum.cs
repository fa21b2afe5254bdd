using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Trials.Makes.Sheets;

namespace Trier.Web.Makes.Sums;

/// <summary>Skim or cream to a fat content by square and by balance, or to a protein-to-fat ratio by balance alone.</summary>
internal sealed class StandardisingSum : BenchSum
{
    public override string Key => "standardising";

    public override string Name => "Standardising the milk";

    public override string Answers => "how much skim or cream, by Pearson’s square and by mass balance";

    public override ImmutableArray<SumGroup> Groups =>
    [
        new("",
        [
            SumField.Number("milk", "Milk, by weight", MilkFields.MilkMass, hint: "a litre is about 1.03 kg"),
            SumField.Number("fat", "Its fat", MilkFields.MilkFat),
            SumField.Number("protein", "Its protein", MilkFields.MilkProtein, 3.3),
            SumField.Number("stream", "Fat of the skim or cream", MilkFields.StreamFat, 0.05, "cream is often 35"),
            SumField.Number("to-fat", "Fat wanted", MilkFields.TargetContent, mayBeEmpty: true, hint: "this"),
            SumField.Number("to-ratio", "Protein to fat wanted", MilkFields.ProteinToFat, mayBeEmpty: true, hint: "or this"),
        ]),
    ];

    public override void Work(SumWork work)
    {
        if (work.Has("to-fat") == work.Has("to-ratio"))
        {
            work.Refuse("to-fat", "Give either the fat wanted or the protein to fat wanted, one of the two.");
            return;
        }

        if (work.Take(MilkComposition.Create(Share.FromPercent(work["fat"]), Share.FromPercent(work["protein"])), "fat") is not { Value: var milk }) return;
        var (mass, stream) = (Mass.FromKilograms(work["milk"]), Share.FromPercent(work["stream"]));
        var cream = stream.Percent >= MilkFields.CreamFat.Lowest;
        var named = cream ? "cream" : "skim";
        var plan = work.Has("to-fat") ? Standardising.ToFat(milk, mass, Share.FromPercent(work["to-fat"]), stream)
            : cream ? Standardising.WithCream(milk, mass, work["to-ratio"], stream)
            : Standardising.WithSkim(milk, mass, work["to-ratio"], stream);
        if (work.Take(plan, "stream") is not { Value: var done } balance) return;
        if (work.Has("to-fat")) Square(work, milk, mass, stream, named);
        else work.Notes.Add("Pearson’s square is not for a ratio: skim and cream bring protein with them. The balance counts it.");
        work.Say(new($"By mass balance, {(done.Step is StandardisingStep.AddSkim or StandardisingStep.AddCream ? "add" : "take off")} {named}", Measure.Mass, done.Amount.Kilograms, balance.Working));
        work.Notes.Add($"Afterwards {work.Units.Write(Measure.Mass, done.Result.Mass.Kilograms)} of milk with {work.Units.Write(Measure.Percent, done.Result.Fat.Percent)} fat and {work.Units.Write(Measure.Percent, done.Result.Protein.Percent)} protein, protein to fat {work.Units.Number(done.ProteinToFat, "0.00")}.");
    }

    private static void Square(SumWork work, MilkComposition milk, Mass mass, Share stream, string named)
    {
        if (PearsonSquare.SecondStream(mass, milk.Fat, stream, Share.FromPercent(work["to-fat"])).TryAnswer(out var square, out _))
            work.Say(new($"By Pearson’s square, add {named}", Measure.Mass, square.Value.Kilograms, square.Working));
        else work.Notes.Add("Pearson’s square only adds, and what is wanted does not lie between the two: the balance takes off instead.");
    }
}
