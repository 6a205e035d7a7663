using System.Text.RegularExpressions;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.EndToEnd.Promises;

/// <summary>A line to copy with settings in it, and what is said beside it.</summary>
/// <param name="Command">The command that stands in the line; empty where the line is settings alone.</param>
/// <param name="Axis">The axis that the line is limited to; null for none.</param>
/// <param name="Settings">The settings.</param>
/// <param name="Section">The heading above it; empty at the top.</param>
/// <param name="Beside">The words before it since the line before or the heading, in one line.</param>
internal sealed partial record PrintedLine(string Command, string? Axis, IReadOnlyList<string> Settings, string Section, string Beside)
{
    /// <summary>All such lines of a page.</summary>
    public static IReadOnlyList<PrintedLine> Of(string page)
    {
        var lines = new List<PrintedLine>();
        string section = "", beside = "";
        bool gap = false;
        foreach (string line in page.Split('\n'))
        {
            if (line.Length == 0)
            {
                gap = true;
                continue;
            }

            if (line.Contains("--set \"", StringComparison.Ordinal))
            {
                string command = Whole().Match(line) is { Success: true } whole ? whole.Groups[1].Value : "";
                string? axis = Only().Match(line) is { Success: true } only ? only.Groups[1].Value : null;
                lines.Add(new PrintedLine(command, axis, [.. Setting().Matches(line).Select(match => match.Groups[1].Value)], section, beside));
                beside = "";
            }
            else if (gap && !line.StartsWith(' '))
            {
                (section, beside) = (line, line);
            }
            else
            {
                beside = (beside + " " + line.Trim()).Trim();
            }

            gap = false;
        }

        return lines;
    }

    /// <summary>The axes that are named as arriving and settling.</summary>
    public IReadOnlyList<MountAxis> Promised => Arriving().Match(Beside) is not { Success: true } match ? []
        : [.. new[] { MountAxis.Polar, MountAxis.Declination }.Where(axis => match.Groups[1].Value.Contains(axis.Words(), StringComparison.Ordinal))];

    [GeneratedRegex(@"--set ""([^""]+)""")]
    private static partial Regex Setting();

    [GeneratedRegex(@"^\s*axissim (\w+) ")]
    private static partial Regex Whole();

    [GeneratedRegex(@"--axis (\w+)\s*$")]
    private static partial Regex Only();

    [GeneratedRegex(@"(?:With this, run as typed, |With all of it, run as typed, |Run as typed, |instead of [^:]*: )((?:the (?:polar|declination) axis(?: and )?)+) arrives? and settles?")]
    private static partial Regex Arriving();
}
