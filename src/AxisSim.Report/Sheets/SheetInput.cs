using AxisSim.Core.Mount;

namespace AxisSim.Report.Sheets;

/// <summary>All that a sheet is made of.</summary>
internal sealed record SheetInput
{
    /// <summary>Name of the scenario.</summary>
    public required string Name { get; init; }

    /// <summary>Name of the site; may be empty.</summary>
    public string Site { get; init; } = "";

    /// <summary>Program and version.</summary>
    public required string Program { get; init; }

    /// <summary>SHA-256 of scenario and settings, in hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Settings laid over the scenario.</summary>
    public IReadOnlyList<string> Settings { get; init; } = [];

    /// <summary>The date to print.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The verdict in a sentence.</summary>
    public required string Verdict { get; init; }

    /// <summary>The mount and its move.</summary>
    public required MountSetup Setup { get; init; }

    /// <summary>Latitude, rad; negative south.</summary>
    public required double LatitudeRadians { get; init; }

    /// <summary>What to type into the user's own controller; null when the scenario names none.</summary>
    public TypedInput? Typed { get; init; }

    /// <summary>The axes, polar first.</summary>
    public required IReadOnlyList<SheetAxis> Axes { get; init; }
}
