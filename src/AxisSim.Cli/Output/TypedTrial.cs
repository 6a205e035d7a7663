using AxisSim.Cli.Text;
using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>A promise made beside settings: that an axis arrives with them and settles, and arrives with a load factor as well.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Settings">The settings as they would be typed, each <c>key=value</c>.</param>
/// <param name="LoadFactor">The load factor.</param>
internal sealed record Promise(MountAxis Axis, IReadOnlyList<string> Settings, double LoadFactor);

/// <summary>Runs settings as they would be typed, before anybody is told to type them.</summary>
internal static class TypedTrial
{
    /// <summary>The load factor of a promise of no more than the load as it is.</summary>
    public const double AsItIs = 1.0;

    /// <summary>
    /// Which promises hold: the scenario is read again with the settings, the axis arrives and settles as the mount is, arrives at the load factor, and the other axis arrives and settles too unless
    /// it fails without them as well.
    /// </summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="promises">The promises.</param>
    /// <param name="options">Step and threads.</param>
    /// <param name="asFile">Whether the settings are to be kept in a settings file, and so are read from one, not typed.</param>
    public static bool[] Hold(Scenario scenario, IReadOnlyList<Promise> promises, QuestionOptions options, bool asFile = false) => Ask(scenario, promises, asFile).Run(options);

    /// <summary>The same as a question.</summary>
    public static Asked<bool[]> Ask(Scenario scenario, IReadOnlyList<Promise> promises, bool asFile = false)
    {
        MountSetup?[] setups = [.. promises.Select(promise => (asFile ? Carry.Read(scenario, promise.Settings) : scenario.With(promise.Settings).Scenario)?.Setup)];
        int[] read = [.. Enumerable.Range(0, promises.Count).Where(i => setups[i] is not null)];
        int[] others = [.. read.Where(i => Has(setups[i]!, promises[i].Axis.Other()))];

        // The other axis as it is without the settings, to see whether it fails anyway.
        MountAxis[] plain = [.. others.Select(i => promises[i].Axis.Other()).Distinct()];
        BatchCase[] settling =
        [
            .. read.Select(i => new BatchCase(setups[i]!, promises[i].Axis)),
            .. others.Select(i => new BatchCase(setups[i]!, promises[i].Axis.Other())),
            .. plain.Select(axis => new BatchCase(scenario.Setup, axis)),
        ];
        BatchCase[] loaded = [.. read.Select(i => new BatchCase(setups[i]!.Loaded(promises[i].Axis, promises[i].LoadFactor), promises[i].Axis))];
        return new Asked<bool[]>(
            [.. settling.Select(one => one with { Depth = BatchDepth.Settling }), .. loaded.Select(one => one with { Depth = BatchDepth.Outcome })],
            results =>
            {
                bool Arrives(int index) => results[index].End == MoveEnd.Arrives;
                bool[] holds = new bool[promises.Count];
                for (int k = 0; k < read.Length; k++)
                {
                    int beside = Array.IndexOf(others, read[k]);
                    bool other = beside < 0 || Arrives(read.Length + beside) || !Arrives(read.Length + others.Length + Array.IndexOf(plain, promises[read[k]].Axis.Other()));
                    holds[read[k]] = Arrives(k) && Arrives(settling.Length + k) && other;
                }

                return holds;
            });
    }

    /// <summary>The first of some lines, in their order, with which every axis that it names arrives and settles and bears a load factor; null when none does. A line is run only if those before it fail.</summary>
    public static TypedLine? First(Scenario scenario, IEnumerable<TypedLine> lines, double loadFactor, QuestionOptions options, bool asFile = false) =>
        lines.FirstOrDefault(line => Array.TrueForAll(Hold(scenario, [.. line.Axes.Select(axis => new Promise(axis, line.Settings, loadFactor))], options, asFile), holds => holds));

    private static bool Has(MountSetup setup, MountAxis axis) => (axis == MountAxis.Polar ? setup.Polar : setup.Declination) is not null;
}
