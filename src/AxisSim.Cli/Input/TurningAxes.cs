using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>The axes that turn in the move.</summary>
internal static class TurningAxes
{
    /// <summary>The axes asked for that turn in the move: one that rests has no slew rate to look for. A problem is added when none does.</summary>
    public static IReadOnlyList<MountAxis> Of(OptionValues options, MountAxis? asked, MountSetup setup)
    {
        IReadOnlyList<MountAxis> axes = options.Axes(asked, setup);
        List<MountAxis> moving = [.. axes.Where(axis => RateCap.Distance(setup, axis) > 0.0)];
        if (axes.Count > 0 && moving.Count == 0)
        {
            string still = Say.List([.. axes.Select(axis => axis.Words())]);
            options.Problems.Add(new Problem("move", 0, 0, "", $"start and end that are the same for the {still}, so that nothing slews", "a move that turns the axis", $"--set \"move.end_{axes[0].Key()}=...\", or another --axis"));
        }

        return moving;
    }
}
