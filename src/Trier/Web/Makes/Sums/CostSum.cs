using System.Collections.Immutable;
using Trier.Dairy.Composition;
using Trier.Dairy.Quantities;

namespace Trier.Web.Makes.Sums;

/// <summary>What a kilogram of the cheese cost.</summary>
internal sealed class CostSum : BenchSum
{
    private static readonly (string Key, string Label)[] Bought = [("milk", "Milk"), ("cultures", "Cultures and rennet"), ("salt", "Salt and other additions"), ("energy", "Heat and cold"), ("other", "Wax, bandage, anything else")];

    public override string Key => "cost";

    public override string Name => "What it cost";

    public override string Answers => "the cost of a kilogram or a pound, in the money you type";

    public override ImmutableArray<SumGroup> Groups =>
    [
        new("",
        [
            .. Bought.Select(bought => SumField.Number(bought.Key, bought.Label, CompositionFields.Cost, hint: bought.Key == "milk" ? "" : null, mayBeEmpty: true)),
            SumField.Number("cheese", "Cheese it gave", CompositionFields.CheeseMass),
        ]),
    ];

    public override void Work(SumWork work)
    {
        var cheese = Mass.FromKilograms(work["cheese"]);
        if (work.Take(CostPerKilogram.Of([.. Bought.Where(bought => work.Has(bought.Key)).Select(bought => new CostLine(bought.Label, (decimal)work[bought.Key]))], cheese), "milk") is not { Value: var cost } answer) return;
        var each = (double)cost * (work.Units.Us ? Mass.FromPounds(1).Kilograms : 1);
        work.Say(work.Units.Us ? "A pound cost" : "A kilogram cost", work.Units.Number(each, "0.00"), answer.Working);
        work.Notes.Add("Your own time is not in it, nor what the wheel loses as it ages: divide again by what you cut.");
    }
}
