using AxisSim.Core.Mount;
using AxisSim.Core.Drives;
using AxisSim.Files.Units;
using static System.FormattableString;

namespace AxisSim.Files.Scenarios;

/// <summary>Says what was made of the figures of one axis where that is not plain from the file.</summary>
internal static class AxisNotes
{
    private static readonly string[] Currents = ["motor.rated_current", "drive.slew_current", "drive.tracking_current", "drive.holding_current"];

    /// <summary>Adds the notes of one axis.</summary>
    public static void Add(ValueSet values, string axis, AxisModel model, List<string> notes)
    {
        foreach (string path in Currents.Select(name => $"{axis}.{name}").Where(path => values.Given(path) is { Rms: true }))
        {
            double peak = values.Number(path);
            notes.Add(Invariant($"{path}: {peak / Math.Sqrt(2.0):G4} A rms is {peak:G4} A peak of the phase sine"));
        }

        double changeover = model.Drive.ChangeoverRadiansPerSecond, ratio = model.Train.TotalRatio;
        double steps = changeover / model.Motor.FullStepRadians;
        notes.Add(double.IsInfinity(changeover)
            ? $"{axis} drive: microsteps at every speed"
            : Invariant($"{axis} drive: full-steps above {changeover:G4} rad/s at the motor ({changeover * 30.0 / Math.PI:G4} rpm, {steps:G4} full steps/s), {changeover / ratio * 180.0 / Math.PI:G4} deg/s at the axis"));
        if (!values.Written($"{axis}.drive.damping") && !values.Written($"{axis}.drive.damping_share"))
        {
            notes.Add(Invariant($"{axis} drive: damping of the rotor assumed, {100.0 * model.Drive.DampingShare:G3} % of critical ({model.DampingNewtonMetreSecondsPerRadian * 1e3:G3} mN*m*s/rad); {100.0 * RotorDamping.LeastUsualShare:G3} to {100.0 * RotorDamping.MostUsualShare:G3} % is usual: give damping_share or damping if you know it"));
        }

        if (!values.Written($"{axis}.drive.regulator_time"))
        {
            notes.Add(Invariant($"{axis} drive: time constant of the current regulator assumed, {model.Drive.RegulatorSeconds * 1e6:G3} us; {ChopperDrive.LeastUsualRegulatorSeconds * 1e6:G3} to {ChopperDrive.MostUsualRegulatorSeconds * 1e6:G3} us is usual, and a longer one costs torque at speed"));
        }

        if (values[$"{axis}.motion.start_rate"] is { Place: not RatePlace.Axis })
        {
            notes.Add(Invariant($"{axis} motion: start rate {values.EntryOf($"{axis}.motion.start_rate").Shown} at the motor is {model.Motion.StartRateRadiansPerSecond * 180.0 / Math.PI:G4} deg/s at the axis"));
        }

        if (!values.Written($"{axis}.motor.thermal_resistance"))
        {
            notes.Add(Invariant($"{axis} motor: thermal resistance {model.Motor.ThermalResistanceKelvinPerWatt:G4} K/W by default (rated current in both phases at rest warms the winding by 80 K)"));
        }

        if (!values.Written($"{axis}.axis.breakaway"))
        {
            notes.Add(Invariant($"{axis} axis: breakaway friction taken as the running friction, {model.Bearings.BreakawayNewtonMetres:G4} N*m"));
        }
    }

    /// <summary>The notes with those that hold for both axes told once.</summary>
    public static IReadOnlyList<string> Merged(IReadOnlyList<string> notes)
    {
        HashSet<string> shared = [.. notes.Where(note => note.StartsWith("polar", StringComparison.Ordinal)).Select(note => "declination" + note["polar".Length..]).Where(notes.Contains)];
        return [.. notes.Where(note => !shared.Contains(note)).Select(note => note.StartsWith("polar", StringComparison.Ordinal) && shared.Contains("declination" + note["polar".Length..]) ? note + " (declination alike)" : note)];
    }
}
