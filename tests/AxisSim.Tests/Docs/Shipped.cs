using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Docs;

/// <summary>Runs the polar axis of a shipped scenario with settings laid over it.</summary>
internal static class Shipped
{
    public static Scenario Read(string name, params string[] settings)
    {
        ScenarioResult result = ScenarioReader.ReadFile(Repository.PathOf("scenarios", name + ".toml"), settings);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems));
        return result.Scenario;
    }

    public static AxisResult Polar(string name, bool explain, params string[] settings) =>
        MoveStudy.Run(Read(name, settings).Setup, MountAxis.Polar, new MoveOptions { Explain = explain });

    /// <summary>The same with every step.</summary>
    public static (AxisResult Result, StepRows Steps) PolarSteps(string name, bool explain, params string[] settings)
    {
        var steps = new StepRows();
        return (MoveStudy.Run(Read(name, settings).Setup, MountAxis.Polar, new MoveOptions { Explain = explain, EveryStep = steps }), steps);
    }
}
