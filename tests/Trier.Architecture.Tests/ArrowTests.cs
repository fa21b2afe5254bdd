using System.Xml.Linq;
using Trier.TestKit;

namespace Trier.Architecture.Tests;

/// <summary>References run one way; the pure rooms carry nothing that touches the world.</summary>
public sealed class ArrowTests
{
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["Trier.Statistics"] = [],
        ["Trier.Dairy"] = [],
        ["Trier.Trials"] = ["Trier.Statistics", "Trier.Dairy"],
        ["Trier.Storage"] = ["Trier.Trials"],
        ["Trier.Storage.Sqlite"] = ["Trier.Storage"],
        ["Trier.Publishing"] = ["Trier.Trials"],
        ["Trier"] = ["Trier.Publishing", "Trier.Storage.Sqlite"],
    };

    public static TheoryData<string> Rooms => [.. Allowed.Keys];

    public static TheoryData<string> PureRooms => ["Trier.Statistics", "Trier.Dairy", "Trier.Trials"];

    [Fact]
    public void Every_room_of_src_is_known_here() =>
        Assert.Equal(Allowed.Keys.Order(), Directory.GetDirectories(Path.Combine(Checkout.Root, "src")).Where(folder => Directory.GetFiles(folder, "*.csproj").Length > 0).Select(folder => Path.GetFileName(folder)!).Order());

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_refers_only_to_rooms_below_it(string room) =>
        Assert.Empty(References(room).Except(Allowed[room], StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void A_pure_room_ships_no_package_but_the_numerics(string room)
    {
        var packages = Project(room).Descendants("PackageReference").Where(package => package.Attribute("PrivateAssets") is null).Select(package => package.Attribute("Include")!.Value);
        Assert.Empty(packages.Except(room == "Trier.Statistics" ? ["MathNet.Numerics"] : []));
    }

    [Fact]
    public void Numerics_stay_in_the_room_of_distributions()
    {
        var users = Sources("Trier.Statistics").Where(file => File.ReadAllText(file).Contains("MathNet.Numerics", StringComparison.Ordinal));
        Assert.All(users, file => Assert.Contains($"{Path.DirectorySeparatorChar}Distributions{Path.DirectorySeparatorChar}", file, StringComparison.Ordinal));
    }

    [Fact]
    public void The_banned_calls_are_linked_into_every_pure_room_and_name_their_replacement()
    {
        var props = File.ReadAllText(Path.Combine(Checkout.Root, "Directory.Build.props"));
        Assert.Contains("BannedSymbols.Pure.txt", props, StringComparison.Ordinal);
        var bans = File.ReadAllLines(Path.Combine(Checkout.Root, "eng", "BannedSymbols.Pure.txt")).Where(line => line.Length > 0).ToList();
        Assert.True(bans.Count > 20);
        Assert.All(bans, ban => Assert.True(ban.Split(';', 2) is [_, { Length: > 10 }], ban));
    }

    [Fact]
    public void No_source_file_is_longer_than_four_hundred_lines()
    {
        var rooms = Allowed.Keys.SelectMany(Sources).Where(file => !file.Contains("Migrations", StringComparison.Ordinal));
        Assert.Empty(rooms.Where(file => File.ReadLines(file).Count() > 400).Select(Path.GetFileName));
    }

    [Fact]
    public void The_readme_names_both_commands_and_they_exist()
    {
        var readme = File.ReadAllText(Path.Combine(Checkout.Root, "README.md"));
        Assert.Contains("dotnet run --project src/Trier -- demo", readme, StringComparison.Ordinal);
        Assert.Contains("dotnet run eng/test.cs", readme, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(Checkout.Root, "eng", "test.cs")));
    }

    private static XDocument Project(string room) => XDocument.Load(Path.Combine(Checkout.Root, "src", room, room + ".csproj"));

    private static IEnumerable<string> References(string room) =>
        Project(room).Descendants("ProjectReference").Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value.Replace('\\', '/')));

    private static IEnumerable<string> Sources(string room)
    {
        var separator = Path.DirectorySeparatorChar;
        return Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src", room), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{separator}obj{separator}", StringComparison.Ordinal) && !file.Contains($"{separator}bin{separator}", StringComparison.Ordinal));
    }
}
