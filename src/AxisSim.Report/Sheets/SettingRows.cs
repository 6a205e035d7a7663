using System.Globalization;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>The numbers to enter into a controller, in the units that controllers ask for.</summary>
internal static class SettingRows
{
    /// <summary>Digits of what is entered: a controller that counts pulses wants more than a reader does.</summary>
    private const int EnteredDigits = 6;

    private const int ReductionDigits = 9;

    /// <summary>The groups in the order in which set-up asks for them.</summary>
    public static IReadOnlyList<SheetGroup> Of(IReadOnlyList<SheetAxis> axes)
    {
        bool startRate = axes.Any(axis => axis.Model.Motion.StartRateRadiansPerSecond > 0.0), encoder = axes.Any(axis => axis.Model.EncoderCounts > 0.0);
        SheetRow Row(string name, string unit, Func<SheetAxis, string> value) => new(name, unit, [.. axes.Select(value)]);
        IEnumerable<SheetRow> Gearing()
        {
            yield return Row("Full steps per motor turn", "", axis => Say.Count(axis.Model.Motor.StepsPerRevolution));
            yield return Row("Microsteps per full step", "", axis => Say.Count(axis.Model.Drive.MicrostepsPerFullStep));
            yield return Row("Total reduction", "exact", axis => axis.Reduction?.ToString() ?? "decimal only");
            yield return Row("", "decimal", axis => Say.Number(axis.Model.Train.TotalRatio, ReductionDigits));
            yield return Row("Pulses per axis turn", "", axis => axis.Reduction is { } exact
                ? exact.Times(new Fraction(axis.PulsesPerMotorTurn, 1)).ToString()
                : Say.Number(axis.PulsesPerMotorTurn * axis.Model.Train.TotalRatio, ReductionDigits));
            yield return Row("Full step at the axis", "arcsec", axis => Entered(Units.Arcseconds(axis.Facts.FullStepRadians)));
            yield return Row("Microstep at the axis", "arcsec", axis => Entered(Units.Arcseconds(axis.Facts.MicrostepRadians)));
            if (encoder)
            {
                yield return Row("Encoder, counts per axis turn", "", axis => axis.Model.EncoderCounts > 0.0 ? Entered(axis.Model.EncoderCounts) : "none");
                yield return Row("Encoder, one count", "arcsec", axis => axis.Model.EncoderCounts > 0.0 ? Entered(Units.Arcseconds(axis.Facts.EncoderCountRadians)) : "none");
            }

            yield return Row("Backlash at the axis", "arcsec", axis => Say.Number(Units.Arcseconds(axis.BacklashRadians)));
            yield return Row("Worm period, sidereal", "s", axis => Entered(axis.Facts.WormPeriodSeconds));
        }

        IEnumerable<SheetRow> Ramp()
        {
            if (startRate)
            {
                yield return Row("Start rate, no ramp below it", "deg/s", axis => Entered(Units.Degrees(axis.Model.Motion.StartRateRadiansPerSecond)));
            }

            yield return Row("Time", "s", axis => Entered(axis.Model.Motion.RampInUseSeconds));
            yield return Row("Greatest acceleration", "deg/s\u00b2", axis => Entered(Units.Degrees(axis.Facts.AccelerationRadiansPerSecondSquared)));
            yield return Row(axes.Any(axis => axis.Model.Motion.Shape == RampShape.SCurve) ? "Shape; jerk share" : "Shape", "", axis => Shape(axis.Model.Motion));
        }

        return
        [
            new("Slew rate", [
                Row("At the axis", "deg/s", axis => Entered(Units.Degrees(axis.Facts.SlewRateRadiansPerSecond))),
                Row("", "arcsec/s", axis => Entered(Units.Arcseconds(axis.Facts.SlewRateRadiansPerSecond))),
                Row("", "x sidereal", axis => Entered(axis.Facts.SlewRateRadiansPerSecond / SkyRates.MeanSiderealRadiansPerSecond)),
                Row("At the motor", "rpm", axis => Entered(Units.Rpm(axis.Facts.MotorSpeedRadiansPerSecond))),
                Row("", "full steps/s", axis => Entered(axis.Facts.FullStepsPerSecond)),
                Row("", "pulses/s", axis => Entered(axis.Facts.PulsesPerSecond)),
            ]),
            new("Ramp", [.. Ramp()]),
            new("Phase current and drive", [
                Row("Slewing", "A peak; rms", axis => Current(axis.Model.Drive.SlewCurrentAmperes)),
                Row("Tracking", "A peak; rms", axis => Current(axis.Model.Drive.TrackingCurrentAmperes)),
                Row("Holding", "A peak; rms", axis => Current(axis.Model.Drive.HoldingCurrentAmperes)),
                Row("Delay to the lower current", "s", axis => Entered(axis.Model.Drive.CurrentFallDelaySeconds)),
                Row("Changeover to full steps", "rpm; deg/s", Changeover),
            ]),
            new("Gearing", [.. Gearing()]),
            new("Supply", [
                Row("Voltage", "V", axis => Entered(axis.Model.Drive.SupplyVolts)),
                Row("Current to provide, at least", "A", axis => Say.Number(axis.Result.Outcome.Power.PeakSupplyAmperes)),
            ]),
            new("Prediction", [
                Row("Load factor", "", Factor),
                .. axes.Any(axis => axis.Result.Rates is not null) ? [Row("Arrives up to a slew rate of", "deg/s", RateRoom.Reach)] : Array.Empty<SheetRow>(),
                .. axes.Any(axis => RateRoom.Bands(axis).Length > 0) ? [Row("Slower, it fails at", "deg/s", axis => RateRoom.Bands(axis) is { Length: > 0 } bands ? bands : "none found")] : Array.Empty<SheetRow>(),
                .. axes.Any(axis => axis.Result.Outcome is { Swing: not null } or { Verdict: MoveEnd.Stalls }) ? [Row("Swing of the rotor, of what it can hold", "%", Swing)] : Array.Empty<SheetRow>(),
                Row("Least torque margin", "%", axis => Say.Number(axis.Result.Outcome.Margin.Value * 100.0, 2)),
            ]),
        ];
    }

