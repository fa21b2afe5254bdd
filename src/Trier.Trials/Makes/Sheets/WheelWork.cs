using System.Collections.Immutable;
using Trier.Dairy.Brine;
using Trier.Dairy.Composition;
using Trier.Dairy.Eyes;
using Trier.Dairy.Pressing;
using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Trials.Makes.Recipes;
using DairyWorking = Trier.Dairy.Workings.Working;
using Estimate = Trier.Dairy.Workings.Estimate;
using Sources = Trier.Dairy.Workings.Sources;

namespace Trier.Trials.Makes.Sheets;

/// <summary>The wheel to expect: yield from the milk, mass and size from the yield, composition and gas from both.</summary>
internal sealed class WheelWork
{
    // Home vats reach 90 to 97 % of the formula (practice).
    private const double HomeLow = 0.90;
    private const double HomeLikely = 0.94;
    private const double HomeHigh = 0.97;
    private const double AshAndCarbohydrate = 0.04;

    private readonly SheetWork _work;
    private readonly ImmutableArray<Figure>.Builder _figures = ImmutableArray.CreateBuilder<Figure>();
    private ImmutableArray<NamedLimits> _limits = [];
    private GasBudget? _eyes;
    private Trier.Dairy.Workings.Estimate<Mass>? _mass;
    private DairyWorking? _massWorking;

    public WheelWork(SheetWork work)
    {
        _work = work;
        var diameter = work.Vat.Draft.MouldCentimetres ?? work.Recipe.Steps.Select(step => step[Target.DiameterCentimetres]?.Value).FirstOrDefault(value => value is not null);
        if (diameter is { } width && work.Take(MouldFace.Round(Length.FromCentimetres(width))) is { } face) (Diameter, Face) = (width, face.Value);
        Moisture = Share.FromPercent(work.Recipe[Target.MoisturePercent]!.Value);
        Yield();
        Composition();
        work.Asked.AddRange(work.Notes());
    }

    public double? Diameter { get; }

    public MouldFace? Face { get; }

    public Share Moisture { get; }

    public Mass? All => _mass?.Likely;

    public Mass? Each => _mass?.Likely * (1.0 / _work.Vat.Draft.Wheels);

    public WheelSize? Size { get; private set; }

    public ExpectedWheel Expected() => new(_figures.ToImmutable(), _limits, _eyes);

    public ImmutableArray<Figure> Hooped() =>
        _mass is { } mass && _massWorking is { } working
            ? [new(_work.Vat.Draft.Wheels == 1 ? "Pressed wheel, about" : $"Each of {Write.Number(_work.Vat.Draft.Wheels)} wheels, about", Measure.Mass, mass.Likely.Kilograms / _work.Vat.Draft.Wheels, working, mass.Low.Kilograms / _work.Vat.Draft.Wheels, mass.High.Kilograms / _work.Vat.Draft.Wheels)]
            : [];

    private void Yield()
    {
        var factors = YieldFactors.Of(_work.Recipe.Style);
        if (factors is null) _work.Note("No yield factors of this style are known; those of washed-curd cheese stand in.");
        if (_work.Take(PredictedYield.General(_work.Vat.Milk.Fat, _work.Vat.Milk.Casein, Moisture, factors ?? YieldFactors.Of(Style.Gouda)!)) is not { } yield) return;
        _figures.Add(new("Yield, of the weight of the milk", Measure.Percent, yield.Value.Likely.KilogramsPer100Kilograms, yield.Working, yield.Value.Low.KilogramsPer100Kilograms, yield.Value.High.KilogramsPer100Kilograms));
        if (_work.Recipe.Style == Style.Cheddar && _work.Take(PredictedYield.VanSlyke(_work.Vat.Milk.Fat, _work.Vat.Milk.Casein, Moisture)) is { } cheddar)
            _figures.Add(new("the same by Van Slyke and Price", Measure.Percent, cheddar.Value.KilogramsPer100Kilograms, cheddar.Working));
        Mass Of(CheeseYield value, double home) => ActualYield.Cheese(value, _work.MilkMass) * home;
        var mass = Estimate.Between(Of(yield.Value.Low, HomeLow), Of(yield.Value.Likely, HomeLikely), Of(yield.Value.High, HomeHigh));
        _mass = mass;
        _massWorking = SheetWork.Sum(
            "Cheese to expect",
            "m = Y milk/100 x home share",
            [new("Yield Y", yield.Value.Likely.KilogramsPer100Kilograms, "kg/100 kg"), new("Milk", _work.MilkMass.Kilograms, "kg"), new("Home share", HomeLikely), new("Wheels", _work.Vat.Draft.Wheels)],
            [new("Cheese", mass.Likely.Kilograms, "kg"), new("from", mass.Low.Kilograms, "kg"), new("to", mass.High.Kilograms, "kg")],
            Sources.Practice) with
        { LikelyError = "Home vats reach 90 to 97 % of the formula (practice); 1 point of moisture moves it by 1.6 %.", Parts = [yield.Working] };
        _figures.Add(new(_work.Vat.Draft.Wheels == 1 ? "Wheel before brine" : "All wheels before brine", Measure.Mass, mass.Likely.Kilograms, _massWorking, mass.Low.Kilograms, mass.High.Kilograms));
    }

