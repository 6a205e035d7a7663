namespace AxisSim.Tests.Architecture;

/// <summary>Arrows between the rooms run one way: Cli to Web and Report, to Plots and Files, to Core.</summary>
public sealed class ArrowTests
{
    public static TheoryData<string> Built => [.. Rooms.Projects.Keys.Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_project_of_the_program_is_a_known_room() =>
        Assert.Empty(Rooms.Projects.Keys.Except(Rooms.MayReferTo.Keys));

    [Theory]
    [MemberData(nameof(Built))]
    public void A_project_refers_only_to_rooms_below_it(string room) =>
        Assert.Empty(Rooms.Items(room, "ProjectReference").Except(Rooms.MayReferTo[room]));

    /// <summary>What was compiled, whatever way the reference came in.</summary>
    [Theory]
    [MemberData(nameof(Built))]
    public void An_assembly_uses_only_rooms_below_it(string room)
    {
        IEnumerable<string> used = Rooms.Compiled(room).GetReferencedAssemblies().Select(name => Rooms.Of(name.Name!)).OfType<string>();
        Assert.Empty(used.Except(Rooms.MayReferTo[room]));
    }

    [Fact]
    public void The_program_does_use_the_rooms_below_it()
    {
        // Without this the test above would pass on assemblies that it does not recognise.
        IEnumerable<string?> used = Rooms.Compiled("AxisSim.Cli").GetReferencedAssemblies().Select(name => Rooms.Of(name.Name!));
        Assert.Superset(new HashSet<string?> { "AxisSim.Core", "AxisSim.Files", "AxisSim.Plots", "AxisSim.Report" }, new HashSet<string?>(used));
    }

    [Fact]
    public void The_allowed_arrows_make_no_ring()
    {
        static bool Reaches(string from, string to, int depth) =>
            depth >= 0 && Rooms.MayReferTo[from].Any(next => next == to || Reaches(next, to, depth - 1));
        Assert.DoesNotContain(Rooms.MayReferTo.Keys, room => Reaches(room, room, Rooms.MayReferTo.Count));
    }

    [Fact]
    public void Physics_leans_on_one_package_alone()
    {
        Assert.Equal(["MathNet.Numerics"], Rooms.Items("AxisSim.Core", "PackageReference"));
        IEnumerable<string?> others = Rooms.Compiled("AxisSim.Core").GetReferencedAssemblies().Select(name => name.Name)
            .Where(name => !name!.StartsWith("System.", StringComparison.Ordinal) && name != "MathNet.Numerics");
        Assert.Empty(others);
    }

    /// <summary>Core neither reads nor prints: the types that do so are not even mentioned.</summary>
    [Fact]
    public void Physics_touches_no_file_and_no_console()
    {
        string[] forbidden = ["System.Console", "System.IO.FileSystem", "System.Net.Http", "System.Diagnostics.Process"];
        Assert.Empty(Rooms.Compiled("AxisSim.Core").GetReferencedAssemblies().Select(name => name.Name).Intersect(forbidden));
        Assert.All(
            Directory.GetFiles(Repository.PathOf("src", "AxisSim.Core"), "*.cs", SearchOption.AllDirectories).Where(SourceFiles.IsOurs),
            path => Assert.DoesNotMatch(@"\b(Console|File|Directory|StreamWriter|StreamReader)\.", File.ReadAllText(path)));
    }
}
