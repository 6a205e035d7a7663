using AxisSim.Cli.Input;
using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Moves;

/// <summary>A key that the scenario leaves out and that decides a verdict.</summary>
/// <param name="Path">Dotted path of the key.</param>
/// <param name="Taken">What was taken for it.</param>
/// <param name="Settings">A setting within the usual range that changes the verdict, as it would be typed.</param>
/// <param name="Axis">The axis whose verdict changes.</param>
/// <param name="End">How its move then ends.</param>
internal sealed record DecidingKey(string Path, string Taken, IReadOnlyList<string> Settings, MountAxis Axis, MoveEnd End);

/// <summary>Names what the scenario leaves out and what would decide otherwise.</summary>
internal static class DecidingText
{
    /// <summary>Writes the part, where there is something to say.</summary>
    public static void Write(Page page, MoveReport report)
    {
        if (report.Deciding.Count == 0)
        {
            return;
        }

        page.Heading("Not given, and it decides");
        page.Text("These keys are not in the file. Within what is usual for each, the verdict would be another: measure them, or ask the maker, before you rely on it.");
        foreach (DecidingKey key in report.Deciding)
        {
            page.Item("-", $"{key.Path}, taken as {key.Taken}: otherwise the {key.Axis.Words()} {Does(key.End)}.");
            page.Copyable(string.Join(' ', key.Settings.Select(CommandText.Set)), indent: 5);
        }
    }

    private static string Does(MoveEnd end) => end switch
    {
        MoveEnd.Arrives => "arrives and settles",
        MoveEnd.Stalls => "stalls",
        MoveEnd.ClutchSlips => "slips in its clutch",
        MoveEnd.DoesNotSettle => "arrives, but does not settle in the time watched",
        _ => "cannot be simulated",
    };
}
