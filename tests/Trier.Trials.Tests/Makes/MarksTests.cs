using Trier.Trials.Makes;
using Trier.Trials.Tests.Tastings;

namespace Trier.Trials.Tests.Makes;

public sealed class MarksTests
{
    [Fact]
    public void Wheels_of_one_trial_never_look_alike_even_without_their_tone()
    {
        var day = new Day();
        foreach (var (name, recipe) in new[] { ("A", "House"), ("B", "Thistle"), ("C", "Hot"), ("D", "Short"), ("E", "house"), ("F", "Hot"), ("G", "House") })
            day.Do<Trier.Trials.Tastings.Steps.DraftTasting>((draft, at) => draft.Enter(at, day.NewWheel(name, recipe)));
        var marks = day.Book.Entries.Select(entry => entry.Mark).ToList();
        Assert.Equal([1, 2, 3, 4, 1, 3, 1], marks.Select(mark => mark.Shape));
        Assert.Equal([0, 0, 0, 0, 1, 1, 2], marks.Select(mark => mark.Fill));
        Assert.Equal(7, marks.Select(mark => mark.Tone).Distinct().Count());
    }

    [Fact]
    public void A_wheel_without_a_recipe_is_a_recipe_of_its_own()
    {
        Assert.Equal(new WheelMark(1, 0, 1), Marks.For("Plain", []));
    }
}
