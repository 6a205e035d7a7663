namespace AxisSim.Core.Outcomes;

/// <summary>A supply voltage at which a curve is drawn.</summary>
public enum SupplyLevel
{
    /// <summary>Nominal voltage less 10 %.</summary>
    Low,

    /// <summary>Nominal voltage.</summary>
    Nominal,

    /// <summary>Nominal voltage plus 10 %.</summary>
    High,
}

/// <summary>Pull-out torque against motor speed for one mode and one supply voltage.</summary>
/// <param name="FullStepping">Full-stepping, or microstepping.</param>
/// <param name="Supply">Which supply voltage.</param>
/// <param name="SupplyVolts">Its value, V.</param>
/// <param name="ClosedFormNewtonMetres">Closed form (<see cref="Motors.PullOutLaw.OnDrive"/>), N m, one per speed.</param>
/// <param name="LeastNewtonMetres">Simulated: every smaller load keeps sync (<see cref="PullOutTorque"/>), N m, one per speed; NaN where it was not simulated.</param>
/// <param name="GreatestNewtonMetres">Simulated: no greater load keeps sync, likewise.</param>
public sealed record PullOutCurve(
    bool FullStepping,
    SupplyLevel Supply,
    double SupplyVolts,
    IReadOnlyList<double> ClosedFormNewtonMetres,
    IReadOnlyList<double> LeastNewtonMetres,
    IReadOnlyList<double> GreatestNewtonMetres)
{
    /// <summary>The range at one of the speeds.</summary>
    public PullOutTorque At(int index) => new(LeastNewtonMetres[index], GreatestNewtonMetres[index]);
}

/// <summary>A point of the torque-speed plane that the planned move passes through.</summary>
/// <param name="TimeSeconds">Time, s.</param>
/// <param name="SpeedRadiansPerSecond">Motor speed, rad/s (absolute).</param>
/// <param name="TorqueNewtonMetres">Shaft torque needed in the direction of motion, N m (negative when braking).</param>
public sealed record NeedPoint(double TimeSeconds, double SpeedRadiansPerSecond, double TorqueNewtonMetres);

/// <summary>The torque-speed plane of one axis' motor with the path of its move.</summary>
public sealed record TorqueSpeedCurves
{
    /// <summary>Motor speeds, rad/s, ascending.</summary>
    public required IReadOnlyList<double> SpeedsRadiansPerSecond { get; init; }

    /// <summary>One curve per mode and supply.</summary>
    public required IReadOnlyList<PullOutCurve> Curves { get; init; }

    /// <summary>Bands of both modes at nominal supply.</summary>
    public required IReadOnlyList<PullOutBand> Bands { get; init; }

    /// <summary>Path of the planned move.</summary>
    public required IReadOnlyList<NeedPoint> Path { get; init; }

    /// <summary>Changeover speed of the drive, rad/s; infinite when it always microsteps.</summary>
    public required double ChangeoverRadiansPerSecond { get; init; }

    /// <summary>Pull-out torque at a speed at nominal supply, between the two neighbouring speeds that were simulated in that mode; at the nearest one beyond them.</summary>
    /// <param name="fullStepping">Full-stepping, or microstepping.</param>
    /// <param name="speedRadiansPerSecond">Motor speed, rad/s.</param>
    public PullOutTorque At(bool fullStepping, double speedRadiansPerSecond)
    {
        PullOutCurve curve = Nominal(fullStepping);
        int above = FirstAbove(speedRadiansPerSecond), below = above - 1;
        while (below >= 0 && double.IsNaN(curve.LeastNewtonMetres[below]))
        {
            below--;
        }

        while (above < SpeedsRadiansPerSecond.Count && double.IsNaN(curve.LeastNewtonMetres[above]))
        {
            above++;
        }

        if (below < 0 || above == SpeedsRadiansPerSecond.Count)
        {
            return below >= 0 ? curve.At(below) : above < SpeedsRadiansPerSecond.Count ? curve.At(above) : default;
        }

        double share = (speedRadiansPerSecond - SpeedsRadiansPerSecond[below]) / (SpeedsRadiansPerSecond[above] - SpeedsRadiansPerSecond[below]);
        PullOutTorque from = curve.At(below);
        PullOutTorque to = curve.At(above);
        return new PullOutTorque(
            Line(from.LeastNewtonMetres, to.LeastNewtonMetres, share),
            Line(from.GreatestNewtonMetres, to.GreatestNewtonMetres, share));
    }

    /// <summary>A point of a line that rises or falls throughout, to the last bit: a level one stays level.</summary>
    internal static double Line(double from, double to, double share) => from + (share * (to - from));

    private PullOutCurve Nominal(bool fullStepping)
    {
        // A loop by hand: this is asked some hundred thousand times a run.
        for (int i = 0; i < Curves.Count; i++)
        {
            if (Curves[i].FullStepping == fullStepping && Curves[i].Supply == SupplyLevel.Nominal)
            {
                return Curves[i];
            }
        }

        return Curves[0];
    }

    private int FirstAbove(double speed)
    {
        (int low, int high) = (0, SpeedsRadiansPerSecond.Count);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = SpeedsRadiansPerSecond[middle] <= speed ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
