using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Questions;

/// <summary>The values of one kind of change that are tried, from the present one on, and what they mean.</summary>
/// <param name="Kind">What is changed.</param>
/// <param name="From">Present value, in the unit of <see cref="Cure.From"/>.</param>
/// <param name="Marks">Values from the present one on, ever further from it.</param>
internal sealed record CureLine(CureKind Kind, double From, IReadOnlyList<double> Marks)
{
    // Up to what windings that damp as under a voltage, or a damper on the shaft, are known to reach.
    private static readonly double[] DampingShares = [0.03, 0.06, 0.1, 0.15, 0.2, RotorDamping.MostUsualShare];
    private static readonly double[] ShorterRamps = [0.1, 0.3, 1.0, 3.0];

    /// <summary>The furthest value.</summary>
    public double Furthest => Marks[^1];

    /// <summary>The lines that mean anything for an axis.</summary>
    public static IReadOnlyList<CureLine> For(MountSetup setup, MountAxis axis, bool clutch)
    {
        AxisModel model = setup.Axis(axis);
        double rated = model.Motor.RatedCurrentAmperes, ramp = model.Motion.RampInUseSeconds;
        double damping = OneChanges.ShareOf(model);
        double imbalance = SetupEdits.WorstImbalance(setup, axis);
        var lines = new List<CureLine>
        {
            // Up to eight times, and for a very short one up to seconds.
            Times(CureKind.LongerRamp, ramp, [1.15, 1.4, 1.8, 2.5, 4.0, 8.0, .. ShorterRamps.Select(seconds => seconds / ramp).Where(factor => factor > 8.0)]),
            Times(CureKind.LowerSlewRate, model.Motion.SlewRateRadiansPerSecond, [0.93, 0.85, 0.75, 0.6, 0.4, 0.2]),
            Times(CureKind.MoreVoltage, model.Drive.SupplyVolts, [1.1, 1.25, 1.5, 2.0, 3.0, 4.0]),
        };
        if (model.Drive.SlewCurrentAmperes < 0.999 * rated)
        {
            double most = rated / model.Drive.SlewCurrentAmperes;
            lines.Add(Times(CureKind.MoreCurrent, model.Drive.SlewCurrentAmperes, [.. Enumerable.Range(1, 4).Select(i => Math.Pow(most, i / 4.0))]));
        }

        if (imbalance > 0.0)
        {
            lines.Add(Times(CureKind.BetterBalance, imbalance, [0.9, 0.75, 0.55, 0.35, 0.15, 0.01]));
        }

        double[] shares = [.. DampingShares.Where(share => share > 1.05 * damping)];
        if (shares.Length > 0)
        {
            lines.Add(new CureLine(CureKind.MoreDamping, damping, [Math.Max(damping, RotorDamping.LeastUsualShare), .. shares]));
        }

        if (clutch && double.IsFinite(model.Train.ClutchNewtonMetres))
        {
            lines.Add(Times(CureKind.FirmerClutch, model.Train.ClutchNewtonMetres, [1.15, 1.4, 1.8, 2.5, 4.0, 8.0]));
        }

        return lines;
    }

    /// <summary>Changeovers at other shares of the top speed, or none (microstepping throughout), the nearest first.</summary>
    public static IReadOnlyList<double> Changeovers(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        double top = model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio, from = Math.Min(model.Drive.ChangeoverRadiansPerSecond, 1.05 * top);
        return
        [
            .. new[] { 1.05, 0.9, 0.75, 0.6, 0.45, 0.3, 0.2, 0.1 }.Select(share => share * top)
                .Where(speed => Math.Abs(Math.Log(speed / from)) > 0.02)
                .OrderBy(speed => Math.Abs(Math.Log(speed / from)))
                .Select(speed => speed > top ? double.PositiveInfinity : WholeRpm(speed)),
        ];
    }

    /// <summary>The setup with one kind of setting at a value.</summary>
    public static MountSetup Apply(CureKind kind, MountSetup setup, MountAxis axis, double value) => kind switch
    {
        CureKind.LongerRamp => setup.WithRampTime(axis, value),
        CureKind.LowerSlewRate => setup.WithSlewRate(axis, value),
        CureKind.MoreCurrent => setup.WithSlewCurrent(axis, value),
        CureKind.Changeover => setup.WithChangeover(axis, value),
        CureKind.MoreVoltage => setup.WithSupply(axis, value),
        CureKind.MoreDamping => setup.WithDampingShare(axis, value),
        CureKind.FirmerClutch => setup.WithClutch(axis, value),
        _ => setup.WithWorstImbalance(axis, value),
    };

    /// <summary>Values with two digits on the safe side of an edge, as a person would type them; the nearest first.</summary>
    public static IEnumerable<double> Typed(CureKind kind, double from, double edge, double rated)
    {
        const int TypedDigits = 2;
        bool up = edge > from;
        double unit = kind == CureKind.LowerSlewRate ? Math.PI / 180.0 : 1.0;
        double value = edge / unit, grain = RoundDigits.Grain(value, TypedDigits), nearest = up ? RoundDigits.Up(value, TypedDigits) : RoundDigits.Down(value, TypedDigits);
        IEnumerable<double> rounded = Enumerable.Range(0, 2).Select(k => Math.Round(nearest + ((up ? k : -k) * grain), 12) * unit);
        return rounded.Where(one => one > 0.0 && (kind != CureKind.MoreCurrent || one <= rated));
    }

    private static double WholeRpm(double radiansPerSecond)
    {
        const double RpmPerRadian = 30.0 / Math.PI;
        double rpm = radiansPerSecond * RpmPerRadian;
        return rpm < 10.0 ? radiansPerSecond : Math.Round(rpm) / RpmPerRadian;
    }

    private static CureLine Times(CureKind kind, double now, IEnumerable<double> factors) => new(kind, now, [now, .. factors.Select(factor => factor * now)]);
}