    private void Composition()
    {
        var moisture = _work.Recipe[Target.MoisturePercent]!;
        _figures.Add(new("Moisture aimed at", Measure.Percent, moisture.Value, SheetWork.Sum("Moisture aimed at", "the recipe's aim", [new("Moisture", moisture.Value, "%")], [new("Moisture", moisture.Value, "%")], Sources.Practice) with { LikelyError = "An aim, not a measurement; home makes scatter by 1 to 3 points (practice)." }, moisture.Value - moisture.Slack, moisture.Value + moisture.Slack));
        if (_work.Vat.Milk.Fat.Fraction <= 0) return;
        var factors = YieldFactors.Of(_work.Recipe.Style) ?? YieldFactors.Of(Style.Gouda)!;
        if (_work.Take(PredictedYield.FatInDryMatter(_work.Vat.Milk.CaseinToFat, factors)) is not { } fdm) return;
        _figures.Add(new("Fat in dry matter", Measure.Percent, fdm.Value.Percent, fdm.Working, fdm.Value.Percent - 1.5, fdm.Value.Percent + 1.5));
        var fat = Share.FromFraction(fdm.Value.Fraction * (1 - Moisture.Fraction));
        var salt = Share.FromPercent(_work.Recipe[Target.SaltPercent]?.Value ?? 0);
        if (_work.Take(CheeseComposition.Create(Moisture, fat, salt)) is not { } cheese) return;
        _figures.Add(new("Moisture in the fat-free part", Measure.Percent, cheese.Value.MoistureInFatFree.Percent, cheese.Working));
        if (salt.Fraction > 0) _figures.Add(new("Salt in moisture, g in 100 g", Measure.Plain, cheese.Value.SaltInMoisture.GramsPer100Grams, cheese.Working));
        Limits(fdm.Value, cheese.Value, moisture);
        SizeAndEyes(fat, salt);
    }

    private void Limits(Share fdm, CheeseComposition cheese, Aim moisture)
    {
        var known = new KnownCheese(
            Estimate.Between(Share.FromPercent(moisture.Value - moisture.Slack), Share.FromPercent(moisture.Value), Share.FromPercent(moisture.Value + moisture.Slack)),
            Estimate.Between(Share.FromPercent(fdm.Percent - 1.5), fdm, Share.FromPercent(fdm.Percent + 1.5)),
            Estimate.Exactly(cheese.MoistureInFatFree),
            FromRawMilk: _work.Vat.Draft.Treatment != HeatTreatment.Pasteurised);
        string[] names = _work.Recipe.Style switch
        {
            Style.Alpine => ["Gruyere"],
            Style.Swiss => ["Swiss / Emmentaler"],
            Style.Cheddar => ["Cheddar"],
            Style.Gouda => ["Gouda"],
            Style.Parmesan => ["Parmesan / Reggiano"],
            Style.Romano => ["Romano"],
            _ => [],
        };
        _limits = [.. StandardOfIdentity.All.Where(standard => names.Contains(standard.Cheese)).Select(standard => new NamedLimits(standard, [.. standard.Judge(known)]))];
    }

    private void SizeAndEyes(Share fat, Share salt)
    {
        if (Face is not { } face || Diameter is not { } diameter || _mass is not { } mass) return;
        var solids = Share.FromFraction(AshAndCarbohydrate) + salt;
        var parts = new Components(Moisture, Share.FromFraction(1 - Moisture.Fraction - fat.Fraction - solids.Fraction), fat, Share.FromFraction(0), solids);
        if (_work.Take(SolidDensity.Of(parts, Temperature.FromCelsius(12))) is not { } density) return;
        double Height(Mass all, Density at) => 100 * all.Kilograms / _work.Vat.Draft.Wheels / at.KilogramsPerCubicMetre / face.Area.SquareMetres;
        var (likely, low, high) = (Height(mass.Likely, density.Value.Likely), Height(mass.Low, density.Value.High), Height(mass.High, density.Value.Low));
        var working = SheetWork.Sum("Height of the wheel", "H = m / (rho A)", [new("Cheese, each", mass.Likely.Kilograms / _work.Vat.Draft.Wheels, "kg"), new("Density rho", density.Value.Likely.KilogramsPerCubicMetre, "kg/m3"), new("Face A", face.Area.SquareCentimetres, "cm2")], [new("Height", likely, "cm")]) with { Parts = [density.Working], LikelyError = "As good as the mass; a loose paste stands higher." };
        _figures.Add(new("Height in this mould", Measure.Length, likely, working, low, high));
        if (_work.Take(WheelSize.Create(Length.FromCentimetres(diameter), Length.FromCentimetres(likely))) is not { } size) return;
        Size = size.Value;
        if (!_work.Recipe.Adds(AdditionKind.PropionicCulture) || _work.Recipe[Target.WarmRoomDays] is not { } days || _work.Recipe[Target.WarmRoomCelsius] is not { } warm) return;
        var budget = _work.Take(GasBudget.For(
            size.Value,
            GasBudget.UsualLacticAcid,
            GasBudget.UsuallyTurned,
            TimeSpan.FromDays(days.Value),
            Temperature.FromCelsius(warm.Value),
            Estimate.Exactly(1.0),
            density.Value.Likely));
        if (budget is null) return;
        _eyes = budget.Value;
        _figures.Add(new("Room for eyes", Measure.Percent, 100 * budget.Value.Void.Likely, budget.Working, 100 * budget.Value.Void.Low, 100 * budget.Value.Void.High));
    }
}
