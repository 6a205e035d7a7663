using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Invented;

/// <summary>Invented traces of plausible shape for figures alone; no law of the product is checked with them.</summary>
/// <remarks>
/// A trapezoid over 90 deg at 3 deg/s with 2 s ramps, then 8 s of rest, through a total ratio of 720: 37.7 rad/s (360 rpm) at the
/// motor, full-stepping from 20 rad/s on.
/// </remarks>
internal static class SampleMoves
{
    public const double TotalRatio = 720;
    public const double SlewSeconds = 32;
    private const double Rate = 3 * Math.PI / 180;
    private const double Ramp = 2;
    private const double Observed = 8;
    private const double ArcSecond = Math.PI / 180 / 3600;
    private const double Changeover = 20;

    /// <summary>A move that arrives and settles 0.8 s after the slew, 6 arcsec short of its command.</summary>
    public static (Trace Trace, AxisOutcome Outcome) Good(double step = 0.002, Action<int, double[]>? spoil = null)
    {
        Trace trace = Run(step, null, false, spoil);
        return (trace, Outcome(Verdict.Arrives, null, new Settling(0.80, null, 3 * ArcSecond, 0.6 * ArcSecond, 2 * ArcSecond, -6 * ArcSecond, 0.1 * ArcSecond, false)));
    }

    /// <summary>A move that loses sync while speeding up.</summary>
    public static (Trace Trace, AxisOutcome Outcome) Stalled(double step = 0.002, Action<int, double[]>? spoil = null)
    {
        const double lost = 1.43; // s
        Trace trace = Run(step, lost, false, spoil);
        return (trace, Outcome(Verdict.Stalls, new LossOfSync(lost, Rate * lost / Ramp, Rate * lost / Ramp * TotalRatio, MovePhase.Accelerating, true), null));
    }

    /// <summary>Sidereal tracking without a slew: errors of a few tenths of an arcsec.</summary>
    public static (Trace Trace, AxisOutcome Outcome) Tracking()
    {
        Trace trace = Run(0.01, null, true, null);
        return (trace, Outcome(Verdict.Arrives, null, new Settling(0, 0, 0, null, 1 * ArcSecond, 0, 0.1 * ArcSecond, false)) with { SlewSeconds = 0 });
    }

    /// <summary>Closed forms that fall with speed, simulations a little under them, and the path of the move above.</summary>
    public static TorqueSpeedCurves Curves(double changeover = Changeover)
    {
        double[] speeds = [.. Enumerable.Range(0, 61).Select(i => 1.2 * i)];
        List<PullOutCurve> curves = [];
        foreach (bool full in (bool[])[false, true])
        {
            foreach ((SupplyLevel level, double volts) in ((SupplyLevel, double)[])[(SupplyLevel.Low, 21.6), (SupplyLevel.Nominal, 24.0), (SupplyLevel.High, 26.4)])
            {
                double[] closed = [.. speeds.Select(w => PullOut(w, full, volts))];
                double[] simulated = [.. closed.Select((t, i) => level == SupplyLevel.Nominal && i % 5 == 2 ? t * (0.97 + (0.01 * Math.Sin(i))) : double.NaN)];
                double[] greatest = [.. simulated.Select((t, i) => full && i is > 18 and < 26 ? 1.2 * t : t)];
                curves.Add(new PullOutCurve(full, level, volts, closed, simulated, greatest));
            }
        }

        List<NeedPoint> path = [];
        for (double t = 0; t <= SlewSeconds; t += 0.01)
        {
            path.Add(new NeedPoint(t, PlannedRate(t) * TotalRatio, Needed(t)));
        }

        return new TorqueSpeedCurves
        {
            SpeedsRadiansPerSecond = speeds,
            Curves = curves,
            Bands = [new PullOutBand(true, 24, 29, 0.0, 0.2), new PullOutBand(true, 55, 62, 0.0, 0.1)],
            Path = path,
            ChangeoverRadiansPerSecond = changeover,
        };
    }

    private static double PullOut(double w, bool full, double volts)
    {
        // Km 0.19 N m/A, 1.5 A, 1.5 ohm, 6 mH, 100 teeth: the lesser of the current bound and the voltage bound.
        const double km = 0.19, amperes = 1.5, resistance = 1.5, inductance = 6e-3;
        double current = km * amperes * (full ? 4 / Math.PI : 1) - 0.01;
        double z = double.Hypot(resistance, 100 * w * inductance);
        double voltage = (km * volts * 4 / Math.PI / z) - (km * km * w * resistance / (z * z)) - 0.01;
        return Math.Max(0, Math.Min(current, voltage));
    }

