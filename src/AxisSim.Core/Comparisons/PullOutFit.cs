using AxisSim.Core.Drives;
using AxisSim.Core.Motors;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace AxisSim.Core.Comparisons;

/// <summary>Fits a motor to a measured pull-out curve.</summary>
/// <remarks>
/// <para>Law: <see cref="PullOutLaw.OnDrive"/> at each point's speed, supply, current and mode, with torque constant <c>k Km</c>, inductance <c>l L</c> and supply <c>V - dV</c>;
/// least squares on torque (Levenberg-Marquardt). Bounds: k from 0.3 to 1.5, l from 0.3 to 3, dV from 0 to 40 % of the lowest supply; what lies outside is no longer this datasheet's motor.</para>
/// <para>k is told by the flat part of the curve, l by where and how it falls. dV acts much like 1/l, so it is fitted only to <see cref="LeastForLoss"/> points or more, and kept only where the
/// corrected Akaike criterion is lower by more than 2. Below <see cref="LeastForFit"/> different speeds nothing is fitted: k is lowered, never raised, until the model is nowhere above a point.</para>
/// <para>Simulated pull-out lies somewhat below the closed form near the corner of the curve, so a fitted motor simulates a little weaker there than it was measured.</para>
/// </remarks>
public static class PullOutFit
{
    /// <summary>Different speeds that a fit needs at least.</summary>
    public const int LeastForFit = 4;

    /// <summary>Points that the fit of a voltage loss needs at least.</summary>
    public const int LeastForLoss = 6;

    private const double LeastScale = 0.3;
    private const double GreatestTorqueScale = 1.5;
    private const double GreatestInductanceScale = 3.0;
    private const double GreatestLossShare = 0.4;

    /// <summary>Residuals below this share of the greatest torque are as good as none.</summary>
    private const double Floor = 1e-6;

    private const double NearBound = 1e-3;
    private const double Better = 2.0;

    private static readonly double[][] Starts = [[1.0, 1.0], [0.8, 1.4], [1.1, 0.7], [0.6, 2.0]];

    /// <summary>The fitted motor with what tells how good the fit is.</summary>
    public static MeasuredFit Of(string name, StepperMotor motor, IReadOnlyList<MeasuredPoint> points)
    {
        ArgumentNullException.ThrowIfNull(motor);
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0)
        {
            throw new ArgumentException("a fit needs points", nameof(points));
        }

        if (points.Select(point => point.SpeedRadiansPerSecond).Distinct().Count() < LeastForFit)
        {
            return Result(name, motor, points, FitKind.Cap, Cap(motor, points), 1.0, 0.0);
        }

