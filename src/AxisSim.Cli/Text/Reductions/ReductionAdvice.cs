using AxisSim.Cli.Input;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;

namespace AxisSim.Cli.Text.Reductions;

/// <summary>What to try next, as commands to copy; only what was run as typed is told.</summary>
internal static class ReductionAdvice
{
    /// <summary>Where between the ends of what does on paper another reduction is looked for, as shares of the logarithm, in turn.</summary>
    private static readonly double[] Places = [0.5, 0.3, 0.7, 0.1, 0.9];

    /// <summary>A change that works against what binds.</summary>
    /// <param name="Words">What it does, without a full stop.</param>
    /// <param name="Look">What to look at.</param>
    /// <param name="Settings">The settings; empty when there is nothing to type.</param>
    internal sealed record Against(string Words, string Look, IReadOnlyList<string> Settings);

    /// <summary>Writes it.</summary>
    public static void Write(Page page, IReadOnlyList<ReductionReport> reports)
    {
        page.Heading("What to try");
        foreach (ReductionReport report in reports)
        {
            string axis = Say.Sentence(report.Axis.Words());
            Against against = AgainstTheBound(report);
            page.Text($"{axis}: {Told(report, against)}", indent: 2);
            if (report.AgainstTheBound is { } line)
            {
                page.Copyable(CommandText.Of("reduction", report.File, report.Laid, line.Settings) + $" --axis {report.Axis.Key()}", indent: 4);
            }

            if (!Misses(report))
            {
                continue;
            }

            ReductionWindow window = report.Result.Window;
            string paper = $"{axis}: on paper {Say.Number(window.Least)} to {Say.Number(window.Most)} does";
            page.Text(report.AnotherReduction is { } another ? $"{paper}. With this, run as typed, {another.Promise}; see the whole move there:"
                : report.StageKey is null ? $"{paper}, but there is no stage before the worm to change."
                : $"{paper}, but run as typed the whole move does not arrive and settle at any of the {Say.Count(Places.Length)} places of it that were tried.", indent: 2);
            if (report.AnotherReduction is { } typed)
            {
                page.Copyable(CommandText.Of("simulate", report.File, report.Laid, typed.Settings), indent: 4);
            }
        }

        page.Text("Another reduction changes backlash and stiffness seen at the axis and the noise of the belt as well, and a belt has only so many ratios: the makers' data come before these figures. A slew rate with margin says nothing of settling and heat: look at both with axissim simulate.", indent: 2);
    }

    /// <summary>Reductions that do on paper when the scenario's own does not, the middle first; to be run before they are told.</summary>
    public static IEnumerable<TypedLine> Others(ReductionReport report)
    {
        ReductionWindow window = report.Result.Window;
        return report.StageKey is not { } key || !Misses(report) ? []
            : Places.Select(share => window.Least * Math.Pow(window.Most / window.Least, share))
                .Select(ratio => new TypedLine([report.Axis], [$"{key}={Say.Number(report.StageRatioAt(ratio))}"]));
    }

    /// <summary>What works against what binds; to be run before it is told.</summary>
    public static Against AgainstTheBound(ReductionReport report)
    {
        string axis = report.Axis.Key();
        return report.Result.Own.Bound switch
        {
            Limit.PulseRate when report.Microsteps >= 4 => new("fewer microsteps ask for fewer pulses", "see what binds then", [$"{axis}.drive.microsteps={Say.Count(report.Microsteps / 4)}"]),
            Limit.PulseRate => new("only a controller with faster pulses, or less reduction, gives more speed", "", []),
            Limit.SupplyVoltage => new("more supply voltage, as far as the manual of the drive allows", "see what half as much again would do", Volts(report, axis)),
            Limit.Swings when report.FullSteps => new("microstep throughout", "see what binds then", [$"{axis}.drive.changeover=never"]),
            Limit.Imbalance => new("balance better: axissim balance says where the counterweight belongs", "", []),
            Limit.Inertia => new("a longer ramp asks for less", "see twice the ramp", [$"{axis}.motion.ramp_time={Say.Number(2.0 * report.RampSeconds)} s"]),
            Limit.Friction => new("more reduction, or less friction: worm and bearings take most of the torque", "", []),
            Limit.MoveLength => new("a longer move would show more; for this one it is fast enough", "", []),
            _ => new("axissim envelope shows how the ramp changes it", "", []),
        };
    }

    private static string Told(ReductionReport report, Against against) =>
        against.Settings.Count == 0 ? against.Words + "."
        : report.AgainstTheBound is { } line ? $"{against.Words}. With this, run as typed, {line.Promise}; {against.Look}:"
        : $"{against.Words}, but run as typed ({string.Join(", ", against.Settings)}) the whole move does not arrive and settle.";

    private static string[] Volts(ReductionReport report, string axis)
    {
        string volts = $"{axis}.drive.supply_voltage={Say.Number(1.5 * report.SupplyVolts)} V";
        return double.IsFinite(report.BrakeLimitVolts) ? [volts, $"{axis}.drive.brake_limit={Say.Number(1.5 * report.BrakeLimitVolts)} V"] : [volts];
    }

    /// <summary>Whether the scenario's own reduction does not do on paper, while others would.</summary>
    private static bool Misses(ReductionReport report)
    {
        ReductionWindow window = report.Result.Window;
        double own = report.Result.Own.Facts.TotalReduction;
        return window.Least <= window.Most && double.IsFinite(window.Most) && (own < window.Least || own > window.Most);
    }
}
