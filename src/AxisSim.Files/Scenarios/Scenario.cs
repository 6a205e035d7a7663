using AxisSim.Core.Controllers;
using AxisSim.Core.Mount;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Payloads;

namespace AxisSim.Files.Scenarios;

/// <summary>A checked scenario, in SI units.</summary>
public sealed record Scenario
{
    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>What it is about; may be empty.</summary>
    public required string Description { get; init; }

    /// <summary>Name of the site; may be empty.</summary>
    public required string SiteName { get; init; }

    /// <summary>Latitude, rad; negative south.</summary>
    public required double LatitudeRadians { get; init; }

    /// <summary>The mount and its move.</summary>
    public required MountSetup Setup { get; init; }

    /// <summary>Bodies and counterweight; null when lumped loads stand in for them.</summary>
    public PayloadModel? Payload { get; init; }

    /// <summary>Lumped load of the polar axis; null with bodies.</summary>
    public LumpedLoad? PolarLoad { get; init; }

    /// <summary>Lumped load of the declination axis; null with bodies.</summary>
    public LumpedLoad? DeclinationLoad { get; init; }

    /// <summary>What is not known exactly.</summary>
    public Tolerances Tolerances { get; init; } = new();

    /// <summary>The numbers that the user's own controller takes; null when the scenario names none.</summary>
    public ControllerScales? Controller { get; init; }

    /// <summary>What the reader made of the figures, for people: wiring, rms currents, conversions of speeds, defaults that matter.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What it leaves out although hardware differs in it.</summary>
    public IReadOnlyList<AssumedKey> Assumed { get; init; } = [];

    /// <summary>SHA-256 of the file's text and the settings, in lower-case hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>What was laid over the file.</summary>
    internal LaidOver Laid => Source?.Laid ?? LaidOver.Nothing;

    /// <summary>What was laid over the file and holds, by settings files and settings alike, each <c>key=value</c>.</summary>
    internal IReadOnlyList<string> InForce { get; init; } = [];

    /// <summary>What it was read from; null for one that was put together by hand.</summary>
    internal ScenarioSource? Source { get; init; }

    /// <summary>The same scenario with more settings laid over it, read as the command line would read them, without touching the file again.</summary>
    /// <exception cref="InvalidOperationException">The scenario was not read from a text.</exception>
    public ScenarioResult With(IReadOnlyList<string> settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Under(Laid.With(settings));
    }

    /// <summary>What is laid over the file and holds, as it was written.</summary>
    internal IReadOnlyList<Entry> LaidEntries() => Source is not { } source ? [] : [.. ScenarioReader.Lay(source.Text, source.File, source.Laid).Laid];

    /// <summary>Settings that keep the declination axis as it is where settings are for the polar axis alone and it is like that one; none where it would not change.</summary>
    /// <param name="settings">Settings for the polar axis, each <c>key=value</c>.</param>
    public IReadOnlyList<string> KeptDeclination(IReadOnlyList<string> settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Source is not { } source ? [] : LikeAxis.Kept(ScenarioReader.Lay(source.Text, source.File, source.Laid), [.. settings.Select(setting => new NotedSetting(setting, "").Path)]);
    }

    /// <summary>The same file with something else laid over it, without touching the file again.</summary>
    /// <exception cref="InvalidOperationException">The scenario was not read from a text.</exception>
    public ScenarioResult Under(LaidOver laid)
    {
        ScenarioSource source = Source ?? throw new InvalidOperationException("only a scenario that was read from a text can be read again");
        return ScenarioReader.ReadText(source.Text, source.File, laid);
    }
}

/// <summary>What a scenario was read from.</summary>
/// <param name="Text">Text of the file.</param>
/// <param name="File">Its name, for messages.</param>
/// <param name="Laid">What was laid over it.</param>
internal sealed record ScenarioSource(string Text, string File, LaidOver Laid);
