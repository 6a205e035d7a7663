using AxisSim.Core.Mount;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>Shipped scenarios with settings laid over them.</summary>
internal static class Setups
{
    public const double Degree = Math.PI / 180.0;

    public static Scenario Scenario(string name, params string[] settings)
    {
        ScenarioResult result = ScenarioReader.ReadFile(Repository.PathOf("scenarios", name + ".toml"), settings);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems));
        return result.Scenario;
    }

    public static MountSetup Of(string name, params string[] settings) => Scenario(name, settings).Setup;
}
