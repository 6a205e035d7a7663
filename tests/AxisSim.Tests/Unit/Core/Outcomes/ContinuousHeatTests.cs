using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Outcomes;

/// <summary>The hottest of what an axis may do without end.</summary>
public sealed class ContinuousHeatTests
{
    private const double KelvinPerWatt = 5.0;

    /// <summary>By hand: 1.2 A through 1.5 ohm are 2.16 W; without the copper's rise 20 + 5 x 2.16 = 30.8, with it 20 + 10.8/(1 - 10.8 x 0.00393) = 31.28 degC.</summary>
    [Theory]
    [InlineData(2.0, 1.2, 0.5, ContinuousDuty.Tracking, 31.28)]
    [InlineData(2.0, 0.5, 1.2, ContinuousDuty.Holding, 31.28)]
    [InlineData(2.16, 1.0, 0.5, ContinuousDuty.Slewing, 31.28)]
    public void The_hottest_duty_counts_and_is_named(double slewWatts, double tracking, double holding, ContinuousDuty duty, double celsius)
    {
        ContinuousHeat heat = ContinuousHeat.Of(Setup(tracking, holding), MountAxis.Polar, slewWatts);
        Assert.Equal(duty, heat.Duty);
        Assert.Equal(celsius, heat.Celsius, 0.005);
    }

    /// <summary>The declination axis does not track, so its tracking current heats nothing; a loss that runs away is the hottest of all.</summary>
    [Fact]
    public void Only_the_polar_axis_tracks_and_a_runaway_counts()
    {
        MountSetup polar = Setup(1.5, 0.5);
        MountSetup both = polar with { Declination = polar.Polar };
        Assert.Equal(ContinuousDuty.Slewing, ContinuousHeat.Of(both, MountAxis.Declination, 2.0).Duty);
        ContinuousHeat runaway = ContinuousHeat.Of(Setup(8.0, 0.5), MountAxis.Polar, 2.0);
        Assert.Equal((double.PositiveInfinity, ContinuousDuty.Tracking), (runaway.Celsius, runaway.Duty));
    }

    private static MountSetup Setup(double tracking, double holding) => BenchmarkCase.Setup(
        BenchmarkCase.Axis with
        {
            Motor = BenchmarkCase.Motor with { GivenThermalResistanceKelvinPerWatt = KelvinPerWatt },
            Drive = BenchmarkCase.Drive with { TrackingCurrentAmperes = tracking, HoldingCurrentAmperes = holding },
        },
        4.0,
        0.1,
        1.0);
}
