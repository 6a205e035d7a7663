using System.Reflection;
using System.Xml.Linq;

namespace AxisSim.Tests.Architecture;

/// <summary>The rooms of the program (docs/architecture.md) and what each may lean on.</summary>
internal static class Rooms
{
    /// <summary>What a room may refer to; one that is not built yet has its place already.</summary>
    public static IReadOnlyDictionary<string, string[]> MayReferTo { get; } = new Dictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["AxisSim.Core"] = [],
        ["AxisSim.Files"] = ["AxisSim.Core"],
        ["AxisSim.Plots"] = ["AxisSim.Core"],
        ["AxisSim.Report"] = ["AxisSim.Core", "AxisSim.Files", "AxisSim.Plots"],
        ["AxisSim.Web"] = ["AxisSim.Core", "AxisSim.Files", "AxisSim.Plots", "AxisSim.Report"],
        ["AxisSim.Cli"] = ["AxisSim.Core", "AxisSim.Files", "AxisSim.Plots", "AxisSim.Report", "AxisSim.Web"],
    };

    /// <summary>Project files of the program itself, by room.</summary>
    public static IReadOnlyDictionary<string, XDocument> Projects { get; } = Directory
        .GetFiles(Repository.PathOf("src"), "*.csproj", SearchOption.AllDirectories)
        .ToDictionary(path => Path.GetFileNameWithoutExtension(path), XDocument.Load, StringComparer.Ordinal);

    /// <summary>Names in the Include of all items of a kind, without folder and extension of a project file.</summary>
    public static IReadOnlyList<string> Items(string room, string kind) =>
    [
        .. Projects[room].Descendants(kind).Select(item => (string)item.Attribute("Include")!)
            .Select(name => kind == "ProjectReference" ? Path.GetFileNameWithoutExtension(name.Replace('\\', '/')) : name),
    ];

    /// <summary>The compiled room.</summary>
    public static Assembly Compiled(string room) => Assembly.Load((string?)Projects[room].Descendants("AssemblyName").FirstOrDefault() ?? room);

    /// <summary>The room that an assembly of this program belongs to; null for others.</summary>
    public static string? Of(string assembly) =>
        Projects.Keys.FirstOrDefault(room => ((string?)Projects[room].Descendants("AssemblyName").FirstOrDefault() ?? room) == assembly);
}
