using System.Globalization;
using System.Text;
using CsCheck;
using Trier.Publishing.MeterFiles;
using Trier.Trials.Makes.Days;

namespace Trier.Publishing.Tests.MeterFiles;

public sealed class MeterFileTests
{
    private static readonly DateTimeOffset Nine = new(2026, 5, 3, 9, 0, 0, TimeSpan.FromHours(2));

    private static MeterCurve Read(string text, MeterColumns? columns = null)
    {
        var guessed = MeterFile.Guess(MeterFile.Header(text).Value, columns ?? new("", "", "", false));
        var read = MeterFile.Read(text, "meter.csv", guessed, Nine);
        Assert.True(read.Ok, string.Join(" ", read.Problems.Select(problem => problem.Sentence)));
        return read.Value;
    }

    [Theory]
    [InlineData("Timestamp,pH,Temp\n2026-05-03 09:30:00,6.60,32.1\n2026-05-03T10:00:00,6.50,32.0\n")]
    [InlineData("Date;Time;pH value\r\n3/5/2026;9:30;6,60\r\n03.05.2026;10:00:00;6,50\r\n")]
    [InlineData("\"elapsed min\"\tpH\n30\t6.60\n60.0\t6.50\n")]
    [InlineData("time of day;mV;pH\n9:30;12;6,60\n\n9:45;--;--\n10:00;13;6,50\n")]
    public void Any_common_layout_is_read_by_its_header(string text)
    {
        var curve = Read(text);
        Assert.Equal([new(Nine.AddMinutes(30), 6.6), new(Nine.AddMinutes(60), 6.5)], curve.Points);
        Assert.Equal(("pH", 2), (curve.Target, curve.Read));
    }

