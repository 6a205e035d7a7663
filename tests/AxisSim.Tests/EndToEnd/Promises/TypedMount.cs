using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.EndToEnd.Promises;

/// <summary>A scenario with settings laid over it as a command line would, and how its axes end.</summary>
internal sealed class TypedMount(string name, IReadOnlyList<string> settings)
{

    public MountSetup Setup { get; } = Read(name, settings);

    public IReadOnlyList<MountAxis> Axes => AxisNames.Of(Setup);

    /// <summary>How an axis ends, settling and all.</summary>
    public BatchResult End(MountAxis axis) => Run(Setup, axis, BatchDepth.Settling);

    /// <summary>How it ends with inertia, imbalance and friction times a factor.</summary>
    public BatchEnd At(MountAxis axis, double factor) => Run(Setup.Loaded(axis, factor), axis, BatchDepth.Outcome).End;

    private static BatchResult Run(MountSetup setup, MountAxis axis, BatchDepth depth) => BatchStudy.Run([new BatchCase(setup, axis)], new BatchOptions { Depth = depth })[0];

    private static MountSetup Read(string name, IReadOnlyList<string> settings)
    {
        ScenarioResult result = ScenarioReader.ReadFile(CommandRuns.PathOf(name), settings);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems.Select(problem => problem.ToString())));
        return result.Scenario.Setup;
    }
}
