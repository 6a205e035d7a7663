using System.Globalization;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;

namespace AxisSim.Cli.Input;

/// <summary>The settings that put a candidate into a scenario at its safe rates.</summary>
internal static class CandidateSettings
{
    /// <summary>All of them; null where a stage would have to be added, for that takes an edit of the file.</summary>
    public static IReadOnlyList<string>? Of(MountSetup mount, CandidateResult result)
    {
        ArgumentNullException.ThrowIfNull(mount);
        return result.Axes.Any(axis => mount.Axis(axis.Axis).Train.Stages.Count < result.Setup.Axis(axis.Axis).Train.Stages.Count) ? null : [.. result.Axes.SelectMany(axis => Axis(axis.Axis.Key(), mount.Axis(axis.Axis), result.Setup.Axis(axis.Axis)))];
    }

    private static IEnumerable<string> Axis(string axis, AxisModel before, AxisModel model)
    {
        StepperMotor motor = model.Motor;
        ChopperDrive drive = model.Drive;
        string Motor(string key, string value) => $"{axis}.motor.{key}={value}";
        string Drive(string key, string value) => $"{axis}.drive.{key}={value}";
        yield return Motor("figures_for", "as-wired");
        yield return Motor("steps_per_revolution", Say.Count(motor.StepsPerRevolution));
        yield return Motor("holding_torque", With(motor.HoldingTorqueNewtonMetres, "N*m"));
        yield return Motor("rated_current", With(motor.RatedCurrentAmperes, "A"));
        yield return Motor("resistance", With(motor.ResistanceOhms, "ohm"));
        yield return Motor("inductance", With(motor.InductanceHenries * 1e3, "mH"));
        yield return Motor("rotor_inertia", With(motor.RotorInertiaKilogramSquareMetres * 1e7, "g*cm^2"));
        yield return Motor("detent_torque", With(motor.DetentTorqueNewtonMetres * 1e3, "mN*m"));
        yield return Motor("viscous", With(motor.ViscousNewtonMetreSecondsPerRadian, "N*m*s/rad"));
        yield return Motor("friction", With(motor.CoulombTorqueNewtonMetres * 1e3, "mN*m"));
        yield return Motor("insulation_class", motor.Insulation.ToString());
        yield return Motor("thermal_time", With(motor.ThermalTimeConstantSeconds, "s"));
        yield return Motor("thermal_resistance", With(motor.ThermalResistanceKelvinPerWatt, "K/W"));
        yield return Drive("supply_voltage", With(drive.SupplyVolts, "V"));
        if (double.IsFinite(drive.BrakeLimitVolts))
        {
            yield return Drive("brake_limit", With(drive.BrakeLimitVolts, "V"));
        }

        yield return Drive("slew_current", With(drive.SlewCurrentAmperes, "A"));
        yield return Drive("tracking_current", With(drive.TrackingCurrentAmperes, "A"));
        yield return Drive("holding_current", With(drive.HoldingCurrentAmperes, "A"));
        if (double.IsFinite(drive.ChangeoverRadiansPerSecond))
        {
            yield return Drive("changeover", With(drive.ChangeoverRadiansPerSecond, "rad/s"));
        }

        foreach ((GearStage was, GearStage stage) in before.Train.Stages.Zip(model.Train.Stages).Where(pair => pair.First.Ratio != pair.Second.Ratio))
        {
            yield return $"{axis}.stages.{was.Name}.ratio={Number(stage.Ratio)}";
        }

        if (before.Motion.Ramp.RadiansPerSecondSquared is not null)
        {
            // The comparison keeps the ramp time; a file with an acceleration must be given the one that keeps it.
            yield return $"{axis}.motion.acceleration={With(Units.Degrees(model.Motion.PeakAcceleration), "deg/s^2")}";
        }

        yield return $"{axis}.motion.slew_rate={With(Units.Degrees(model.Motion.SlewRateRadiansPerSecond), "deg/s")}";
    }

    private static string With(double value, string unit) => $"{Number(value)} {unit}";

    // Twelve digits are more than any datasheet has, and hide what conversions leave in the last ones.
    private static string Number(double value) => value.ToString("G12", CultureInfo.InvariantCulture);
}
