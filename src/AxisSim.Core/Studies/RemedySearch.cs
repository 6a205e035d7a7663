using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Searches each kind of change for the smallest that lets a failing move arrive with a load factor of 1.1.</summary>
internal static class RemedySearch
{
    /// <summary>Load factor asked of a remedy.</summary>
    public const double AskedLoadFactor = 1.1;

    /// <summary>Edges are found to this share; the suggestion is rounded to the safe side of it.</summary>
    private const double Tolerance = 0.02;

    public static IReadOnlyList<Remedy> Run(MountSetup setup, MountAxis axis, bool clutchSlips, double stepSeconds, Action<double>? progress)
    {
        RemedyKind[] kinds = [.. Enum.GetValues<RemedyKind>().Where(kind => clutchSlips || kind != RemedyKind.FirmerClutch)];
        var remedies = new List<Remedy>();
        foreach (RemedyKind kind in kinds)
        {
            if (Search(kind, setup, axis, stepSeconds) is { } remedy)
            {
                remedies.Add(remedy);
            }

            progress?.Invoke((double)(1 + Array.IndexOf(kinds, kind)) / kinds.Length);
        }

        return [.. remedies.OrderBy(r => r.Size)];
    }

    /// <summary>The setup with one kind of setting at a value (unit as in <see cref="Remedy.From"/>).</summary>
    public static MountSetup Apply(RemedyKind kind, MountSetup setup, MountAxis axis, double value)
    {
        AxisModel model = setup.Axis(axis);
        AxisMotion motion = model.Motion;
        return kind switch
        {
            RemedyKind.LongerRamp => setup.With(axis, model with { Motion = motion with { Ramp = Ramp.OfSeconds(value) } }),
            RemedyKind.LowerSlewRate => setup.With(axis, model with { Motion = motion with { SlewRateRadiansPerSecond = value } }),
            RemedyKind.MoreCurrent => setup.With(axis, model with { Drive = model.Drive with { SlewCurrentAmperes = value } }),
            RemedyKind.Changeover => setup.With(axis, model with { Drive = model.Drive with { ChangeoverRadiansPerSecond = value } }),
            RemedyKind.MoreVoltage => setup.With(axis, model with
            {
                Drive = model.Drive with { SupplyVolts = value, BrakeLimitVolts = Math.Max(model.Drive.BrakeLimitVolts, 1.2 * value) },
            }),
            RemedyKind.FirmerClutch => setup.With(axis, model with { Train = model.Train with { ClutchNewtonMetres = value } }),
            _ => setup with { Load = Rebalanced(setup, axis, value) },
        };
    }

    /// <summary>Greatest gravity torque about the axis over the planned path, N m.</summary>
    public static double WorstImbalance(MountSetup setup, MountAxis axis)
    {
        var plan = new MovePlan(setup);
        return Enumerable.Range(0, 201).Max(i => Math.Abs(setup.Load.GravityTorque(axis, plan.Pose(plan.SlewSeconds * i / 200.0))));
    }

    private static MountLoad Rebalanced(MountSetup setup, MountAxis axis, double worst)
    {
        double now = WorstImbalance(setup, axis);
        double factor = now > 0.0 ? worst / now : 1.0;
        MountLoad load = setup.Load;
        return axis == MountAxis.Polar
            ? load with { PolarGravity = [.. load.PolarGravity.Select(x => x * factor)] }
            : load with { DeclinationGravity = [.. load.DeclinationGravity.Select(x => x * factor)] };
    }

    private static Remedy? Search(RemedyKind kind, MountSetup setup, MountAxis axis, double stepSeconds)
    {
        AxisModel model = setup.Axis(axis);
        double topSpeed = model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio;
        double ramp = model.Motion.RampInUseSeconds;
        double rated = model.Motor.RatedCurrentAmperes;
        return kind switch
        {
            RemedyKind.LongerRamp => Along(kind, setup, axis, stepSeconds, ramp, Ramps(ramp)),
            RemedyKind.LowerSlewRate => Along(kind, setup, axis, stepSeconds, model.Motion.SlewRateRadiansPerSecond, [0.93, 0.85, 0.75, 0.6, 0.4, 0.2]),
            RemedyKind.MoreCurrent when model.Drive.SlewCurrentAmperes < 0.999 * rated => Along(
                kind, setup, axis, stepSeconds, model.Drive.SlewCurrentAmperes, Between(rated / model.Drive.SlewCurrentAmperes, 4)),
            RemedyKind.Changeover => ChangeoverRemedy(setup, axis, stepSeconds, topSpeed),
            RemedyKind.MoreVoltage => Along(kind, setup, axis, stepSeconds, model.Drive.SupplyVolts, [1.1, 1.25, 1.5, 2.0, 3.0, 4.0]),
            RemedyKind.BetterBalance when WorstImbalance(setup, axis) is > 0.0 and var worst => Along(
                kind, setup, axis, stepSeconds, worst, [0.9, 0.75, 0.55, 0.35, 0.15, 0.01]),
            RemedyKind.FirmerClutch when double.IsFinite(model.Train.ClutchNewtonMetres) => Along(
                kind, setup, axis, stepSeconds, model.Train.ClutchNewtonMetres, [1.15, 1.4, 1.8, 2.5, 4.0, 8.0]),
            _ => null,
        };
    }

