using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Shelf;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Shelf;

public sealed class ThingForTests
{
    private static readonly DateTimeOffset Now = new(2026, 5, 3, 9, 0, 0, TimeSpan.Zero);

    private static Thing On(ThingKind kind, string name, DateOnly? expires = null) => Thing.Begin(new(Guid.NewGuid()), Now.AddDays(-9), kind, name, expires, "").Value;

    private static Step Adding(string called) => Drafts.With(1, new() { Kind = "add", What = "culture", Called = called, Per = "% of milk", Aims = [new("dose", 1)] }).Read().Steps[1];

    [Theory]
    [InlineData("thermophilic bulk or whey starter", "Whey starter of July", true)]
    [InlineData("my own clabber", "Whey starter of July", false)]
    [InlineData("mesophilic bulk starter", "Whey starter of July", false)]
    [InlineData("mesophilic bulk starter", "Mesophilic, spring", true)]
    public void A_lot_stands_chosen_only_where_its_name_fits_the_step(string called, string lot, bool chosen)
    {
        ImmutableArray<Thing> shelf = [On(ThingKind.Culture, lot)];
        Assert.Equal(chosen ? shelf[0] : null, ThingFor.Likely(Adding(called), shelf, Now));
    }

    [Fact]
    public void What_is_past_its_date_or_one_of_several_never_stands_chosen()
    {
        var rennet = Drafts.Recipe.Steps.First(step => step.Kind == StepKind.Renneting);
        var late = On(ThingKind.Rennet, "Old", new DateOnly(2026, 5, 2));
        var good = On(ThingKind.Rennet, "New", new DateOnly(2026, 5, 3));
        Assert.Equal(good, ThingFor.Likely(rennet, [good], Now));
        Assert.Null(ThingFor.Likely(rennet, [late], Now));
        Assert.Null(ThingFor.Likely(rennet, [good, late], Now));
        Assert.Null(ThingFor.Likely(rennet, [good, On(ThingKind.Rennet, "Other")], Now));
        Assert.Null(ThingFor.Likely(rennet, [], Now));
    }
}