        double[] two = Best(motor, points, withLoss: false);
        double[] three = points.Count >= LeastForLoss ? Best(motor, points, withLoss: true) : [];
        return three.Length > 0 && Akaike(motor, points, three) < Akaike(motor, points, two) - Better
            ? Result(name, motor, points, FitKind.TorqueInductanceAndLoss, three[0], three[1], three[2])
            : Result(name, motor, points, FitKind.TorqueAndInductance, two[0], two[1], 0.0);
    }

    /// <summary>The motor with scaled torque constant and inductance.</summary>
    public static StepperMotor Scaled(StepperMotor motor, double torqueScale, double inductanceScale)
    {
        ArgumentNullException.ThrowIfNull(motor);
        return motor with { HoldingTorqueNewtonMetres = motor.HoldingTorqueNewtonMetres * torqueScale, InductanceHenries = motor.InductanceHenries * inductanceScale };
    }

    /// <summary>Torque of a motor at a measured point, N m.</summary>
    public static double Torque(StepperMotor motor, MeasuredPoint point, double lossVolts)
    {
        ArgumentNullException.ThrowIfNull(point);
        var drive = new ChopperDrive
        {
            SupplyVolts = point.SupplyVolts, SlewCurrentAmperes = point.PhaseAmperes, TrackingCurrentAmperes = point.PhaseAmperes, HoldingCurrentAmperes = point.PhaseAmperes, MicrostepsPerFullStep = 1,
        };
        return PullOutLaw.OnDrive(motor, drive, point.FullStepping, Math.Max(0.0, point.SupplyVolts - lossVolts), point.SpeedRadiansPerSecond);
    }

    private static double[] Best(StepperMotor motor, IReadOnlyList<MeasuredPoint> points, bool withLoss)
    {
        double mostLoss = GreatestLossShare * points.Min(point => point.SupplyVolts), scale = points.Max(point => point.TorqueNewtonMetres);
        Vector<double> places = Vector<double>.Build.Dense(points.Count, i => i), wanted = Vector<double>.Build.Dense(points.Count, i => points[i].TorqueNewtonMetres / scale);
        Vector<double> Model(Vector<double> p, Vector<double> x)
        {
            StepperMotor scaled = Scaled(motor, p[0], p[1]);
            double loss = withLoss ? p[2] * mostLoss : 0.0;
            return Vector<double>.Build.Dense(x.Count, i => Torque(scaled, points[(int)x[i]], loss) / scale);
        }

        double[] low = withLoss ? [LeastScale, LeastScale, 0.0] : [LeastScale, LeastScale];
        double[] high = withLoss ? [GreatestTorqueScale, GreatestInductanceScale, 1.0] : [GreatestTorqueScale, GreatestInductanceScale];
        double[]? best = null;
        double least = double.PositiveInfinity;
        foreach (double[] start in Starts)
        {
            // A start on a bound would have no slope there.
            double[] from = withLoss ? [.. start, 0.2] : start;
            IObjectiveModel objective = ObjectiveFunction.NonlinearModel(Model, places, wanted, accuracyOrder: 4);
            NonlinearMinimizationResult result = new LevenbergMarquardtMinimizer(maximumIterations: 400).FindMinimum(
                objective, Vector<double>.Build.Dense(from), Vector<double>.Build.Dense(low), Vector<double>.Build.Dense(high));
            double[] found = [.. result.MinimizingPoint.Select((value, i) => Math.Clamp(value, low[i], high[i]))];
            double[] made = withLoss ? [found[0], found[1], found[2] * mostLoss] : [found[0], found[1], 0.0];
            double squares = Squares(motor, points, made);
            if (found.All(double.IsFinite) && squares < least)
            {
                (best, least) = (withLoss ? made : made[..2], squares);
            }
        }

        return best ?? throw new InvalidOperationException("no start of the fit led anywhere");
    }

    private static double Squares(StepperMotor motor, IReadOnlyList<MeasuredPoint> points, double[] p)
    {
        StepperMotor scaled = Scaled(motor, p[0], p[1]);
        return points.Sum(point => Math.Pow(Torque(scaled, point, p.Length > 2 ? p[2] : 0.0) - point.TorqueNewtonMetres, 2.0));
    }

    private static double Akaike(StepperMotor motor, IReadOnlyList<MeasuredPoint> points, double[] p)
    {
        double n = points.Count, k = p.Length + 1, least = Floor * points.Max(point => point.TorqueNewtonMetres);
        return (n * Math.Log((Squares(motor, points, p) / n) + (least * least))) + (2.0 * k) + (2.0 * k * (k + 1.0) / Math.Max(1.0, n - k - 1.0));
    }

    private static double Cap(StepperMotor motor, IReadOnlyList<MeasuredPoint> points)
    {
        bool Below(double scale) => points.All(point => Torque(Scaled(motor, scale, 1.0), point, 0.0) <= point.TorqueNewtonMetres);
        if (Below(1.0))
        {
            return 1.0;
        }

        double low = LeastScale, high = 1.0;
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Below(middle) ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static MeasuredFit Result(string name, StepperMotor motor, IReadOnlyList<MeasuredPoint> points, FitKind kind, double torque, double inductance, double loss)
    {
        StepperMotor fitted = Scaled(motor, torque, inductance);
        double[] before = [.. points.Select(point => Torque(motor, point, 0.0))], after = [.. points.Select(point => Torque(fitted, point, loss))];
        double squares = points.Zip(after).Sum(pair => Math.Pow(pair.Second - pair.First.TorqueNewtonMetres, 2.0)), mean = points.Average(point => point.TorqueNewtonMetres);
        double all = points.Sum(point => Math.Pow(point.TorqueNewtonMetres - mean, 2.0));
        bool Near(double value, double bound) => Math.Abs(value - bound) < NearBound;
        bool atBound = Near(torque, LeastScale) || (kind != FitKind.Cap && (Near(torque, GreatestTorqueScale) || Near(inductance, LeastScale) || Near(inductance, GreatestInductanceScale)
            || Near(loss, GreatestLossShare * points.Min(point => point.SupplyVolts))));
        return new MeasuredFit(name, kind, torque, inductance, loss, atBound, Math.Sqrt(squares / points.Count), kind == FitKind.Cap || all == 0.0 ? double.NaN : 1.0 - (squares / all), points, before, after, fitted);
    }
}
