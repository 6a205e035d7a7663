using System.Globalization;
using System.Text;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>The stalling scenario with other ramps: the greatest torque of the swing, and what comes of it.</summary>
internal static class RampTable
{
    private const double SwingSeconds = 0.3;

    private static readonly (double Ramp, string Shape)[] s_ramps =
    [
        (0.4, "trapezoid"), (0.4, "s-curve"), (0.6, "trapezoid"), (0.6, "s-curve"), (0.8, "trapezoid"), (0.8, "s-curve"), (1.3, "trapezoid"), (1.3, "s-curve"), (2.0, "trapezoid"),
    ];

    private static (AxisResult Result, StepRows Steps) Run(double ramp, string shape) => Shipped.PolarSteps(
        "heavy-reflector-stalls", explain: true, string.Create(CultureInfo.InvariantCulture, $"polar.motion.ramp_time={ramp} s"), $"polar.motion.shape={shape}");

    /// <summary>Greatest torque in the worm mesh from the start until sync is lost, or until the swing at the end of the ramp is over, N m.</summary>
    private static double SwingPeak(AxisResult result, StepRows steps, double ramp) =>
        Peak(steps, result.Outcome.Loss?.TimeSeconds ?? (ramp + SwingSeconds));

    /// <summary>Greatest torque in the worm mesh up to a time, N m.</summary>
    public static double Peak(StepRows steps, double end) =>
        steps[TraceQuantity.MeshTorqueNewtonMetres].Zip(steps.TimeSeconds).Where(sample => sample.Second <= end).Max(sample => Math.Abs(sample.First));

    public static string Markdown()
    {
        var text = new StringBuilder();
        text.Append("| ramp | shape | greatest acceleration, deg/s^2 | greatest torque in the worm while speeding up, N m | least margin | verdict |\n|---|---|---|---|---|---|\n");
        foreach ((double ramp, string shape) in s_ramps)
        {
            (AxisResult result, StepRows steps) = Run(ramp, shape);
            double acceleration = result.Outcome.Facts.AccelerationRadiansPerSecondSquared * 180.0 / Math.PI;
            text.Append(CultureInfo.InvariantCulture, $"| {ramp:0.0} s | {shape} | {acceleration:0.0} | {SwingPeak(result, steps, ramp):0.0} | {100.0 * result.Outcome.Margin.Value:0.0} % | {EstimateTable.Words(result.Outcome)} |\n");
        }

        return text.ToString();
    }
}
