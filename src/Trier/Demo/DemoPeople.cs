using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;

namespace Trier.Demo;

/// <summary>A taster of the invented club.</summary>
internal sealed record DemoPerson(TasterId Id, int Number, string Name, DeclaredTaste? Taste, bool OnPaper, bool Junior, bool Maker);

/// <summary>Wheels and people of the invented club. No real people, places or data.</summary>
internal static class DemoPeople
{
    public static ImmutableArray<Entry> Wheels { get; } = MakeWheels();

    public static ImmutableArray<DemoPerson> Tasters { get; } =
    [
        Person(1, "Amélia", DeclaredTaste.Milder, paper: true),
        Person(2, "Rui", DeclaredTaste.Milder),
        Person(3, "Leonor", DeclaredTaste.Stronger),
        Person(4, "Zulmira", DeclaredTaste.Milder, paper: true),
        Person(5, "Filipa", DeclaredTaste.Milder),
        Person(6, "Duarte", DeclaredTaste.Stronger),
        Person(7, "Caio", DeclaredTaste.Stronger),
        Person(8, "Matilde", DeclaredTaste.Milder),
        Person(9, "Nuno", DeclaredTaste.Stronger),
        Person(10, "Odete", DeclaredTaste.Milder),
        Person(11, "Gaspar", DeclaredTaste.Stronger),
        Person(12, "Tomé", DeclaredTaste.NoIdea, junior: true),
        Person(13, "Inês", DeclaredTaste.Milder),
        Person(14, "Conceição", DeclaredTaste.Stronger, paper: true),
        Person(15, "Benedita", null, maker: true),
    ];

    private static DemoPerson Person(int number, string name, DeclaredTaste? taste, bool paper = false, bool junior = false, bool maker = false) =>
        new(new TasterId(new Guid(number, 2025, 830, [0, 0, 0, 0, 0, 0, 0, 1])), number, name, taste, paper, junior, maker);

    private static ImmutableArray<Entry> MakeWheels()
    {
        (string Name, string Recipe, string Made, string Milk, string Size, string Notes)[] wheels =
        [
            ("House", "House", "2025-03-15", "sheep’s, 10 L", "1,94 to 1,57 kg", "sound"),
            ("Thistle", "Thistle", "2025-03-22", "sheep’s, 10 L", "1,90 to 1,52 kg", "cardoon-flower coagulant; sound"),
            ("Hot", "Hot", "2025-03-29", "sheep’s, 10 L", "1,78 to 1,41 kg", "thermophilic starter, heated to 44 °C; sound"),
            ("Short brine", "Short brine", "2025-04-05", "sheep’s, 10 L", "1,97 to 1,60 kg", "4 hours in the brine"),
            ("House 2", "House", "2025-04-12", "sheep’s, 10 L", "1,99 to 1,66 kg", "fault kept in: open, short, acid"),
            ("Old Hot", "Hot", "2024-02-24", "sheep’s, 9 L", "1,66 to 1,18 kg", "13 months older than Hot"),
        ];
        var entries = ImmutableArray<Entry>.Empty;
        foreach (var (wheel, index) in wheels.Select((wheel, index) => (wheel, index)))
        {
            var facts = WheelFacts.Of(
            [
                new(WheelFacts.RecipeFact, wheel.Recipe),
                new(WheelFacts.MadeFact, wheel.Made),
                new(WheelFacts.MilkFact, wheel.Milk),
                new(WheelFacts.HeatTreatmentFact, "pasteurised"),
                new(WheelFacts.AdditivesFact, index == 5 ? "lysozyme (from egg)" : null),
                new(WheelFacts.AllergensFact, index == 5 ? "egg" : null),
                new(WheelFacts.SizeFact, wheel.Size),
                new(WheelFacts.NotesFact, wheel.Notes),
            ]);
            var id = new WheelId(new Guid(index + 1, 2025, 315, [0, 0, 0, 0, 0, 0, 0, 2]));
            entries = entries.Add(new Entry(id, $"W{index + 1}", wheel.Name, Marks.For(wheel.Recipe, entries), facts));
        }

        return entries;
    }
}