    private static double PlannedRate(double t) =>
        t <= 0 || t >= SlewSeconds ? 0 : Rate * Math.Min(1, Math.Min(t / Ramp, (SlewSeconds - t) / Ramp));

    private static double PlannedAngle(double t)
    {
        double up = Math.Clamp(t, 0, Ramp);
        double down = Math.Clamp(t - (SlewSeconds - Ramp), 0, Ramp);
        return Rate * ((up * up / (2 * Ramp)) + Math.Clamp(t - Ramp, 0, SlewSeconds - (2 * Ramp)) + down - (down * down / (2 * Ramp)));
    }

    private static double Needed(double t)
    {
        double acceleration = t < Ramp ? Rate / Ramp : t > SlewSeconds - Ramp && t < SlewSeconds ? -Rate / Ramp : 0;
        double load = (240 * acceleration) + (t < SlewSeconds ? 14 : 0) + (35 * 0.64 * Math.Sin(PlannedAngle(t)));
        double motor = 6e-6 * acceleration * TotalRatio;
        return (load / TotalRatio / (load > 0 ? 0.45 : 1.2)) + motor + (t < SlewSeconds ? 0.005 + (1e-5 * PlannedRate(t) * TotalRatio) : 0);
    }

    /// <summary>A trace of stretches of one sample each; a spoiler may change the values of any.</summary>
    private static Trace Run(double step, double? lost, bool tracking, Action<int, double[]>? spoil)
    {
        Trace trace = new();
        double[] values = new double[Enum.GetValues<TraceQuantity>().Length];
        Random noise = new(7);
        double loadAngle = 0, error = 0, previousError = 0;
        int count = (int)Math.Round((tracking ? 60 : SlewSeconds + Observed) / step);
        for (int i = 0; i <= count; i++)
        {
            double t = i * step;
            double rate = tracking ? 15.041 * ArcSecond : PlannedRate(t);
            double w = rate * TotalRatio;
            bool stalled = t > lost;
            bool full = w > Changeover;
            double needed = tracking ? 0.004 + (0.0005 * Math.Sin(t / 5)) : Needed(t);
            double available = tracking ? 0.1 : PullOut(w, full, 24);
            if (tracking)
            {
                error = ((0.22 * Math.Sin(2 * Math.PI * t / 17)) + (0.03 * Math.Sin(9 * t)) + (0.02 * noise.NextDouble())) * ArcSecond;
            }
            else if (stalled)
            {
                error -= rate * step;
            }
            else
            {
                double after = t - SlewSeconds;
                double lag = needed / Math.Max(available, 0.01);
                error = after < 0
                    ? ((-9 * lag) + (4 * Math.Sin(2 * Math.PI * t / 3.3)) + (w > 0 ? 1.5 * Math.Sin(60 * t) : 0)) * ArcSecond
                    : (-6 + (9 * Math.Exp(-after / 0.45) * Math.Cos(2 * Math.PI * 6.5 * after)) + (after > 0.5 ? -0.4 : 0.2)) * ArcSecond;
            }

            loadAngle = stalled ? loadAngle - (100 * w * step) : -Math.Asin(Math.Clamp(needed / Math.Max(available, 0.01), -1, 1));
            double electrical = 100 * PlannedAngle(t) * TotalRatio;
            double current = t < SlewSeconds + 0.5 ? Math.Min(1.5, 24 * 1.27 / double.Hypot(1.5, 100 * w * 6e-3)) : 0.5;
            (double sin, double cos) = Math.SinCos(electrical);
            values[(int)TraceQuantity.PlannedAngleRadians] = tracking ? rate * t : PlannedAngle(t);
            values[(int)TraceQuantity.PlannedRateRadiansPerSecond] = rate;
            values[(int)TraceQuantity.ActualRateRadiansPerSecond] = i == 0 ? rate : rate + ((error - previousError) / step);
            values[(int)TraceQuantity.MotorSpeedRadiansPerSecond] = stalled ? 20 * Math.Sin(600 * t) : w;
            values[(int)TraceQuantity.AxisErrorRadians] = error;
            values[(int)TraceQuantity.PayloadErrorRadians] = error;
            values[(int)TraceQuantity.SettleErrorRadians] = error;
            values[(int)TraceQuantity.LoadAngleRadians] = loadAngle;
            values[(int)TraceQuantity.MotorTorqueNewtonMetres] = stalled ? available * Math.Sin(loadAngle) : needed + (full ? 0.05 * Math.Sin(4 * electrical) : 0.004 * Math.Sin(4 * electrical));
            values[(int)TraceQuantity.NeededTorqueNewtonMetres] = needed;
            values[(int)TraceQuantity.AvailableTorqueNewtonMetres] = available;
            values[(int)TraceQuantity.PhaseACurrentAmperes] = full ? current * Math.Sign(cos) : current * cos;
            values[(int)TraceQuantity.PhaseBCurrentAmperes] = full ? current * Math.Sign(sin) : current * sin;
            values[(int)TraceQuantity.CurrentAmplitudeAmperes] = double.Hypot(values[(int)TraceQuantity.PhaseACurrentAmperes], values[(int)TraceQuantity.PhaseBCurrentAmperes]);
            values[(int)TraceQuantity.Saturated] = Math.Clamp((w - 24) / 16, 0, 1) * (0.9 + (0.1 * Math.Sin(40 * t)));
            values[(int)TraceQuantity.BusVolts] = 24;
            values[(int)TraceQuantity.SupplyCurrentAmperes] = 0.8;
            values[(int)TraceQuantity.WindingCelsius] = 20 + (0.1 * t);
            values[(int)TraceQuantity.MeshTorqueNewtonMetres] = needed * TotalRatio * 0.45;
            values[(int)TraceQuantity.ClutchSlipRadians] = 0;
            values[(int)TraceQuantity.FullStepping] = full ? 1 : 0;
            spoil?.Invoke(i, values);
            double from = Math.Max(0.0, t - step);
            trace.Add(from, t, values, values, values);
            if (t > (tracking ? 0 : SlewSeconds))
            {
                trace.Settling.Add(from, t, values[(int)TraceQuantity.SettleErrorRadians], values[(int)TraceQuantity.SettleErrorRadians]);
            }

            if (t > lost - 0.25 && t < lost + 0.15)
            {
                trace.Loss.Add(from, t, values[(int)TraceQuantity.LoadAngleRadians], values[(int)TraceQuantity.LoadAngleRadians]);
            }

            previousError = error;
        }

        return trace;
    }