    [Fact]
    public void Columns_can_be_named_and_temperature_chosen()
    {
        var curve = Read("a;b;c\n9:30;1;31,5\n9:31;2;32\n", new("a", "", "c", IsTemperature: true));
        Assert.Equal("celsius", curve.Target);
        Assert.Equal([31.5, 32], curve.Points.Select(point => point.Value));
        Assert.Equal([32, 52], Read("t;c\n9:30;89,6\n9:31;125,6\n", new("t", "", "c", IsTemperature: true, IsFahrenheit: true)).Points.Select(point => Math.Round(point.Value, 9)));
        Assert.Contains("it lies between 30 and 212 °F", Assert.Single(MeterFile.Read("t;c\n9:30;300\n", "m.csv", new("t", "", "c", true, true), Nine).Problems).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("time,pH\n5/28/2026 10:10 AM,6.5\n5/28/2026 2:15 PM,6.4\n5/29/2026 12:05 AM,5.4\n")]
    [InlineData("time,pH\n28/5/2026 10:10,6.5\n28/5/2026 14:15,6.4\n29/5/2026 0:05,5.4\n")]
    [InlineData("time,pH\n05-28-2026 10:10 a.m.,6.5\n05-28-2026 2:15 p.m.,6.4\n05-29-2026 12:05 a.m.,5.4\n")]
    public void A_month_before_the_day_is_read_where_only_that_makes_sense(string text)
    {
        var day = new DateTimeOffset(2026, 5, 28, 0, 0, 0, TimeSpan.FromHours(2));
        Assert.Equal([day.AddMinutes(610), day.AddMinutes(855), day.AddMinutes(1445)], Read(text).Points.Select(point => point.When));
    }

    [Fact]
    public void Dates_of_two_meanings_follow_the_day_of_the_make_or_are_asked_about()
    {
        const string Text = "time,pH\n3/5/2026 9:30,6.5\n3/5/2026 10:30,6.4\n";
        var columns = new MeterColumns("time", "", "pH", false);
        Assert.Equal(Nine.AddMinutes(30), Read(Text).Points[0].When);
        var march = new DateTimeOffset(2026, 3, 5, 9, 0, 0, TimeSpan.FromHours(2));
        Assert.Equal(march.AddMinutes(30), MeterFile.Read(Text, "m.csv", columns, march).Value.Points[0].When);
        var asked = Assert.Single(MeterFile.Read(Text, "m.csv", columns, Nine.AddYears(-1)).Problems);
        Assert.Equal(("order", true), (asked.Field, asked.Sentence.Contains("which comes first, the day or the month", StringComparison.Ordinal)));
        Assert.Equal(3, MeterFile.Read(Text, "m.csv", columns with { Order = DayOrder.MonthFirst }, Nine.AddYears(-1)).Value.Points[0].When.Month);
        Assert.False(MeterFile.Read("time,pH\n5/28/2026 13:10 PM,6.5\n5/28/2026 25:10,6.4\n", "m.csv", columns, Nine).Ok);
    }

    [Fact]
    public void Times_of_day_run_past_midnight()
    {
        var curve = Read("time,pH\n22:00,5.8\n23:59,5.6\n0:30,5.5\n2:00,5.4\n");
        Assert.Equal(Nine.AddHours(17), curve.Points[^1].When);
    }

    [Fact]
    public void What_cannot_be_is_told_by_line_and_nothing_is_taken_in()
    {
        var read = MeterFile.Read("time,pH\n9:30,66\n25:00,6.5\n9:32,sour\n13/13/2026 9:00,6.4\n", "m.csv", new("time", "", "pH", false), Nine);
        Assert.Equal(["Line 2", "Line 3", "Line 4", "Line 5"], read.Problems.Select(problem => problem.Sentence[..6]));
        Assert.Contains("pH runs from 0 to 14", read.Problems[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_that_cannot_be_guessed_are_asked_for_with_those_there_are()
    {
        var header = MeterFile.Header("x,y\n1,2\n").Value;
        var read = MeterFile.Read("x,y\n1,2\n", "m.csv", MeterFile.Guess(header, new("", "", "", false)), Nine);
        Assert.Equal(["time", "value"], read.Problems.Select(problem => problem.Field));
        Assert.EndsWith("There are x, y.", read.Problems[0].Sentence, StringComparison.Ordinal);
        Assert.False(MeterFile.Header("nothing").Ok);
    }

    [Fact]
    public void Of_every_column_of_a_drawing_the_lowest_and_highest_reading_survive()
    {
        Gen.Select(Gen.Int[1700, 4000], Gen.Int[1, 1_000_000], Gen.Int[0, 200]).Sample((count, seed, gap) =>
        {
            var random = new Random(seed);
            var (at, points) = (Nine, new List<MeterPoint>());
            for (var i = 0; i < count; i++)
            {
                // Now and then the meter was off for hours.
                at = at.AddSeconds(random.Next(1, 90) + (random.Next(200) < gap ? 20_000 : 0));
                points.Add(new(at, random.NextDouble() < 0.01 ? random.NextDouble() * 14 : 6));
            }

            var thin = CurveThinning.Of(points);
            Assert.True(thin.Length <= CurveThinning.MostPoints);
            Assert.Equal((points[0], points[^1]), (thin[0], thin[^1]));
            Assert.Equal(thin.OrderBy(point => point.When), thin);
            int Column(MeterPoint point) => (int)Math.Min(CurveThinning.Columns - 1, (point.When - points[0].When) / (points[^1].When - points[0].When) * CurveThinning.Columns);
            var kept = thin.ToLookup(Column);
            foreach (var column in points.GroupBy(Column))
            {
                Assert.Equal(column.Min(point => point.Value), kept[column.Key].Min(point => point.Value));
                Assert.Equal(column.Max(point => point.Value), kept[column.Key].Max(point => point.Value));
            }
        }, iter: 200);
    }

    [Fact]
    public void A_year_minute_by_minute_is_thinned_and_no_spike_is_lost()
    {
        const int rows = 525_600;
        var text = new StringBuilder("time,pH\n", rows * 24);
        for (var i = 0; i < rows; i++) text.Append(CultureInfo.InvariantCulture, $"{Nine.AddMinutes(i):yyyy-MM-dd HH:mm},{(i == 300_000 ? 4.01 : i == 300_001 ? 6.99 : 5.5 + (i % 7 * 0.01)):0.00}\n");
        var curve = Read(text.ToString());
        Assert.Equal(rows, curve.Read);
        Assert.InRange(curve.Points.Length, 600, CurveThinning.MostPoints);
        Assert.Equal((4.01, 6.99), (curve.Points.Min(point => point.Value), curve.Points.Max(point => point.Value)));
        Assert.Equal((Nine, Nine.AddMinutes(rows - 1)), (curve.Points[0].When, curve.Points[^1].When));
        Assert.Equal(curve.Points.OrderBy(point => point.When), curve.Points);
    }

    [Fact]
    public void No_text_makes_it_throw()
    {
        string[] known = ["time", "pH", ",", ";", "\t", "\n", "\r\n", "9:30", "6.5", "6,5", "-", "2026-05-03", " ", "\"", "T", "99999999999", ":", "\uFEFF"];
        Gen.Int[0, known.Length - 1].Array[0, 40].Sample(parts =>
        {
            var text = string.Concat(parts.Select(part => known[part]));
            if (MeterFile.Header(text).TryGet(out var header)) _ = MeterFile.Read(text, "x", MeterFile.Guess(header, new("", "", "", false)), Nine);
        });
    }
}
