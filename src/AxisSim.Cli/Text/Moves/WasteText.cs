using AxisSim.Cli.Input;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;

namespace AxisSim.Cli.Text.Moves;

/// <summary>Says when a motor has far more torque than its move needs: that costs money, heat and weight.</summary>
internal static class WasteText
{
    private const double WastedMargin = 0.9;

    // A first try: half the current leaves half the torque; twice the rate halves the time of a long slew.
    private const double LessCurrent = 0.5;
    private const double FasterSlew = 2.0;

    /// <summary>Writes the remark, unless the motor is put to use.</summary>
    public static void Write(Page page, MountSetup setup, AxisOutcome outcome)
    {
        if (outcome.LoadFactor is not { AtLeast: true } || outcome.Margin.Value <= WastedMargin)
        {
            return;
        }

        AxisModel model = setup.Axis(outcome.Axis);
        string key = outcome.Axis.Key();
        double current = LessCurrent * model.Drive.SlewCurrentAmperes, rate = FasterSlew * Units.Degrees(model.Motion.SlewRateRadiansPerSecond);
        page.Text($"The motor has far more torque than this move needs, which is {Units.Percent(1.0 - outcome.Margin.Value)} of it at the most: a smaller motor, less current or a faster slew would do. To try one or the other:");
        page.Copyable(CommandText.Set($"{key}.drive.slew_current={Say.Number(current)} A"), indent: 5);
        page.Copyable(CommandText.Set($"{key}.motion.slew_rate={Say.Number(rate)} deg/s"), indent: 5);
    }
}
