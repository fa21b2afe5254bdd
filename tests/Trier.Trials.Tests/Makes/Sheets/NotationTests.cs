using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using DairyField = Trier.Dairy.Workings.Field;

namespace Trier.Trials.Tests.Makes.Sheets;

public sealed class NotationTests
{
    private static readonly Notation Metric = new(UnitSystem.Metric, ',');
    private static readonly Notation Customary = new(UnitSystem.UsCustomary, '.');

    public static TheoryData<string, string, string> Sentences => new()
    {
        { "pH is 6.66; it must be at least 0.", "pH is 6,66; it must be at least 0.", "pH is 6.66; it must be at least 0." },
        { "Temperature is 140 °C; it must be at least -1 and at most 100 °C (usual: 33 to 58 °C).", "Temperature is 140 °C; it must be at least -1 and at most 100 °C (usual: 33 to 58 °C).", "Temperature is 284 °F; it must be at least 30.2 and at most 212 °F (usual: 91.4 to 136 °F)." },
        { "the law lists 63 °C held for 30 min, 3 °C more than usual", "the law lists 63 °C held for 30 min, 3 °C more than usual", "the law lists 145 °F held for 30 min, 5.4 °F more than usual" },
        { "A thermometer 0.5 °C off decides.", "A thermometer 0,5 °C off decides.", "A thermometer 0.9 °F off decides." },
        { "Texts name 2 to 6.5 kPa; 3 L/min, 2.5 mL.", "Texts name 2 to 6,5 kPa; 3 L/min, 2,5 mL.", "Texts name 0.29 to 0.943 psi; 3 L/min, 2.5 mL." },
        { "Milk is 500 L; 12.5.2026 and version 1.2.3 stay.", "Milk is 500 L; 12.5.2026 and version 1.2.3 stay.", "Milk is 132 gal; 12.5.2026 and version 1.2.3 stay." },
        { "The wheel is 1.8 kg and 16 cm across.", "The wheel is 1,8 kg and 16 cm across.", "The wheel is 3.97 lb and 6.3 in across." },
    };

    [Theory]
    [MemberData(nameof(Sentences))]
    public void A_sentence_is_read_in_the_maker_s_units_and_decimal_sign(string core, string metric, string customary)
    {
        Assert.Equal(metric, Metric.Say(core));
        Assert.Equal(customary, Customary.Say(core));
        Assert.Equal(core, Notation.Plain.Say(core));
    }

    [Theory]
    [InlineData("celsius", 4, "4 °C", "7.2 °F")]
    [InlineData("pH", 0.5, "0,50", "0.50")]
    [InlineData("kilopascals", 6.894757293168, "6,89 kPa", "1 psi")]
    [InlineData("millimetres", 2.5, "2,5 mm", "2.5 mm")]
    public void A_difference_has_no_zero_of_its_own(string key, double gap, string metric, string customary)
    {
        Assert.Equal(metric, Metric.Gap(Target.Named(key)!, gap));
        Assert.Equal(customary, Customary.Gap(Target.Named(key)!, gap));
    }

    /// <summary>Every sentence of every temperature, pressure, mass and size a form asks for leaves no unit of the other system behind.</summary>
    [Fact]
    public void No_sentence_of_a_field_mixes_the_two_systems()
    {
        var fields = Target.All.Select(target => target.Field)
            .Concat([Trier.Dairy.Milk.MilkFields.MilkVolume, Trier.Dairy.Milk.MilkFields.MilkTemperature, Trier.Dairy.Pressing.PressFields.Follower, Trier.Dairy.Pressing.PressFields.MouldWidth, Trier.Dairy.Composition.CompositionFields.CheeseMass])
            .Where(field => field.Unit is "°C" or "L" or "kg" or "cm" or "kPa").ToList();
        Assert.True(fields.Count >= 8);
        Assert.All(fields.SelectMany(Told), sentence => Assert.DoesNotMatch(@"\d (°C|L|kg|cm|kPa)\b", Customary.Say(sentence)));
        Assert.All(fields.SelectMany(Told), sentence => Assert.DoesNotMatch(@"\d\.\d", Metric.Say(sentence)));
    }

    private static IEnumerable<string> Told(DairyField field) => [field.ProblemWith(field.Highest * 2.5)!.Sentence, field.QuestionAbout(field.UsuallyTo + ((field.Highest - field.UsuallyTo) / 3.7))!.Sentence];
}
