using Trier.Dairy.Heating;
using Trier.Dairy.Quantities;

namespace Trier.Dairy.Tests.Heating;

public sealed class CookRampTests
{
    // 32 to 45 °C in 30 min is 13/30 = 0.433 °C/min.
    [Theory]
    [InlineData(5.0, 30, true)]
    [InlineData(5.0, 70, false)]
    [InlineData(15.0, 30, false)]
    [InlineData(15.0, 20, true)]
    [InlineData(null, 30, false)]
    public void A_ramp_that_begins_soon_after_the_cut_is_asked_about_however_long_it_goes_on(double? sinceCut, double minutes, bool asked)
    {
        var answer = CookRamp.Rate(Temperature.FromCelsius(32), Temperature.FromCelsius(45), TimeSpan.FromMinutes(minutes), sinceCut is { } gone ? TimeSpan.FromMinutes(gone) : null).OrThrow();
        Assert.Equal(asked, answer.Questions.Any(question => question.Sentence.StartsWith("Heating at", StringComparison.Ordinal)));
    }
}