    /// <summary>What to know about the numbers.</summary>
    public static IReadOnlyList<string> Notes(IReadOnlyList<SheetAxis> axes, IReadOnlyList<string> names)
    {
        double sidereal = Units.Arcseconds(SkyRates.MeanSiderealRadiansPerSecond);
        double peak = axes.Sum(axis => axis.Result.Outcome.Power.PeakSupplyAmperes);
        var notes = new List<string>
        {
            "A peak is the top of the phase sine, 1.414 times A rms: the drive's manual says which of them it asks for. A pulse is one microstep.",
            $"1 x sidereal is {sidereal.ToString("F7", CultureInfo.InvariantCulture)} arcsec/s (mean sidereal).",
            $"Supply: {(axes.Count > 1 ? "both peaks together" : "the peak")} {(axes.Count > 1 ? "are" : "is")} {Say.With(peak, "A")}, over 10 ms; drives, controller and all else on the supply come on top.",
        };
        if (axes.Any(axis => axis.Result.Outcome.LoadFactor is not null))
        {
            notes.Add("Load factor: up to that factor on inertia, imbalance and friction together the move still arrives"
                + (axes.Any(axis => axis.Result.Rates is not null) ? "; up to that slew rate it does with the load as it is." : "."));
        }

        for (int i = 0; i < axes.Count; i++)
        {
            string[] numbers = [.. ExactReduction.GivenAsNumber(axes[i].Model.Train).Select(stage => $"{stage.Name} {Say.Number(stage.DrivenTeeth, ReductionDigits)}")];
            if (numbers.Length > 0)
            {
                notes.Add($"{names[i]}: given as a number, not by teeth: {string.Join(", ", numbers)}. A catalogue may have rounded it: count the teeth.");
            }
        }

        return notes;
    }

    // What fails has no factor; one below 1.3 is thin, for friction is seldom known to better than 30 %.
    private static string Factor(SheetAxis axis) => axis.Result.Outcome.LoadFactor switch
    {
        null => "none: it fails",
        { AtLeast: true } factor => $"at least {Say.Number(factor.Value)}",
        { IsThin: true } factor => $"{Say.Number(factor.Value)}: thin",
        { } factor => Say.Number(factor.Value),
    };

    // What loses step has swung further than its field holds.
    private static string Swing(SheetAxis axis) => axis.Result.Outcome switch
    {
        { Swing: { } swing } => Say.Number(swing.Share * 100.0, 2),
        { Verdict: MoveEnd.Stalls } => "more: it loses step",
        _ => "none found",
    };

    private static string Entered(double value) => Say.Number(value, EnteredDigits);

    private static string Current(double peak) => $"{Say.Number(peak)}; {Say.Number(peak / Math.Sqrt(2.0))}";

    private static string Changeover(SheetAxis axis)
    {
        double speed = axis.Model.Drive.ChangeoverRadiansPerSecond;
        return double.IsFinite(speed) ? $"{Say.Number(Units.Rpm(speed), 4)}; {Say.Number(Units.Degrees(speed / axis.Model.Train.TotalRatio), 4)}" : "never";
    }

    private static string Shape(AxisMotion motion) => motion.Shape == RampShape.SCurve
        ? $"S-curve; {Units.Percent(motion.JerkShare)}"
        : "trapezoid";
}
