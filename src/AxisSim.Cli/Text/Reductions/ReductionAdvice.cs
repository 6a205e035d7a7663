using AxisSim.Cli.Input;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;

namespace AxisSim.Cli.Text.Reductions;

/// <summary>What to try next, as commands to copy.</summary>
internal static class ReductionAdvice
{
    /// <summary>Writes it.</summary>
    public static void Write(Page page, IReadOnlyList<ReductionReport> reports)
    {
        page.Heading("What to try");
        foreach (ReductionReport report in reports)
        {
            (string words, string setting) = AgainstTheBound(report);
            page.Text($"{Say.Sentence(report.Axis.Words())}: {words}", indent: 2);
            if (setting.Length > 0)
            {
                page.Copyable(CommandText.Of("reduction", report.File, report.Settings, [setting]) + $" --axis {report.Axis.Key()}", indent: 4);
            }

            if (report.StageKey is { } key && Middle(report) is { } middle)
            {
                page.Text($"{Say.Sentence(report.Axis.Words())}: the middle of what does on paper is {Say.Number(middle)}; see the whole move there:", indent: 2);
                page.Copyable(CommandText.Of("simulate", report.File, report.Settings, [$"{key}={Say.Number(report.StageRatioAt(middle))}"]), indent: 4);
            }
        }

        page.Text("Another reduction changes backlash and stiffness seen at the axis and the noise of the belt as well, and a belt has only so many ratios: the makers' data come before these figures. A slew rate with margin says nothing of settling and heat: look at both with axissim simulate.", indent: 2);
    }

    /// <summary>The middle of what does on paper; null when the scenario's own reduction does already.</summary>
    private static double? Middle(ReductionReport report)
    {
        ReductionWindow window = report.Result.Window;
        double own = report.Result.Own.Facts.TotalReduction;
        return window.Least <= window.Most && double.IsFinite(window.Most) && (own < window.Least || own > window.Most) ? Math.Sqrt(window.Least * window.Most) : null;
    }

    private static (string Words, string Setting) AgainstTheBound(ReductionReport report)
    {
        string axis = report.Axis.Key();
        return report.Result.Own.Bound switch
        {
            Limit.PulseRate when report.Microsteps >= 4 => ("fewer microsteps ask for fewer pulses; see what binds then:", $"{axis}.drive.microsteps={Say.Count(report.Microsteps / 4)}"),
            Limit.PulseRate => ("only a controller with faster pulses, or less reduction, gives more speed.", ""),
            Limit.SupplyVoltage => ("more supply voltage, as far as the manual of the drive allows; see what half as much again would do:", $"{axis}.drive.supply_voltage={Say.Number(1.5 * report.SupplyVolts)} V"),
            Limit.Swings when report.FullSteps => ("microstep throughout, and see what binds then:", $"{axis}.drive.changeover=never"),
            Limit.Imbalance => ("balance better: axissim balance says where the counterweight belongs.", ""),
            Limit.Inertia => ("a longer ramp asks for less; see twice the ramp:", $"{axis}.motion.ramp_time={Say.Number(2.0 * report.RampSeconds)} s"),
            Limit.Friction => ("more reduction, or less friction: worm and bearings take most of the torque.", ""),
            Limit.MoveLength => ("a longer move would show more; for this one it is fast enough.", ""),
            _ => ("axissim envelope shows how the ramp changes it.", ""),
        };
    }
}
