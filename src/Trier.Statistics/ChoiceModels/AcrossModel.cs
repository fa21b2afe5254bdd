using System.Collections.Immutable;

namespace Trier.Statistics.ChoiceModels;

/// <summary>How the parameters make worths. They lie in one row: recipes, then the slope of age, then the wheels' own deviations.</summary>
internal sealed class AcrossModel
{
    private const double AgeUnit = 30;

    private readonly int[] _recipe;
    private readonly int[] _wheel;
    private readonly double[] _age;

    public AcrossModel(ImmutableArray<Served> served, int recipes, int wheels)
    {
        (Recipes, Wheels) = (recipes, wheels);
        _recipe = [.. served.Select(item => item.Recipe)];
        _wheel = [.. served.Select(item => item.Wheel)];
        var mean = served.Select(item => item.AgeDays).OfType<double>().DefaultIfEmpty(0).Average();
        _age = [.. served.Select(item => ((item.AgeDays ?? mean) - mean) / AgeUnit)];
        AgesDiffer = _age.Any(age => Math.Abs(age - _age[0]) > 1e-9);
        RecipeOf = new int[wheels];
        for (var i = 0; i < _wheel.Length; i++) RecipeOf[_wheel[i]] = _recipe[i];
        MakesPerRecipe = [.. Enumerable.Range(0, recipes).Select(recipe => served.Where(item => item.Recipe == recipe).Select(item => (item.Make is null, item.Make ?? item.Wheel)).Distinct().Count())];
        WheelsPerRecipe = [.. Enumerable.Range(0, recipes).Select(recipe => RecipeOf.Count(of => of == recipe))];
    }

    public int Recipes { get; }

    public int Wheels { get; }

    public bool AgesDiffer { get; }

    /// <summary>Per wheel its recipe.</summary>
    public int[] RecipeOf { get; }

    public int[] WheelsPerRecipe { get; }

    public int[] MakesPerRecipe { get; }

    public int Parameters => Recipes + 1 + Wheels;

    public int Slope => Recipes;

    public int FirstWheel => Recipes + 1;

    public int Items => _recipe.Length;

    public void Worths(ReadOnlySpan<double> parameters, Span<double> worths)
    {
        for (var i = 0; i < worths.Length; i++) worths[i] = parameters[_recipe[i]] + (parameters[Recipes] * _age[i]) + parameters[Recipes + 1 + _wheel[i]];
    }
}
