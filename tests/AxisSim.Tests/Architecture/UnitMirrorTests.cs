using System.Text.RegularExpressions;

namespace AxisSim.Tests.Architecture;

/// <summary>Folder Unit mirrors src, so that who knows a type finds its tests; what runs the whole program stands in EndToEnd.</summary>
public sealed partial class UnitMirrorTests
{
    private const string Tests = "tests/AxisSim.Tests/", Unit = Tests + "Unit/";

    private static readonly string[] s_unit = [.. SourceFiles.All.Where(file => file.StartsWith(Unit, StringComparison.Ordinal))];

    /// <summary>Folders of src, by the name of a type that stands there.</summary>
    private static readonly ILookup<string, string> s_homes = Rooms.Projects.Keys
        .SelectMany(room => Rooms.Compiled(room).GetTypes())
        .Where(type => !type.IsNested && type.Namespace?.StartsWith("AxisSim.", StringComparison.Ordinal) == true)
        .ToLookup(type => type.Name.Split('`')[0], type => type.Namespace!["AxisSim.".Length..].Replace('.', '/'));

    public static TheoryData<string> Files => [.. s_unit];

    [Fact]
    public void There_are_unit_tests_of_each_room() => // else the tests below would look at nothing
        Assert.Equal(Rooms.Projects.Keys.Select(room => room["AxisSim.".Length..]).Order(StringComparer.Ordinal), s_unit.Select(file => Folder(file).Split('/')[0]).Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Files))]
    public void A_folder_of_tests_is_a_folder_of_src(string file) => Assert.True(IsOfSrc(Folder(file)), $"{file}: src has no folder {Folder(file)}");

    [Theory]
    [MemberData(nameof(Files))]
    public void Tests_of_a_type_stand_where_the_type_stands(string file) => Assert.True(IsAtHome(file), $"{file}: its type stands in {string.Join(" and ", Homes(file))}");

    [Theory]
    [MemberData(nameof(Files))]
    public void A_unit_test_does_not_run_the_program(string file) =>
        Assert.DoesNotMatch(@"\bEndToEnd\b|\bProgram\.(Main|Run)\b|typeof\([\w.]*\bProgram\)", File.ReadAllText(Repository.PathOf(file)));

    [Fact]
    public void Namespaces_of_tests_follow_their_folders() =>
        Assert.All(SourceFiles.All.Where(file => file.StartsWith(Tests, StringComparison.Ordinal)), file => Assert.Equal(
            Path.GetDirectoryName(file)!["tests/".Length..].Replace('/', '.'),
            Space().Match(File.ReadAllText(Repository.PathOf(file))).Groups[1].Value));

    [Theory]
    [InlineData("Core/Motion/MotionProfileTests.cs", true)]
    [InlineData("Core/Motors/MotionProfileTests.cs", false)]
    [InlineData("Files/Scenarios/TrainChecksTests.cs", true)] // two types of this name
    [InlineData("Core/Mount/Checks/TrainChecksTests.cs", true)]
    [InlineData("Core/Mount/TrainChecksTests.cs", false)]
    [InlineData("Core/Mount/NoSuchTypeTests.cs", true)] // tests of a folder
    public void The_rule(string file, bool holds) => Assert.Equal(holds, IsAtHome(Unit + file));

    [Theory]
    [InlineData("Core/Motion", true)]
    [InlineData("Core/Motions", false)]
    [InlineData("Core/Stepping/Lanes", true)]
    public void The_rule_of_folders(string folder, bool holds) => Assert.Equal(holds, IsOfSrc(folder));

    /// <summary>Pages send their readers to tests; a test that moved must not leave them behind.</summary>
    [Fact]
    public void Pages_name_tests_that_are_there()
    {
        string[] named = [.. Directory.GetFiles(Repository.PathOf("docs"), "*.md").Append(Repository.PathOf("DEVELOPERS.md")).SelectMany(page => Named().Matches(File.ReadAllText(page))).Select(match => match.Value).Distinct()];
        Assert.True(named.Length > 10, $"only {named.Length} tests are named");
        Assert.All(named, name => Assert.True(File.Exists(Repository.PathOf([.. (Tests + name + ".cs").Split('/')])) || Directory.Exists(Repository.PathOf([.. (Tests + name).Split('/')])), name));
    }

    private static string Folder(string file) => Path.GetDirectoryName(file[Unit.Length..])!.Replace('\\', '/');

    private static bool IsOfSrc(string folder) => Directory.Exists(Repository.PathOf([.. $"src/AxisSim.{folder}".Split('/')]));

    private static IEnumerable<string> Homes(string file) => s_homes[Name().Match(file).Groups[1].Value];

    private static bool IsAtHome(string file) => !Homes(file).Any() || Homes(file).Contains(Folder(file));

    [GeneratedRegex(@"(\w+)Tests\.cs$")]
    private static partial Regex Name();

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Space();

    [GeneratedRegex(@"\b(?:Unit|EndToEnd)/\w+(?:/\w+)*\b|\b(?:Laws|Numerics|Golden|Published|Architecture|Docs)/\w+Tests\b")]
    private static partial Regex Named();
}
