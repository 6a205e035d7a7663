using System.Globalization;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Docs;
using AxisSim.Tests.Unit.Report.Pages;

namespace AxisSim.Tests.Unit.Report.Sheets;

/// <summary>Every number of the sheet of every shipped scenario, worked out again from the scenario by another way.</summary>
[Trait("speed", "slow")]
public sealed class SheetNumberTests
{
    // Rounding of some tens of operations, for values that end in a five.
    private const double Rounding = 1e-9;

    private const double ArcsecondsPerTurn = 1_296_000.0;

    /// <summary>Sidereal day, s (Aoki et al. 1982): from SkyRates' source, not from its constant.</summary>
    private const double SiderealDay = 86164.0905308;

    public static TheoryData<string> Names => ShippedReports.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Numbers_to_enter(string name)
    {
        (Scenario scenario, var page) = ShippedReports.Of(name);
        Reader sheet = new(page.Sheet.Settings.SelectMany(group => group.Rows.Select(row => (group.Name, row))));
        foreach ((MountAxis axis, int i) in AxisNames.Of(scenario.Setup).Select((axis, i) => (axis, i)))
        {
            AxisModel model = scenario.Setup.Axis(axis);
            double reduction = model.Train.Stages.Aggregate((double)model.Train.Worm.WheelTeeth / model.Train.Worm.Starts, (all, stage) => all * stage.DrivenTeeth / stage.DrivingTeeth);
            double degrees = model.Motion.SlewRateRadiansPerSecond * 180.0 / Math.PI;
            double steps = model.Motor.StepsPerRevolution, micro = model.Drive.MicrostepsPerFullStep, motorTurns = degrees / 360.0 * reduction;
            sheet.Check("Slew rate", "At the axis", "deg/s", i, degrees);
            sheet.Check("Slew rate", "", "arcsec/s", i, degrees * 3600.0);
            sheet.Check("Slew rate", "", "x sidereal", i, degrees / (360.0 / SiderealDay));
            sheet.Check("Slew rate", "At the motor", "rpm", i, motorTurns * 60.0);
            sheet.Check("Slew rate", "", "full steps/s", i, motorTurns * steps);
            sheet.Check("Slew rate", "", "pulses/s", i, motorTurns * steps * micro);
            (double ramp, double acceleration) = Ramp(model.Motion, degrees);
            sheet.Check("Ramp", "Time", "s", i, ramp);
            sheet.Check("Ramp", "Greatest acceleration", "deg/s\u00b2", i, acceleration);
            sheet.Check("Ramp", "", "arcsec/s\u00b2", i, acceleration * 3600.0);
            sheet.Check("Ramp", "", "full steps/s\u00b2", i, acceleration / 360.0 * reduction * steps);
            sheet.Check("Ramp", "", "pulses/s\u00b2", i, acceleration / 360.0 * reduction * steps * micro);
            sheet.Check("Ramp", "Distance", "deg", i, RampDegrees(model.Motion, degrees, ramp));
            sheet.Check("Sidereal rate", "At the motor", "pulses/s", i, reduction * steps * micro / SiderealDay);
            sheet.Check("Sidereal rate", "One pulse each", "ms", i, 1e3 * SiderealDay / (reduction * steps * micro));
            foreach ((string use, double times) in new[] { ("Guiding 0.25", 0.25), ("Guiding 0.5", 0.5), ("Guiding 0.75", 0.75), ("Guiding 1", 1.0), ("Centring 4", 4.0), ("Centring 16", 16.0), ("Centring 64", 64.0) })
            {
                sheet.Check("Moving by hand, x sidereal", use, "arcsec/s; pulses/s", i, times * ArcsecondsPerTurn / SiderealDay, times * reduction * steps * micro / SiderealDay);
            }

            foreach ((string current, double peak) in new[] { ("Slewing", model.Drive.SlewCurrentAmperes), ("Tracking", model.Drive.TrackingCurrentAmperes), ("Holding", model.Drive.HoldingCurrentAmperes) })
            {
                sheet.Check("Phase current and drive", current, "A peak; rms", i, peak, peak * Math.Sqrt(0.5));
            }

            sheet.Check("Phase current and drive", "Delay to the lower current", "s", i, model.Drive.CurrentFallDelaySeconds);
            if (double.IsFinite(model.Drive.ChangeoverRadiansPerSecond))
            {
                double rpm = model.Drive.ChangeoverRadiansPerSecond / (2.0 * Math.PI) * 60.0;
                sheet.Check("Phase current and drive", "Changeover to full steps", "rpm", i, rpm);
                sheet.Check("Phase current and drive", "", "full steps/s", i, rpm / 60.0 * steps);
                sheet.Check("Phase current and drive", "", "deg/s", i, rpm * 6.0 / reduction);
                sheet.Check("Phase current and drive", "", "x sidereal", i, rpm * 6.0 / reduction / (360.0 / SiderealDay));
            }
            else if (AxisNames.Of(scenario.Setup).All(one => double.IsPositiveInfinity(scenario.Setup.Axis(one).Drive.ChangeoverRadiansPerSecond)))
            {
                Assert.Equal("never", sheet.Text("Phase current and drive", "Changeover to full steps", "", i));
            }

            sheet.Check("Gearing", "Full steps per motor turn", "", i, steps);
            sheet.Check("Gearing", "Microsteps per full step", "", i, micro);
            string[] exact = sheet.Text("Gearing", "Total reduction", "exact", i).Split('/');
            Assert.Equal(reduction, double.Parse(exact[0], CultureInfo.InvariantCulture) / (exact.Length > 1 ? double.Parse(exact[1], CultureInfo.InvariantCulture) : 1.0), 1e-12 * reduction);
            sheet.Check("Gearing", "", "decimal", i, reduction);
            for (int stage = 0; stage < model.Train.Stages.Count; stage++)
            {
                string[] teeth = sheet.Text("Gearing", model.Train.Stages.Count == 1 ? "Stage before the worm" : $"Stage {stage + 1} from the motor", "driven/driving", i).Split('/');
                double ratio = double.Parse(teeth[0], CultureInfo.InvariantCulture) / (teeth.Length > 1 ? double.Parse(teeth[1], CultureInfo.InvariantCulture) : 1.0);
                Assert.Equal(model.Train.Stages[stage].Ratio, ratio, 1e-8 * ratio);
            }

            sheet.Check("Gearing", "Worm wheel", "teeth", i, model.Train.Worm.WheelTeeth);
            sheet.Check("Gearing", "Pulses per motor turn", "", i, steps * micro);
            sheet.Check("Gearing", "Pulses per worm turn", "", i, steps * micro * reduction * model.Train.Worm.Starts / model.Train.Worm.WheelTeeth);
            sheet.Check("Gearing", "Pulses per axis turn", "", i, steps * micro * reduction);
            sheet.Check("Gearing", "Pulses per degree", "", i, steps * micro * reduction / 360.0);
            sheet.Check("Gearing", "Pulses per arcsec", "", i, steps * micro * reduction / ArcsecondsPerTurn);
            sheet.Check("Gearing", "Full step at the axis", "arcsec", i, ArcsecondsPerTurn / (steps * reduction));
            sheet.Check("Gearing", "Microstep at the axis", "arcsec", i, ArcsecondsPerTurn / (steps * reduction * micro));
            if (model.EncoderCounts > 0.0)
            {
                sheet.Check("Gearing", "Encoder, counts per axis turn", "", i, model.EncoderCounts);
                sheet.Check("Gearing", "Encoder, one count", "arcsec", i, ArcsecondsPerTurn / model.EncoderCounts);
                sheet.Check("Gearing", "Encoder, pulses per count", "", i, steps * micro * reduction / model.EncoderCounts);
            }

            double backlash = model.Train.BacklashRadians;
            for (int stage = 0; stage < model.Train.Stages.Count; stage++)
            {
                backlash += model.Train.Stages[stage].BacklashRadians / model.Train.Stages.Skip(stage + 1).Aggregate(model.Train.Worm.Ratio, (all, after) => all * after.Ratio);
            }

            sheet.Check("Gearing", "Backlash at the axis", "arcsec; pulses", i, backlash / (2.0 * Math.PI) * ArcsecondsPerTurn, backlash / (2.0 * Math.PI) * steps * micro * reduction);
            sheet.Check("Gearing", "Worm period, sidereal", "s", i, SiderealDay * model.Train.Worm.Starts / model.Train.Worm.WheelTeeth);
            AxisResult run = MoveStudy.Run(scenario.Setup, axis, new MoveOptions());
            AxisOutcome again = run.Outcome;
            sheet.Check("Prediction", "Least torque margin", "%", i, 100.0 * again.Margin.Value);
            if (again.Swing is { } swing)
            {
                sheet.Check("Prediction", "Swing of the rotor, of what it can hold", "%", i, 100.0 * swing.Share);
            }
            else
            {
                Assert.Equal("more: it loses step", sheet.Text("Prediction", "Swing of the rotor, of what it can hold", "%", i));
            }

            Assert.Equal(
                again.LoadFactor is not { } factor ? "none: it fails" : (factor.AtLeast ? "at least " : "") + Say.Number(factor.Value),
                sheet.Text("Prediction", "Load factor", "", i));

            // The other direction of the edge: no shipped move meets a failing band below its rate.
            Assert.DoesNotContain(run.Rates!.FailingBands, band => band.ToRadiansPerSecond < model.Motion.SlewRateRadiansPerSecond);
            string reach = Say.Number(Units.Degrees(run.Rates.RateRadiansPerSecond), 4);
            Assert.Equal(
                again.LoadFactor is null ? reach + " only" : (run.Rates.Cap is null ? "" : "at least ") + reach,
                sheet.Text("Prediction", "Arrives up to a slew rate of", "deg/s", i));
            sheet.Check("Supply", "Voltage", "V", i, model.Drive.SupplyVolts);
            sheet.Check("Supply", "Motors at their peak, through an ideal drive", "A", i, again.Power.PeakSupplyAmperes);
            sheet.Check("Supply", "With what the drive itself takes", "A", i, (again.Power.PeakSupplyAmperes / 0.85) + 0.05);

            // All shipped mounts with two axes feed both from one voltage.
            double[] peaks = [.. AxisNames.Of(scenario.Setup).Select(one => MoveStudy.Run(scenario.Setup, one, new MoveOptions { Explain = false }).Outcome.Power.PeakSupplyAmperes)];
            double taken = (peaks.Sum() / 0.85) + (0.05 * peaks.Length);
            Assert.Equal(Say.Number(Math.Ceiling(taken / 0.8 * 10.0) / 10.0), sheet.Text("Supply", peaks.Length > 1 ? "One supply for both, rated at least" : "Supply, rated at least", "A", i));
            double fuse = double.Parse(sheet.Text("Supply", peaks.Length > 1 ? "Its fuse, slow" : "Fuse, slow", "A", i), CultureInfo.InvariantCulture);
            Assert.InRange(fuse, taken / 0.75, 1.27 * taken / 0.75); // the next of a series that grows by 1.25 to 1.27
        }

        sheet.NothingLeft();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Values_expected_before_any_slew(string name)
    {
        (Scenario scenario, var page) = ShippedReports.Of(name);
        Reader sheet = new(page.Sheet.Steps.SelectMany(step => step.Expected.Select(row => (step.Title, row))));
        double ambient = scenario.Setup.Disturbances.AmbientCelsius;
        foreach ((MountAxis axis, int i) in AxisNames.Of(scenario.Setup).Select((axis, i) => (axis, i)))
        {
            AxisModel model = scenario.Setup.Axis(axis);
            double steps = model.Motor.StepsPerRevolution, pulses = steps * model.Drive.MicrostepsPerFullStep;
            double before = model.Train.Stages.Aggregate(1.0, (all, stage) => all * stage.DrivenTeeth / stage.DrivingTeeth);
            double reduction = before * model.Train.Worm.WheelTeeth / model.Train.Worm.Starts;
            bool polar = axis == MountAxis.Polar;
            double tracking = polar ? model.Drive.TrackingCurrentAmperes : model.Drive.HoldingCurrentAmperes;
            sheet.Check("Power on", "Supply current, drives on less off", "A", i, AtRest(model, model.Drive.HoldingCurrentAmperes, ambient));
            sheet.Check("One motor turn", "Pulses", "", i, pulses);
            sheet.Check("One motor turn", "The worm turns by", "deg", i, 360.0 / before);
            sheet.Check("Sense of rotation", "Pulses for 1 deg", "", i, pulses * reduction / 360.0);
            if (model.EncoderCounts > 0.0)
            {
                sheet.Check("Sense of rotation", "Encoder counts for 1 deg", "", i, model.EncoderCounts / 360.0);
            }

            sheet.Check("Track for 10 min", "The axis moves", "arcsec/s", i, polar ? ArcsecondsPerTurn / SiderealDay : 0.0);
            if (polar)
            {
                sheet.Check("Track for 10 min", "One full step each", "s", i, SiderealDay / (steps * reduction));
            }

            sheet.Check("Track for 10 min", "Supply current, drives on less off", "A", i, AtRest(model, tracking, ambient));
            if (model.Motor.ThermalResistanceKelvinPerWatt > 0.0)
            {
                sheet.Check("Track for 10 min", $"Winding after 10 min, from {ambient.ToString(CultureInfo.InvariantCulture)} degC", "degC", i, Warmed(model, tracking, ambient));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Values_expected_of_the_slews(string name)
    {
        (Scenario scenario, var page) = ShippedReports.Of(name);
        (string Title, double Share)[] stages = [("A quarter of the slew rate", 0.25), ("Half the slew rate", 0.5), ("The full slew rate", 1.0)];
        Reader sheet = new(page.Sheet.Steps.SelectMany(step => step.Expected.Select(row => (step.Title, row))));
        foreach ((string title, double share) in stages)
        {
            // The same move by the way of a user: values laid over the file.
            IReadOnlyList<MountAxis> axes = AxisNames.Of(scenario.Setup);
            Scenario slower = share == 1.0 ? scenario : Shipped.Read(name, [.. axes.SelectMany(axis => Settings(scenario.Setup.Axis(axis), axis, share))]);
            foreach ((MountAxis axis, int i) in axes.Select((axis, i) => (axis, i)))
            {
                AxisOutcome outcome = MoveStudy.Run(slower.Setup, axis, new MoveOptions { Explain = false }).Outcome;
                AxisMotion motion = slower.Setup.Axis(axis).Motion;
                double degrees = motion.SlewRateRadiansPerSecond * 180.0 / Math.PI;
                (double ramp, double acceleration) = Ramp(motion, degrees);
                MoveSettings move = scenario.Setup.Move;
                double path = Math.Abs(axis == MountAxis.Polar ? move.End.PolarRadians - move.Start.PolarRadians : move.End.DeclinationRadians - move.Start.DeclinationRadians) * 180.0 / Math.PI;
                Assert.True(path > degrees * ramp, "the path is too short for the paper formula"); // no shipped one is
                sheet.Check(title, "Rate; greatest acceleration", "deg/s; deg/s\u00b2", i, degrees, acceleration);
                sheet.Check(title, "The move takes", "s", i, (path / degrees) + ramp);
                sheet.Check(title, "Peak supply current, on less off", "A", i, outcome.Power.PeakSupplyAmperes);
                string rest = $"Within {move.SettleToleranceRadians * 648000.0 / Math.PI:0} arcsec of its rest after";
                if (outcome.Settling?.AgainstRestSeconds is > 0.0 and var time && outcome.Verdict == MoveEnd.Arrives)
                {
                    sheet.Check(title, rest, "s", i, time);
                }
                else
                {
                    Assert.Equal(outcome.Verdict == MoveEnd.Arrives ? "at once" : outcome.Verdict == MoveEnd.Stalls ? "STALLS" : "CLUTCH SLIPS", sheet.Text(title, rest, "s", i));
                }
            }
        }
    }

    // Paper: a ramp at constant acceleration; an S-curve whose acceleration rises and falls over a share of the ramp peaks 1/(1 - share) higher.
    private static (double Seconds, double DegreesPerSecondSquared) Ramp(AxisMotion motion, double degreesPerSecond)
    {
        double shape = motion.Shape == RampShape.SCurve ? 1.0 - motion.JerkShare : 1.0;
        return motion.Ramp.Seconds is { } seconds
            ? (seconds, degreesPerSecond / (seconds * shape))
            : (degreesPerSecond / (motion.Ramp.RadiansPerSecondSquared!.Value * 180.0 / Math.PI * shape), motion.Ramp.RadiansPerSecondSquared.Value * 180.0 / Math.PI);
    }

    // By adding up small pieces: the rate rises with the acceleration, which for an S-curve rises and falls over its share of the ramp.
    private static double RampDegrees(AxisMotion motion, double degreesPerSecond, double seconds)
    {
        const int Pieces = 20_000;
        double start = motion.StartRateRadiansPerSecond * 180.0 / Math.PI, share = motion.Shape == RampShape.SCurve ? motion.JerkShare : 0.0, rate = 0.0, way = 0.0;
        double Acceleration(double place) => share == 0.0 ? 1.0 : Math.Min(1.0, Math.Min(place, 1.0 - place) / share);
        double whole = Enumerable.Range(0, Pieces).Sum(i => Acceleration((i + 0.5) / Pieces));
        for (int i = 0; i < Pieces; i++)
        {
            double gain = Acceleration((i + 0.5) / Pieces) / whole;
            way += (start + ((degreesPerSecond - start) * (rate + (0.5 * gain)))) * seconds / Pieces;
            rate += gain;
        }

        return way;
    }

    private static IEnumerable<string> Settings(AxisModel model, MountAxis axis, double share)
    {
        string key = axis.Key();
        double degrees = model.Motion.SlewRateRadiansPerSecond * 180.0 / Math.PI;
        yield return string.Create(CultureInfo.InvariantCulture, $"{key}.motion.slew_rate={share * degrees:R} deg/s");
        if (model.Motion.Ramp.RadiansPerSecondSquared is { } acceleration)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{key}.motion.acceleration={share * acceleration * 180.0 / Math.PI:R} deg/s^2");
        }
    }

    // By trial: the current at which what the supply gives less its own loss is the copper's loss.
    private static double AtRest(AxisModel model, double peak, double celsius)
    {
        double copper = model.Motor.ThermalResistanceKelvinPerWatt > 0.0 ? 1.0 + (0.00393 * (celsius - 20.0)) : 1.0;
        double watts = 2.0 * peak * peak / 2.0 * model.Motor.ResistanceOhms * copper, amperes = 0.0;
        for (int i = 0; i < 50; i++)
        {
            amperes = watts / (model.Drive.SupplyVolts - (model.Drive.SupplyResistanceOhms * amperes));
        }

        return amperes;
    }

    // Second by second.
    private static double Warmed(AxisModel model, double peak, double ambient)
    {
        double celsius = ambient, heatCapacity = model.Motor.ThermalTimeConstantSeconds / model.Motor.ThermalResistanceKelvinPerWatt;
        for (int second = 0; second < 600; second++)
        {
            double watts = peak * peak * model.Motor.ResistanceOhms * (1.0 + (0.00393 * (celsius - 20.0)));
            celsius += (watts - ((celsius - ambient) / model.Motor.ThermalResistanceKelvinPerWatt)) / heatCapacity;
        }

        return celsius;
    }

    /// <summary>Finds numbers of a sheet by their names, and keeps account of those that were asked for.</summary>
    private sealed class Reader(IEnumerable<(string Group, SheetRow Row)> rows)
    {
        private readonly List<(string Group, SheetRow Row)> rows = [.. rows];
        private readonly HashSet<(SheetRow Row, int Axis)> asked = [];

        public string Text(string group, string name, string unit, int axis)
        {
            SheetRow row = Assert.Single(rows, row => row.Group == group && row.Row.Name == name && row.Row.Unit == unit).Row;
            asked.Add((row, axis));
            return row.Values[axis];
        }

        /// <summary>Each number is right to the last digit that is printed.</summary>
        public void Check(string group, string name, string unit, int axis, params double[] expected)
        {
            string[] printed = Text(group, name, unit, axis).Split("; ");
            Assert.Equal(expected.Length, printed.Length);
            foreach ((double value, string text) in expected.Zip(printed))
            {
                double last = name.StartsWith("Winding", StringComparison.Ordinal) ? 1.0 : Math.Pow(10.0, Math.Floor(Math.Log10(Math.Max(Math.Abs(value), 1e-12))) + 1.0 - Digits(name, unit));
                double off = Math.Abs(double.Parse(text, CultureInfo.InvariantCulture) - value);
                Assert.True(off <= (0.5 * last) + (Rounding * Math.Abs(value)), $"{group}, {name}, {unit}: {text} is printed, {value:R} is worked out");
            }
        }

        /// <summary>Digits that are printed; zeros at the end may be left out.</summary>
        private static int Digits(string name, string unit) => (name, unit) switch
        {
            ("", "decimal") or ("Pulses per axis turn" or "Pulses per worm turn" or "Pulses per degree" or "Pulses per arcsec", _) => 9,
            (_, "arcsec/s; pulses/s") => 5,
            ("The worm turns by", _) or ("The axis moves", _) or ("One full step each", _) or ("Encoder counts for 1 deg", _) => 4,
            ("Slewing" or "Tracking" or "Holding" or "Backlash at the axis" or "Motors at their peak, through an ideal drive" or "With what the drive itself takes" or "The move takes" or "Rate; greatest acceleration", _) => 3,
            (_, "A") or ("Least torque margin" or "Swing of the rotor, of what it can hold", _) => 2,
            _ when name.StartsWith("Within", StringComparison.Ordinal) => 3,
            _ => 6,
        };

        public void NothingLeft() => Assert.DoesNotContain(
            rows.SelectMany(row => row.Row.Values.Select((value, axis) => (row.Row, value, axis))),
            cell => cell.Row.Name is not ("Shape" or "Shape; jerk share" or "Start rate, no ramp below it") && cell.value is not ("none" or "heating left out" or "never") && !asked.Contains((cell.Row, cell.axis)));
    }
}
