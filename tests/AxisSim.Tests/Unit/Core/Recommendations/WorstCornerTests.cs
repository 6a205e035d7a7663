using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>The worst corner of the search against looking at all 64.</summary>
public sealed class WorstCornerTests
{
    /// <summary>A heavy load in a hurry, at a supply that limits it, and one with much friction: the worst corner has the least load factor of all.</summary>
    [Theory]
    [Trait("speed", "slow")]
    [InlineData("heavy-reflector", 6.5, 0.4)]
    [InlineData("heavy-reflector-stalls", 3.0, 0.8)]
    public void It_is_the_worst_of_all_corners(string name, double degreesPerSecond, double ramp)
    {
        Scenario scenario = Setups.Scenario(name, "tolerances.imbalance=30 %", "tolerances.inertia=20 %");
        MountSetup setup = scenario.Setup;
        CheckMove move = CheckMoves.Of(setup, MountAxis.Polar, scenario.LatitudeRadians).First(one => one.Kind == CheckMoveKind.OpposedAtStart);
        AxisSettings settings = AxisSettings.Of(setup, MountAxis.Polar) with { SlewRateRadiansPerSecond = degreesPerSecond * Setups.Degree, RampSeconds = ramp };
        var ask = new Asker(new QuestionOptions());
        WorstCorner found = WorstCorner.Find(ask, setup, settings, [move], scenario.Tolerances, 1.3, RateFinder.ProbeRadians);
        double most = RateFinder.ProbeRadians(settings);
        double[] all = CornerFactors.Of(
            ask,
            [.. Enumerable.Range(0, ToleranceFactors.Corners).Select(mask => (Func<double, IEnumerable<BatchCase>>)(factor => [new LoadCase(move, ToleranceFactors.Corner(scenario.Tolerances, mask)).With(setup, settings, factor, most)]))],
            1.3);
        Assert.True(all.Max() > all.Min() + 0.1, "the corners differ, so that the test means something");
        Assert.Equal(all.Min(), found.LoadFactor);
        Assert.True(found.Looked < ToleranceFactors.Corners / 2, $"{found.Looked} corners looked at");
    }

    [Fact]
    public void Corners_are_the_ends_of_the_ranges()
    {
        var tolerances = new Tolerances();
        ToleranceFactors hard = ToleranceFactors.Corner(tolerances, ToleranceFactors.HardMask);
        Assert.Equal(new ToleranceFactors(1.1, 1.3, 1.1, 0.95, 0.9, 1.05, 0.5), hard);
        Assert.Equal(ToleranceFactors.Corners, Enumerable.Range(0, ToleranceFactors.Corners).Select(mask => ToleranceFactors.Corner(tolerances, mask)).Distinct().Count());
        MountSetup setup = Setups.Of("nominal"), changed = hard.Apply(setup, MountAxis.Polar);
        Assert.Equal(24.0 * 0.95, changed.Polar!.Drive.SupplyVolts, 1e-12);
        Assert.Equal(0.4 * 0.9, changed.Polar.Motor.HoldingTorqueNewtonMetres, 1e-12);
        Assert.Equal(0.8 * 1.3, changed.Polar.Bearings.CoulombNewtonMetres, 1e-12);
        Assert.Equal(1.1, changed.Disturbances.ColdGreaseFactor, 1e-12);
        Assert.Equal(6.0 * 1.05, changed.Load.Inertia(MountAxis.Polar, 0.0), 1e-12);
    }
}
