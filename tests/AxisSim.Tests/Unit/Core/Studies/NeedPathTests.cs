using AxisSim.Core;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>The path of a move through the torque-speed plane, as the figure draws it.</summary>
public sealed class NeedPathTests
{
    private const double SlewSeconds = 60.0;

    // A figure is some hundreds of pixels wide, so points a fiftieth of a ramp apart make a smooth line; at even times alone two points would do for all of the ramp.
    private const double Gap = 0.02;

    [Theory]
    [InlineData(0.3, RampShape.Trapezoid)]
    [InlineData(0.3, RampShape.SCurve)]
    [InlineData(20.0, RampShape.Trapezoid)]
    public void A_ramp_is_smooth_however_short_it_is_in_a_long_slew(double rampSeconds, RampShape shape)
    {
        MountSetup setup = Slew(rampSeconds, shape);
        var plan = new MovePlan(setup);
        Assert.Equal(SlewSeconds, plan.SlewSeconds, 1e-6);
        IReadOnlyList<NeedPoint> path = CurveStudy.Path(setup, MountAxis.Polar, plan);
        double top = path.Max(point => point.SpeedRadiansPerSecond);
        Assert.InRange(path[0].SpeedRadiansPerSecond, 0.0, Gap * top);
        Assert.InRange(path[^1].SpeedRadiansPerSecond, 0.0, Gap * top);
        Assert.All(path.Zip(path.Skip(1)), pair => Assert.InRange(Math.Abs(pair.Second.SpeedRadiansPerSecond - pair.First.SpeedRadiansPerSecond), 0.0, Gap * top));
        Assert.All(path.Zip(path.Skip(1)), pair => Assert.True(pair.Second.TimeSeconds > pair.First.TimeSeconds));
        Assert.InRange(path.Count, 400, 1500);
    }

    /// <summary>No swing between two points is lost.</summary>
    [Fact]
    public void Extremes_of_the_need_are_on_the_path()
    {
        MountSetup setup = Slew(0.3, RampShape.Trapezoid);
        var plan = new MovePlan(setup);
        NeedPoint[] all = [.. new NeedRun(setup, MountAxis.Polar, plan).Until(plan.SlewSeconds)];
        IReadOnlyList<NeedPoint> path = CurveStudy.Path(setup, MountAxis.Polar, plan);
        Assert.Equal(all.Max(point => point.TorqueNewtonMetres), path.Max(point => point.TorqueNewtonMetres));
        Assert.Equal(all.Min(point => point.TorqueNewtonMetres), path.Min(point => point.TorqueNewtonMetres));
    }

    private static MountSetup Slew(double rampSeconds, RampShape shape)
    {
        const double Rate = 3.0 * BenchmarkCase.Degree;
        AxisModel axis = BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = Rate, Ramp = Ramp.OfSeconds(rampSeconds), Shape = shape } };
        return BenchmarkCase.Setup(axis, -4.0, Rate * (SlewSeconds - rampSeconds), 3.0);
    }
}
