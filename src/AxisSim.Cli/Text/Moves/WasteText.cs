using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;

namespace AxisSim.Cli.Text.Moves;

/// <summary>Says when a motor has far more torque than its move needs: that costs money, heat and weight.</summary>
internal static class WasteText
{
    private const double WastedMargin = 0.9;
    private static readonly double[] LessCurrent = [0.5, 0.7];
    private static readonly double[] FasterSlew = [2.0, 1.5];

    /// <summary>Settings to try, for a motor that is not put to use; whoever tells them has run them first.</summary>
    public static IReadOnlyList<CureAdvice> Candidates(MountSetup setup, AxisOutcome outcome)
    {
        if (!Wasted(outcome))
        {
            return [];
        }

        AxisModel model = setup.Axis(outcome.Axis);
        string key = outcome.Axis.Key();
        IEnumerable<CureAdvice> currents = LessCurrent.Select(share => Say.Number(share * model.Drive.SlewCurrentAmperes))
            .Select(current => new CureAdvice($"{current} A of slew current instead of {Units.Current(model.Drive.SlewCurrentAmperes)}:", [$"{key}.drive.slew_current={current} A"]));
        IEnumerable<CureAdvice> rates = FasterSlew.Select(factor => Say.Number(factor * Units.Degrees(model.Motion.SlewRateRadiansPerSecond)))
            .Select(rate => new CureAdvice($"{rate} deg/s instead of {Units.Rate(model.Motion.SlewRateRadiansPerSecond)}:", [$"{key}.motion.slew_rate={rate} deg/s"]));
        return [.. currents, .. rates];
    }

    /// <summary>Writes the remark, unless the motor is put to use.</summary>
    public static void Write(Page page, AxisOutcome outcome, AxisAdvice advice)
    {
        if (!Wasted(outcome) || advice.Savings.Count == 0)
        {
            return;
        }

        // The boldest of each kind that holds.
        CureAdvice[] told = [.. advice.Savings.GroupBy(one => one.Settings[0].Split('=')[0]).Select(group => group.First())];
        page.Text($"The motor has far more torque than this move needs, which is {Units.Percent(1.0 - outcome.Margin.Value)} of it at the most. With {(told.Length == 1 ? "this" : "either of these")} the move still arrives and settles, and bears a load factor of {Say.Number(LoadFactor.Usual)}:");
        CureText.Items(page, told);
    }

    private static bool Wasted(AxisOutcome outcome) => outcome.LoadFactor is { AtLeast: true } && outcome.Margin.Value > WastedMargin;
}
