using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Tests.Makes.Sheets;

public sealed class AimTextTests
{
    [Theory]
    [InlineData(1, "once")]
    [InlineData(2, "twice")]
    [InlineData(3, "3 times")]
    public void How_often_a_wheel_is_turned_reads_as_one_says_it(double often, string words) => Assert.Equal(words, AimText.Write(new Aim(Target.Times, often), Notation.Plain));
}
