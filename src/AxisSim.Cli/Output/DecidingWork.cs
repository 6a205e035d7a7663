using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Finds which of the keys that a scenario leaves out would, within their usual ranges, change the verdict on an axis.</summary>
internal static class DecidingWork
{
    /// <summary>The keys, each with the first end of its range that decides otherwise, as a question.</summary>
    public static Asked<IReadOnlyList<DecidingKey>> Ask(Scenario scenario, MoveReport report)
    {
        MountAxis[] axes = [.. report.Results.Where(result => result.Broken is null).Select(result => result.Outcome.Axis)];
        (AssumedKey Key, IReadOnlyList<string> Settings, MountSetup Setup)[] variants =
        [
            .. from key in scenario.Assumed
               from settings in key.Variants
               let setup = scenario.With(settings).Scenario?.Setup
               where setup is not null
               select (key, settings, setup),
        ];
        BatchCase[] cases = [.. axes.Select(axis => new BatchCase(scenario.Setup, axis)), .. variants.SelectMany(variant => axes.Select(axis => new BatchCase(variant.Setup, axis)))];
        return new Asked<IReadOnlyList<DecidingKey>>([.. cases.Select(one => one with { Depth = BatchDepth.Settling })], results => Deciding(axes, variants, [.. results.Select(result => result.End)]));
    }

    private static List<DecidingKey> Deciding(MountAxis[] axes, (AssumedKey Key, IReadOnlyList<string> Settings, MountSetup Setup)[] variants, BatchEnd[] ends)
    {
        var deciding = new List<DecidingKey>();
        for (int i = 0; i < variants.Length; i++)
        {
            for (int a = 0; a < axes.Length; a++)
            {
                BatchEnd end = ends[axes.Length + (i * axes.Length) + a];
                if (end != ends[a] && !deciding.Any(one => one.Path == variants[i].Key.Path && one.Axis == axes[a]))
                {
                    deciding.Add(new DecidingKey(variants[i].Key.Path, variants[i].Key.Taken, variants[i].Settings, axes[a], end));
                }
            }
        }

        return deciding;
    }
}
