using Trier.Demo;
using Trier.Storage;
using Trier.Storage.Makes;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Makes.Shelf;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Hosting;

namespace Trier.Tests.Commands.Makes;

/// <summary>The second demo trial, as it stands in its database.</summary>
public sealed class AlpineTrialTests : IAsyncLifetime
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-tests-");
    private readonly WriterGate _writer = new();
    private Make _july = null!;
    private Make _august = null!;
    private DraftTasting _trial = null!;
    private Thing _brine = null!;

    public async ValueTask InitializeAsync()
    {
        var settings = new HostSettings(_folder.FullName, 0, Lan: null);
        await DemoTrial.SeedAsync(settings);
        var databases = new SqliteDatabases(settings.Database);
        var makes = new MakeStore(databases, _writer, TimeProvider.System);
        (_july, _august) = ((await makes.FindAsync(AlpineTrial.JulyMake))!, (await makes.FindAsync(AlpineTrial.AugustMake))!);
        _trial = (DraftTasting)(await new TrialStore(databases, _writer, TimeProvider.System).FindAsync(AlpineTrial.Id))!;
        _brine = ThingHistory.With((await new ThingStore(databases, _writer).AllAsync()).Single(thing => thing.Kind == ThingKind.Brine), await makes.AllAsync());
    }

    public ValueTask DisposeAsync()
    {
        _writer.Dispose();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        _folder.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public void It_is_said_to_be_invented_and_still_a_draft() =>
        Assert.True(_trial.Book.Plan.Invented && _july.Begun.Invented && _august.Begun.Invented);

    [Fact]
    public void One_cut_came_late_and_everything_else_went_as_planned()
    {
        var off = Assert.Single(Deviation.Of(_july).Concat(Deviation.Of(_august)));
        Assert.Equal("Cut the curd: 14 min later than planned. A late cut is a firmer gel: curd gives up whey less readily, and the wheel may come out moister.", off.InWords(Notation.Plain));
        Assert.True(_july.AllDone && _august.AllDone);
    }

    [Fact]
    public void The_two_halves_of_one_vat_differ_in_their_cook_alone_and_the_other_vat_in_its_day_and_its_late_cut()
    {
        string[] Differ(int one, int other)
        {
            var (a, b) = (_trial.Book.Entries[one].Facts, _trial.Book.Entries[other].Facts);
            return [.. a.Values.Keys.Union(b.Values.Keys).Where(name => a[name] != b[name]).Order(StringComparer.Ordinal)];
        }

        Assert.Equal(["July", "August hot", "August mild"], _trial.Book.Entries.Select(entry => entry.Name));
        Assert.Equal(["cook the curd: temperature aimed at", "fill the moulds: temperature aimed at", "size", "stir at the top: temperature aimed at", "vat part"], Differ(1, 2));
        Assert.Equal(["made", "make", "milk", "size", "vat day: cut the curd", "vat part"], Differ(0, 1));
    }

    [Fact]
    public void The_wheels_weigh_what_was_predicted()
    {
        foreach (var (make, lane) in new[] { (_july, _july.Lanes[0]), (_august, _august.Lanes[0]), (_august, _august.Lanes[1]) })
        {
            var wheels = make.Wheels.Where(wheel => wheel.Part == lane.Part).ToList();
            var expected = MakeSheet.Of(lane.Recipe, Vat.Read(lane.Share(make.Begun.Vat, wheels.Count), make.Recipe.Milk).Value).Wheel.Figures.First(figure => figure.Measure == Measure.Mass);
            Assert.InRange(wheels.Sum(wheel => wheel.Kilograms!.Value), expected.Low!.Value, expected.High!.Value);
        }
    }

    [Fact]
    public void The_brine_tells_which_wheels_lay_in_it() =>
        Assert.Equal([[1], [2], [3]], _brine.Log.Where(line => line.Deed == ThingDeed.Used).Select(line => line.Wheels));
}
