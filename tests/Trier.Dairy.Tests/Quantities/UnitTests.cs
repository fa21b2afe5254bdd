using System.Reflection;
using CsCheck;
using Trier.Dairy.Quantities;

namespace Trier.Dairy.Tests.Quantities;

public sealed class UnitTests
{
    private static readonly Type[] Quantities =
        [.. typeof(Mass).Assembly.GetExportedTypes().Where(type => type.IsValueType && type.Namespace == typeof(Mass).Namespace)];

    public static TheoryData<string, string> Units()
    {
        var data = new TheoryData<string, string>();
        foreach (var type in Quantities)
        {
            foreach (var method in type.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(method => method.Name.StartsWith("From", StringComparison.Ordinal)))
                data.Add(type.Name, method.Name[4..]);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Units))]
    public void A_number_comes_back_in_the_unit_it_was_given_in(string quantity, string unit)
    {
        var type = Quantities.Single(entry => entry.Name == quantity);
        var from = type.GetMethod("From" + unit)!;
        var read = type.GetProperty(unit)!;
        Gen.Double[-1e6, 1e6].Sample(value => Math.Abs((double)read.GetValue(from.Invoke(null, [value]))! - value) <= 1e-9 * Math.Max(1, Math.Abs(value)));
    }

    [Theory]
    [MemberData(nameof(Units))]
    public void A_number_that_is_none_makes_no_quantity(string quantity, string unit)
    {
        var from = Quantities.Single(entry => entry.Name == quantity).GetMethod("From" + unit)!;
        var thrown = Assert.Throws<TargetInvocationException>(() => from.Invoke(null, [double.NaN]));
        Assert.IsType<ArgumentOutOfRangeException>(thrown.InnerException);
    }

    [Fact]
    public void Units_of_one_quantity_agree_with_their_definitions()
    {
        Assert.Equal(2.20462262184878, Mass.FromKilograms(1).Pounds, 1e-12);
        Assert.Equal(1.10231131092439, Mass.FromGrams(500).Ounces / 16, 1e-12);
        Assert.Equal(212, Temperature.FromCelsius(100).Fahrenheit, 1e-12);
        Assert.Equal(145, Temperature.FromCelsius(62.7777777777778).Fahrenheit, 1e-9);
        Assert.Equal(0.264172052358148, Volume.FromLitres(1).UsGallons, 1e-12);
        Assert.Equal(1.75, TitratableAcidity.FromDegreesSoxhletHenkel(1).DegreesThoerner - 0.75, 1e-12);
    }
}