    private static AxisOutcome Outcome(Verdict verdict, LossOfSync? loss, Settling? settling) => new()
    {
        Axis = MountAxis.Polar,
        Verdict = verdict,
        Loss = loss,
        LostFullSteps = loss is null ? 0 : -43_000,
        Margin = new TorqueMargin(0.6, 2, 0.08, 0.2, 37.7),
        SlewSeconds = SlewSeconds,
        Settling = settling,
        Offset = new OffsetSplit(-6 * ArcSecond, -3 * ArcSecond, -2 * ArcSecond, -1 * ArcSecond, 0, 0, 0),
        Power = new PowerAndHeat(1.2, 0.8, 600, 23.5, 24.2, 24, 80, ContinuousDuty.Slewing, 130, InsulationClass.B),
        Facts = new DerivedFacts
        {
            TotalReduction = TotalRatio,
            FullStepRadians = 2 * Math.PI / 400 / TotalRatio,
            MicrostepRadians = 2 * Math.PI / 400 / 64 / TotalRatio,
            MotorSpeedRadiansPerSecond = Rate * TotalRatio,
            FullStepsPerSecond = 2400,
            PulsesPerSecond = 153_600,
            SlewRateRadiansPerSecond = Rate,
            AccelerationRadiansPerSecondSquared = Rate / Ramp,
            AxisInertiaKilogramSquareMetres = 6,
            ReflectedInertiaKilogramSquareMetres = 6 / TotalRatio / TotalRatio,
            WormEfficiency = 0.45,
            TrainEfficiency = 0.45,
            SelfLocking = true,
            WormPeriodSeconds = 598.4,
            RotorResonanceHertz = 420,
            DampingNewtonMetreSecondsPerRadian = 0,
            DampingShare = 0,
            EncoderCountRadians = 0,
        },
        StepSeconds = 50e-6,
    };
}
