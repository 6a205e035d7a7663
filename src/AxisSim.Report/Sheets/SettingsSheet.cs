namespace AxisSim.Report.Sheets;

/// <summary>The content of a settings sheet, without any layout: the same for paper and screen.</summary>
internal sealed record SettingsSheet
{
    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>A warning that must be read before anything else; null when the move arrives.</summary>
    public string? Warning { get; init; }

    /// <summary>The verdict in a sentence.</summary>
    public required string Verdict { get; init; }

    /// <summary>The axes, in the order of all values below.</summary>
    public required IReadOnlyList<string> Axes { get; init; }

    /// <summary>The numbers in a user's own units; null when the scenario names no controller.</summary>
    public SheetTyped? Typed { get; init; }

    /// <summary>The numbers to enter.</summary>
    public required IReadOnlyList<SheetGroup> Settings { get; init; }

    /// <summary>What to know about those numbers.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What to check before power, in order.</summary>
    public required IReadOnlyList<string> Checks { get; init; }

    /// <summary>The sequence from power on to the full slew.</summary>
    public required IReadOnlyList<SheetStep> Steps { get; init; }

    /// <summary>Cautions.</summary>
    public required string Caution { get; init; }

    /// <summary>Where all this comes from.</summary>
    public required string Provenance { get; init; }
}

/// <summary>Numbers in the units of a user's own controller.</summary>
/// <param name="Title">Title.</param>
/// <param name="Settings">The numbers to type, each with what one counts in place of a unit.</param>
/// <param name="Verdict">What the move does with them.</param>
/// <param name="Results">Figures of that move.</param>
/// <param name="Notes">How they were rounded, and which could not be.</param>
internal sealed record SheetTyped(string Title, IReadOnlyList<SheetRow> Settings, string Verdict, IReadOnlyList<SheetRow> Results, IReadOnlyList<string> Notes);

/// <summary>Numbers that belong together.</summary>
/// <param name="Name">What they are about.</param>
/// <param name="Rows">The numbers.</param>
internal sealed record SheetGroup(string Name, IReadOnlyList<SheetRow> Rows);

/// <summary>One number of each axis.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Unit">Unit; may be empty.</param>
/// <param name="Values">A value for each axis.</param>
internal sealed record SheetRow(string Name, string Unit, IReadOnlyList<string> Values);

/// <summary>One step of the sequence.</summary>
/// <param name="Title">Its name.</param>
/// <param name="Do">What to do.</param>
/// <param name="Expected">What to expect, to be held against what is measured.</param>
/// <param name="StopIf">The signs that something is wrong, and what they mean.</param>
internal sealed record SheetStep(string Title, string Do, IReadOnlyList<SheetRow> Expected, string StopIf);
