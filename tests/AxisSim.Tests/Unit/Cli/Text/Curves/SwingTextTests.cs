using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Curves;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Unit.Cli.Text.Curves;

/// <summary>How <c>curve</c> tells the speeds at which small swings grow.</summary>
public sealed class SwingTextTests
{
    private const double FullStep = Math.PI / 200.0;

    [Fact]
    public void Each_band_is_told_with_speeds_frequency_and_what_drives_it()
    {
        double half = 0.5 * 10.0 / FullStep;
        string text = Text([new(10.0, 11.0, 10.0, new SmallSwing(5.0, half)), new(20.0, 20.0001, 20.0, null), new(30.0, 40.0, 35.0, new SmallSwing(1.0, 90.0))], [], 0.01);
        Assert.Contains("Microstepping, small swings of the rotor grow from 95.5 to 105 rpm, 5.73 to 6.3 deg/s at the axis (318 Hz, driven by the steps), about 191 rpm, 11.5 deg/s at the axis (with no running that repeats from step to step) and from 286 to 382 rpm and on, 17.2 to 22.9 deg/s at the axis (90 Hz).", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Full-stepping", text, StringComparison.Ordinal);
        Assert.DoesNotContain("relied on", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_that_swings_with_the_rotor_is_told() =>
        Assert.Contains("(the train has 97 % of the stiffness of the motor's field)", Text([], [], 0.97), StringComparison.Ordinal);

    private static string Text(IReadOnlyList<SwingBand> micro, IReadOnlyList<SwingBand> full, double share)
    {
        var curves = new TorqueSpeedCurves { SpeedsRadiansPerSecond = [1.0, 40.0], Curves = [], Bands = [], Path = [], ChangeoverRadiansPerSecond = double.PositiveInfinity };
        using var writer = new StringWriter();
        SwingText.Write(new Page(writer, colour: false), new CurveReport(MountAxis.Polar, 100.0, curves) { MicrostepSwings = micro, FullStepSwings = full, FullStepRadians = FullStep, TrainStiffnessShare = share });
        return string.Join(' ', writer.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
