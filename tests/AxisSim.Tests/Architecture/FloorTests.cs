using System.Text.RegularExpressions;

namespace AxisSim.Tests.Architecture;

/// <summary>Inside a room the folders lean on each other one way.</summary>
public sealed partial class FloorTests
{
    private static readonly Dictionary<string, (string From, string To, string Where)[]> s_compiled = Floors.Of.ToDictionary(
        room => room.Key,
        room => Rooms.Compiled(room.Key).GetTypes()
            .Select(type => (Type: type, From: room.Value.Folder(type.Namespace)))
            .Where(one => one.From is not null)
            .SelectMany(one => CompiledUses.Of(one.Type).Select(used => (one.From!, To: room.Value.Folder(used.Namespace), Where: $"{one.Type} uses {used}")))
            .Where(arrow => arrow.To is not null)
            .Select(arrow => (arrow.Item1, arrow.To!, arrow.Where)).ToArray(),
        StringComparer.Ordinal);

    public static TheoryData<string> Built => [.. Rooms.Projects.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Built))]
    public void Compiled_types_lean_on_lower_floors_only(string room) =>
        Assert.Empty(s_compiled[room].Where(arrow => !Floors.Of[room].MayUse(arrow.From, arrow.To)).Select(arrow => arrow.Where).Distinct());

    /// <summary>A constant leaves no trace in what is compiled, so the text is asked as well.</summary>
    [Theory]
    [MemberData(nameof(Built))]
    public void Texts_name_lower_floors_only(string room)
    {
        Floors floors = Floors.Of[room];
        List<(string File, string From, string To)> arrows = [];
        foreach (string file in SourceFiles.All.Where(file => file.StartsWith($"src/{room}/", StringComparison.Ordinal)))
        {
            string text = File.ReadAllText(Repository.PathOf(file)), space = Space().Match(text).Groups[1].Value, from = floors.Folder(space)!;
            Assert.Equal(Path.GetDirectoryName(file), Path.Combine(["src", room, .. space.Split('.')[2..]]));
            arrows.AddRange(Named().Matches(text).Where(match => match.Groups[1].Value == room).Select(match => (file, from, floors.Folder($"{room}.{match.Groups[2].Value}")!)));
        }

        Assert.NotEmpty(arrows); // else the test would look at nothing
        Assert.DoesNotContain(arrows, arrow => !floors.MayUse(arrow.From, arrow.To));
    }

    [Theory]
    [MemberData(nameof(Built))]
    public void A_namespace_without_a_floor_is_refused(string room) =>
        Assert.Throws<InvalidOperationException>(() => Floors.Of[room].Folder(room + ".Elsewhere"));

    [Theory]
    [InlineData("AxisSim.Core", "Stepping", "Mount", true)]
    [InlineData("AxisSim.Core", "Mount", "Stepping", false)]
    [InlineData("AxisSim.Core", "Motors", "Gearing", false)]
    [InlineData("AxisSim.Core", "Maps", "Maps", true)]
    [InlineData("AxisSim.Cli", Floors.Top, "Commands", true)]
    [InlineData("AxisSim.Cli", "Commands", Floors.Top, false)]
    [InlineData("AxisSim.Plots", "Drawing", "Moves", false)]
    public void The_rule(string room, string from, string to, bool allowed) => Assert.Equal(allowed, Floors.Of[room].MayUse(from, to));

    /// <summary>Without this the first test would pass on a reader that sees nothing.</summary>
    [Theory]
    [InlineData("AxisSim.Core", "MoveLoad", "MountSetup")] // a parameter
    [InlineData("AxisSim.Core", "MovePlan", "Ramp")] // named in a body only
    [InlineData("AxisSim.Core", "LaneCase", "LaneAxis")] // a field
    [InlineData("AxisSim.Core", "LaneEngine", "ILaneEngine")] // an interface
    [InlineData("AxisSim.Core", "MoveRun", "LaneDispatch")] // a static call
    [InlineData("AxisSim.Files", "ScenarioKeys", "ScenarioKey")]
    [InlineData("AxisSim.Plots", "MapFigure", "MapPanel")]
    [InlineData("AxisSim.Report", "ReportHtml", "SheetHtml")]
    [InlineData("AxisSim.Cli", "CommandTree", "SimulateCommand")]
    public void The_reader_sees_arrows_of_each_kind(string room, string type, string used) =>
        Assert.Contains(s_compiled[room], arrow => Regex.IsMatch(arrow.Where, $@"[.]{type} uses \S*[.]{used}$"));

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Space();

    [GeneratedRegex(@"\b(AxisSim\.(?:Core|Files|Plots|Report|Cli))\.([A-Z]\w*(?:\.(?:Jobs|Lanes)\b)?)")]
    private static partial Regex Named();
}
