using System.Collections.Immutable;
using Trier.Dairy.Safety;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Sheets;

/// <summary>What to mind, each beside the thing it is about. It defers to local food law and, for health, to a professional, and calls no milk and no cheese safe.</summary>
internal static class Cautions
{
    public static ImmutableArray<SheetCaution> For(Recipe recipe, Vat vat)
    {
        var list = ImmutableArray.CreateBuilder<SheetCaution>();
        list.Add(new("milk", vat.Draft.Treatment switch
        {
            HeatTreatment.Raw => "Raw milk can carry germs that make people ill, and ageing does not reliably rid a cheese of them. Local food law says whether such a cheese may be made and served; tell guests before they taste.",
            HeatTreatment.Thermised => "Milk heated less than a legal pair counts as raw here: it can carry germs that make people ill. Local food law decides; tell guests before they taste.",
            HeatTreatment.Pasteurised => Pasteurised(vat),
            _ => "How the milk was heated is not said, so it is taken as raw: raw milk can carry germs that make people ill. Local food law decides; write the treatment down and tell guests.",
        }));
        if (vat.Draft.Treatment != HeatTreatment.Pasteurised)
            list.Add(new("guests", "Cheese of unheated milk is usually kept from pregnant women, children under five, people over 65 and anyone with weak immunity. For health, ask a professional."));
        list.Add(new("allergens", recipe.Adds(AdditionKind.Lysozyme)
            ? "Allergens: milk, and egg, since lysozyme is made from egg white. Tell guests of both before they taste. Lysozyme also holds back thermophilic lactobacilli: a wheel with it is another recipe."
            : "Allergen: milk. Tell guests of anything else that touches the wheel: egg, mustard, nuts, wheat, sulphite, beer or wine."));
        foreach (var other in recipe.Steps.Where(step => step.Addition is { Kind: AdditionKind.Other or AdditionKind.Colour }).Select(step => step.Addition!.Called).Distinct())
            list.Add(new("allergens", $"Look at the label of {other} for allergens and write them down with the wheel."));
        if (recipe.Steps.Any(step => step.Kind == StepKind.Renneting))
            list.Add(new("guests", "The kind of rennet matters to vegetarian, halal and kosher guests: write it down."));
        list.Add(new("acidity", "A pH still above 5.8 at 8 hours or above 5.5 at 24 hours is a failed acidification (common practice, no source): hold the wheels back and do not serve them. Poison formed in slow, warm curd outlives ageing."));
        if (recipe.Steps.Any(step => step.Kind == StepKind.Brine))
            list.Add(new("brine", "Brine does not clean itself: germs have lived in it for months. Keep a log of its age and what went through, and boil it after raw-milk or faulty wheels before others go in."));
        return list.ToImmutable();
    }

    private static string Pasteurised(Vat vat)
    {
        var pot = LegalPair.All.First(pair => pair.Vessel == HeatVessel.Vat);
        var rich = vat.Milk.Fat.Percent >= 10 || vat.Milk.TotalSolids.Percent >= 18;
        var celsius = pot.Temperature.Celsius + (rich ? 3 : 0);
        var minutes = pot.Hold.TotalMinutes;
        return $"If you heat it yourself: the law lists {Write.Number(celsius)} °C held for {Write.Number(minutes)} min without a break in a vat{(rich ? ", 3 °C more than usual because this milk is rich" : "")}, every particle, lid on, the air above hotter still. Nothing between listed pairs is counted as pasteurised. The law where you make the cheese decides.";
    }
}
