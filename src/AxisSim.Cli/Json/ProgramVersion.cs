using System.Reflection;

namespace AxisSim.Cli.Json;

/// <summary>Name and version of the program for documents.</summary>
/// <param name="Name">Name.</param>
/// <param name="Version">Version.</param>
internal sealed record ProgramVersion(string Name, string Version)
{
    /// <summary>This program.</summary>
    public static ProgramVersion Record { get; } = new(
        "axissim",
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "unknown");
}
