using System.Text.RegularExpressions;

namespace AxisSim.Tests.Architecture;

/// <summary>Inside Core the folders lean on each other one way.</summary>
public sealed partial class CoreArrowTests
{
    private static readonly (string From, string To, string Where)[] s_compiled =
    [
        .. Rooms.Compiled("AxisSim.Core").GetTypes()
            .Select(type => (Type: type, From: CoreFloors.Folder(type.Namespace)))
            .Where(one => one.From is not null)
            .SelectMany(one => CompiledUses.Of(one.Type).Select(used => (one.From!, To: CoreFloors.Folder(used.Namespace), Where: $"{one.Type} uses {used}")))
            .Where(arrow => arrow.To is not null)
            .Select(arrow => (arrow.Item1, arrow.To!, arrow.Where)),
    ];

    [Fact]
    public void Compiled_types_lean_on_lower_floors_only() =>
        Assert.Empty(s_compiled.Where(arrow => !CoreFloors.MayUse(arrow.From, arrow.To)).Select(arrow => arrow.Where));

    /// <summary>A constant leaves no trace in what is compiled, so the text is asked as well.</summary>
    [Fact]
    public void Texts_name_lower_floors_only()
    {
        List<(string File, string From, string To)> arrows = [];
        foreach (string file in SourceFiles.All.Where(file => file.StartsWith("src/AxisSim.Core/", StringComparison.Ordinal)))
        {
            string text = File.ReadAllText(Repository.PathOf(file)), space = Space().Match(text).Groups[1].Value, from = CoreFloors.Folder(space)!;
            Assert.Equal(Path.GetDirectoryName(file), Repository.PathOf(["src", "AxisSim.Core", .. space.Split('.')[2..]])[(Repository.Root.Length + 1)..]);
            arrows.AddRange(Named().Matches(text).Select(match => (file, from, CoreFloors.Folder("AxisSim.Core." + match.Groups[1].Value)!)));
        }

        Assert.True(arrows.Count > 300, $"only {arrows.Count} arrows were found"); // else the test would look at nothing
        Assert.DoesNotContain(arrows, arrow => !CoreFloors.MayUse(arrow.From, arrow.To));
    }

    [Fact]
    public void A_namespace_without_a_floor_is_refused() =>
        Assert.Throws<InvalidOperationException>(() => CoreFloors.Folder("AxisSim.Core.Elsewhere"));

    [Theory]
    [InlineData("Stepping", "Mount", true)]
    [InlineData("Mount", "Stepping", false)]
    [InlineData("Motors", "Gearing", false)]
    [InlineData("Maps", "Maps", true)]
    public void The_rule(string from, string to, bool allowed) => Assert.Equal(allowed, CoreFloors.MayUse(from, to));

    /// <summary>Without this the first test would pass on a reader that sees nothing.</summary>
    [Theory]
    [InlineData("MoveLoad", "MountSetup")] // a parameter
    [InlineData("MovePlan", "Ramp")] // named in a body only
    [InlineData("LaneCase", "LaneAxis")] // a field
    [InlineData("LaneEngine", "ILaneEngine")] // an interface
    [InlineData("MoveRun", "LaneDispatch")] // a static call
    public void The_reader_sees_arrows_of_each_kind(string type, string used) =>
        Assert.Contains(s_compiled, arrow => Regex.IsMatch(arrow.Where, $@"[.]{type} uses \S*[.]{used}$"));

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Space();

    [GeneratedRegex(@"\bAxisSim\.Core\.([A-Z]\w*(?:\.(?:Jobs|Lanes)\b)?)")]
    private static partial Regex Named();
}
