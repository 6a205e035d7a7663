using AxisSim.Plots.Drawing;
using AxisSim.Report.Sheets;

namespace AxisSim.Report.Pages;

/// <summary>The content of a report, without any layout.</summary>
internal sealed record ReportPage
{
    /// <summary>Name of the scenario.</summary>
    public required string Name { get; init; }

    /// <summary>What the scenario is about; may be empty.</summary>
    public string About { get; init; } = "";

    /// <summary>The settings sheet.</summary>
    public required SettingsSheet Sheet { get; init; }

    /// <summary>What stands right below the verdict: each axis in a sentence, and warnings.</summary>
    public required IReadOnlyList<Block> Lead { get; init; }

    /// <summary>Why, and what to try.</summary>
    public required IReadOnlyList<Section> Reasons { get; init; }

    /// <summary>The figures, each with its file name as a key.</summary>
    public required IReadOnlyList<(string Key, IFigure Figure)> Figures { get; init; }

    /// <summary>Numbers, notes and cautions.</summary>
    public required IReadOnlyList<Section> Rest { get; init; }

    /// <summary>Names and values of where all this comes from.</summary>
    public required IReadOnlyList<(string Name, string Value)> Provenance { get; init; }
}

/// <summary>A part of a page under its heading.</summary>
/// <param name="Heading">Heading.</param>
/// <param name="Blocks">What stands below it.</param>
internal sealed record Section(string Heading, IReadOnlyList<Block> Blocks);