    /// <summary>Longer ramps as factors: up to eight times, and for a very short one up to seconds.</summary>
    private static double[] Ramps(double ramp) =>
        [1.15, 1.4, 1.8, 2.5, 4.0, 8.0, .. new[] { 0.1, 0.3, 1.0, 3.0 }.Select(seconds => seconds / ramp).Where(factor => factor > 8.0)];

    private static double[] Between(double most, int count) => [.. Enumerable.Range(1, count).Select(i => Math.Pow(most, (double)i / count))];

    private static Remedy Along(RemedyKind kind, MountSetup setup, MountAxis axis, double stepSeconds, double now, double[] factors)
    {
        bool Arrives(double value) => Arrival.Of(Apply(kind, setup, axis, value), axis, stepSeconds, AskedLoadFactor);
        double[] values = [.. factors.Select(f => f * now)];
        int first = Lasting(values, Arrives);
        if (first < 0)
        {
            return new Remedy(kind, now, null, values[^1], Arrival.Of(Apply(kind, setup, axis, values[^1]), axis, stepSeconds));
        }

        double good = values[first];
        double bad = first == 0 ? now : values[first - 1];
        if (!Arrives(bad))
        {
            (_, good) = EdgeSearch.Narrow(bad, good, Arrives, answerAtLow: false, Tolerance);
        }

        return new Remedy(kind, now, Rounded(kind, setup, axis, good, values[first], Arrives), values[^1]);
    }

    /// <summary>First value that arrives with the next one too: near a resonance a single value may arrive by chance.</summary>
    private static int Lasting(double[] values, Func<double, bool> arrives)
    {
        int from = 0;
        while (from < values.Length)
        {
            int hit = EdgeSearch.First(values[from..], arrives, wanted: true);
            if (hit < 0)
            {
                return -1;
            }

            int first = from + hit;
            if (first + 1 >= values.Length || arrives(values[first + 1]))
            {
                return first;
            }

            from = first + 2;
        }

        return -1;
    }

    /// <summary>A value with two digits on the safe side of the edge that arrives too; the edge itself if none does.</summary>
    private static double Rounded(RemedyKind kind, MountSetup setup, MountAxis axis, double edge, double scanned, Func<double, bool> arrives)
    {
        double unit = kind == RemedyKind.LowerSlewRate ? Math.PI / 180.0 : 1.0;
        double value = edge / unit;
        double grain = Math.Pow(10.0, Math.Floor(Math.Log10(value)) - 1.0);
        bool up = scanned > edge || kind is RemedyKind.LongerRamp or RemedyKind.MoreVoltage or RemedyKind.MoreCurrent;
        for (int k = 0; k < 4; k++)
        {
            double steps = up ? Math.Ceiling(value / grain) + k : Math.Floor(value / grain) - k;
            double rounded = Math.Round(steps * grain, 10) * unit;
            if (kind == RemedyKind.MoreCurrent && rounded > setup.Axis(axis).Motor.RatedCurrentAmperes)
            {
                break;
            }

            if (rounded > 0.0 && arrives(rounded))
            {
                return rounded;
            }
        }

        return edge;
    }

    /// <summary>A changeover at another share of the top speed, or none (microstepping throughout); the nearest that arrives.</summary>
    private static Remedy ChangeoverRemedy(MountSetup setup, MountAxis axis, double stepSeconds, double topSpeed)
    {
        double now = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond;
        double from = Math.Min(now, 1.05 * topSpeed);
        double[] shares = [1.05, 0.9, 0.75, 0.6, 0.45, 0.3, 0.2, 0.1];
        double[] candidates =
        [
            .. shares.Select(s => s * topSpeed)
                .Where(v => Math.Abs(Math.Log(v / from)) > 0.02)
                .OrderBy(v => Math.Abs(Math.Log(v / from))),
        ];
        int first = EdgeSearch.First(
            candidates,
            v => Arrival.Of(Apply(RemedyKind.Changeover, setup, axis, v > topSpeed ? double.PositiveInfinity : v), axis, stepSeconds, AskedLoadFactor),
            wanted: true);
        return first < 0
            ? new Remedy(RemedyKind.Changeover, now, null, candidates[^1])
            : new Remedy(RemedyKind.Changeover, now, candidates[first] > topSpeed ? double.PositiveInfinity : candidates[first], candidates[^1]);
    }
}
