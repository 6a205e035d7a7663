using AxisSim.Core.Drives;
using AxisSim.Core.Numerics;
using static System.FormattableString;

namespace AxisSim.Files.Scenarios;

/// <summary>Checks across the keys of motor, drive and motion of one axis.</summary>
internal static class DriveChecks
{
    private static readonly string[] Currents = ["slew_current", "tracking_current", "holding_current"];

    /// <summary>Reports all of them.</summary>
    public static void Report(ValueSet values, string axis)
    {
        CheckCurrents(values, axis);
        CheckMotion(values, axis);
        CheckDamping(values, axis);
        CheckPulses(values, axis);
        CheckWiring(values, axis);
        string limit = $"{axis}.drive.brake_limit";
        if (values.Maybe(limit) <= values.Number($"{axis}.drive.supply_voltage"))
        {
            Entry entry = values.EntryOf(limit);
            values.Problems.Error(entry, $"{entry.Shown} (not above the supply voltage)", Invariant($"a voltage above {values.Number($"{axis}.drive.supply_voltage"):G6} V"), Fix(entry, Invariant($"\"{values.Number($"{axis}.drive.supply_voltage") * 1.3:G3} V\"")));
        }
    }

    /// <summary>Rated current of the motor as wired, A; NaN while it is not known.</summary>
    private static double Rated(ValueSet values, string axis)
    {
        double rated = values.Number($"{axis}.motor.rated_current");
        bool halfCoil = values.Text($"{axis}.motor.figures_for") == "half-coil";
        return !halfCoil ? rated : values.Text($"{axis}.motor.wiring") switch
        {
            "bipolar-series" => rated / Math.Sqrt(2.0),
            "bipolar-parallel" => rated * Math.Sqrt(2.0),
            _ => rated,
        };
    }

    private static void CheckCurrents(ValueSet values, string axis)
    {
        double rated = Rated(values, axis);
        foreach (string path in Currents.Select(name => $"{axis}.drive.{name}").Where(path => values.Maybe(path) > rated * (1.0 + 1e-9)))
        {
            Entry entry = values.EntryOf(path);
            double current = values.Number(path);
            if (current > DriveBounds.GreatestOverRated * rated)
            {
                values.Problems.Error(entry, Invariant($"{entry.Shown} ({current:G4} A peak, {current / rated:G3} times the rated current)"), Invariant($"at most {DriveBounds.GreatestOverRated:G1} times the rated current of {rated:G4} A"), Fix(entry, Invariant($"\"{rated:G4} A\"")));
            }
            else
            {
                values.Problems.Note(entry, Invariant($"{current:G4} A peak is above the rated current of {rated:G4} A: the motor heats by {current / rated * (current / rated):G3} times the rated loss, and its torque is overstated, for the model leaves saturation of the iron out"));
            }
        }
    }

    private static void CheckMotion(ValueSet values, string axis)
    {
        string time = $"{axis}.motion.ramp_time", acceleration = $"{axis}.motion.acceleration", slew = $"{axis}.motion.slew_rate", start = $"{axis}.motion.start_rate";
        if (values.Written(time) && values.Written(acceleration))
        {
            Entry entry = values.EntryOf(acceleration);
            values.Problems.Error(entry, $"{entry.Shown} besides ramp_time ({values.EntryOf(time).Shown})", "ramp_time or acceleration, one of them", "one of the two");
        }
        else if (!values.Written(time) && !values.Written(acceleration) && values.Written(slew))
        {
            CrossChecks.Need(values, time, "the ramp needs ramp_time or acceleration", []);
        }

        double startRate = Rates.AtAxis(values, axis, start);
        if (values.Written(start) && startRate > values.Number(slew))
        {
            Entry entry = values.EntryOf(start);
            values.Problems.Error(entry, Invariant($"{entry.Shown} ({Degrees(startRate):G4} deg/s at the axis, above the slew rate)"), Invariant($"at most the slew rate of {Degrees(values.Number(slew)):G4} deg/s"), Fix(entry, Invariant($"\"{Degrees(values.Number(slew)):G4} deg/s\"")));
        }
    }

    private static void CheckDamping(ValueSet values, string axis)
    {
        string damping = $"{axis}.drive.damping", share = $"{axis}.drive.damping_share";
        if (values.Written(damping) && values.Written(share))
        {
            Entry entry = values.EntryOf(share);
            values.Problems.Error(entry, $"{entry.Shown} besides damping ({values.EntryOf(damping).Shown})", "damping or damping_share, one of them", "one of the two");
        }
    }

    private static void CheckPulses(ValueSet values, string axis)
    {
        string limitPath = $"{axis}.drive.max_pulse_rate", microPath = $"{axis}.drive.microsteps";
        double? limit = values.Maybe(limitPath);
        double stepsPerSecond = values.Number($"{axis}.motion.slew_rate") * Rates.TotalRatio(values, axis) / (2.0 * Math.PI) * values.Number($"{axis}.motor.steps_per_revolution");
        double pulses = stepsPerSecond * values.Number(microPath);
        if (limit is null || !(pulses > limit * (1.0 + 1e-9)))
        {
            return;
        }

        // Drives offer powers of two; the greatest that fits is what one would set.
        double most = Math.Floor(limit.Value / stepsPerSecond);
        double fits = most >= 1.0 ? Math.Pow(2.0, Math.Floor(Math.Log2(most))) : 0.0;
        Entry entry = values.EntryOf(values.Written(microPath) ? microPath : limitPath);
        string fix = fits >= 1.0 && values.Written(microPath) ? Fix(values.EntryOf(microPath), Invariant($"{fits:F0}")) : "a lower slew_rate or a higher max_pulse_rate";
        values.Problems.Error(entry, Invariant($"{entry.Shown} microsteps (at the slew rate {stepsPerSecond:F0} full steps/s x {values.Number(microPath):F0} = {pulses:F0} pulses/s, above max_pulse_rate of {limit.Value:F0} pulses/s)"), Invariant($"at most {Rate(limit.Value, stepsPerSecond, values, axis)}{(fits >= 1.0 ? Invariant($", or {fits:F0} microsteps at this slew rate") : "; the controller cannot pulse this slew rate even in full steps")}"), fix);
    }

    // Cut to three digits, never rounded up: it must pass when it is typed.
    private static string Rate(double limit, double stepsPerSecond, ValueSet values, string axis)
    {
        double most = Degrees(values.Number($"{axis}.motion.slew_rate")) * limit / (stepsPerSecond * values.Number($"{axis}.drive.microsteps"));
        return Invariant($"{RoundDigits.Down(most, 3):G3} deg/s with {values.Number($"{axis}.drive.microsteps"):F0} microsteps");
    }

    private static void CheckWiring(ValueSet values, string axis)
    {
        string figures = $"{axis}.motor.figures_for", wiring = $"{axis}.motor.wiring";
        if (values.Text(figures) == "half-coil" && !values.Written(wiring))
        {
            CrossChecks.Need(values, wiring, "figures for a half coil need the wiring", []);
        }
        else if (values.Text(figures) == "as-wired" && values.Given(wiring) is not null)
        {
            values.Problems.Note(values.EntryOf(wiring), "the figures are taken as those of the motor as it is wired, so the wiring converts nothing; write figures_for = \"half-coil\" if they are for one half coil");
        }
    }

    private static double Degrees(double radians) => radians * 180.0 / Math.PI;

    private static string Fix(Entry entry, string value) => ValueSet.Fix(entry, Keys.ScenarioKeys.Find(entry.Path)!, value);
}
