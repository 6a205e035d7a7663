using AxisSim.Core.Controllers;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Unit.Core.Controllers;

/// <summary>What controllers ask for, against figures worked out by hand.</summary>
public sealed class ControllerFiguresTests
{
    // Some operations with doubles.
    private const double Rounding = 1e-12;

    // The sidereal figures by hand have this many digits.
    private const double HandDigits = 1e-6;

    private static readonly AxisModel s_axis = SampleAxis.Model;
    private static readonly ControllerFigures s_figures = new(s_axis);

    [Fact]
    public void Pulses_of_every_shaft()
    {
        // 400 x 64 = 25600; x 1.5 = 38400; x 144 = 5529600; / 360 = 15360; / 3600 = 4.2667.
        Assert.Equal(25600, s_figures.PulsesPerMotorTurn);
        Near(38400.0, s_figures.PulsesPerWormTurn);
        Near(5529600.0, s_figures.PulsesPerAxisTurn);
        Assert.Equal("5529600", s_figures.ExactPulsesPerAxisTurn.ToString());
        Assert.Equal("216", s_figures.ExactReduction.ToString());
        Near(15360.0, s_figures.Pulses(SampleAxis.Degree));
        Near(15360.0 / 3600.0, s_figures.Pulses(SampleAxis.Degree / 3600.0));
        Near(76.8, s_figures.PulsesPerEncoderCount); // 5529600 / 72000
    }

    [Fact]
    public void Sidereal_rate_as_pulses_and_period()
    {
        // 5529600 pulses in a sidereal day of 86164.0905 s.
        Assert.Equal(64.175226, s_figures.SiderealPulsesPerSecond, HandDigits);
        Assert.Equal(0.015582337, s_figures.PulseSeconds(SkyRates.MeanSiderealRadiansPerSecond), HandDigits * 0.0156);
        Assert.Equal(0.5 * 15.0410686, HandRates.RadiansPerSecond(0.5) / SampleAxis.Degree * 3600.0, HandDigits);
    }

    [Fact]
    public void Acceleration_in_every_unit_and_the_way_of_a_ramp()
    {
        // 3 deg/s in 1.5 s: 2 deg/s2, x 15360 = 30720 pulses/s2, / 64 = 480 full steps/s2; mean 1.5 deg/s for 1.5 s: 2.25 deg.
        double acceleration = s_axis.Motion.PeakAcceleration;
        Near(2.0 * SampleAxis.Degree, acceleration);
        Near(30720.0, s_figures.Pulses(acceleration));
        Near(480.0, s_figures.FullSteps(acceleration));
        Near(2.25 * SampleAxis.Degree, s_figures.RampRadians);

        // From 0.6 deg/s on: mean 1.8 deg/s, 2.7 deg; an S-curve as well.
        AxisMotion started = s_axis.Motion with { StartRateRadiansPerSecond = 0.6 * SampleAxis.Degree };
        Near(2.7 * SampleAxis.Degree, new ControllerFigures(s_axis with { Motion = started }).RampRadians);
        Near(2.7 * SampleAxis.Degree, new ControllerFigures(s_axis with { Motion = started with { Shape = RampShape.SCurve } }).RampRadians);
    }

    [Fact]
    public void The_way_of_a_ramp_is_that_of_the_plan()
    {
        foreach (RampShape shape in Enum.GetValues<RampShape>())
        {
            AxisMotion motion = s_axis.Motion with { Shape = shape, StartRateRadiansPerSecond = 0.2 * SampleAxis.Degree };
            double way = 2.0, full = 3.0 * SampleAxis.Degree;
            AxisSim.Core.Motion.MotionProfile plan = AxisSim.Core.Motion.MotionProfile.Create(way, motion);

            // What the whole move takes more than its way at the full rate is what both ramps lose.
            double lost = (plan.DurationSeconds - (way / full)) * full;
            double ramps = 2.0 * ((motion.RampInUseSeconds * full) - new ControllerFigures(s_axis with { Motion = motion }).RampRadians);
            Assert.Equal(ramps, lost, 1e-9);
        }
    }

    [Fact]
    public void Changeover_and_backlash()
    {
        // 400 rpm x 6 / 216 = 11.111 deg/s; 400/60 x 400 = 2666.7 full steps/s.
        AxisModel full = s_axis with { Drive = s_axis.Drive with { ChangeoverRadiansPerSecond = 400.0 * Math.PI / 30.0 } };
        ControllerFigures figures = new(full);
        Near(2400.0 / 216.0 * SampleAxis.Degree, figures.ChangeoverRadiansPerSecond);
        Near(400.0 / 60.0 * 400.0, figures.FullSteps(figures.ChangeoverRadiansPerSecond));
        Assert.True(double.IsPositiveInfinity(s_figures.ChangeoverRadiansPerSecond));

        // 25 arcsec at the worm, 12 arcmin at its shaft over 144: 5 arcsec; 30 arcsec x 4.2667 = 128 pulses.
        Near(30.0 / 3600.0 * SampleAxis.Degree, s_figures.BacklashRadians);
        Near(128.0, s_figures.BacklashPulses);
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, Rounding * Math.Abs(expected));
}
