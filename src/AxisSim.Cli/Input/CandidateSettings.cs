using System.Globalization;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>The settings that put a candidate into a scenario at its safe rates.</summary>
internal static class CandidateSettings
{
    /// <summary>All of them, with where each comes from; a stage that the reduction needs and the mount lacks is one of them.</summary>
    /// <param name="mount">The mount of the scenario.</param>
    /// <param name="result">The candidate.</param>
    /// <param name="source">Where the motor's figures are from.</param>
    public static IReadOnlyList<NotedSetting> Of(MountSetup mount, CandidateResult result, string source)
    {
        ArgumentNullException.ThrowIfNull(mount);
        ArgumentNullException.ThrowIfNull(result);
        return [.. result.Axes.SelectMany(axis => Axis(axis.Axis.Key(), mount.Axis(axis.Axis), result.Setup.Axis(axis.Axis), source))];
    }

    private static IEnumerable<NotedSetting> Axis(string axis, AxisModel before, AxisModel model, string source)
    {
        StepperMotor motor = model.Motor;
        ChopperDrive drive = model.Drive;
        const string Share = "the same share of the rated current as before";
        NotedSetting Motor(string key, string value) => new($"{axis}.motor.{key}={value}", source);
        NotedSetting Drive(string key, string value, string note) => new($"{axis}.drive.{key}={value}", note);
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
        yield return Drive("supply_voltage", With(drive.SupplyVolts, "V"), before.Drive.SupplyVolts == drive.SupplyVolts ? "as before" : "the supply compared, less what the drive loses");
        if (double.IsFinite(drive.BrakeLimitVolts))
        {
            yield return Drive("brake_limit", With(drive.BrakeLimitVolts, "V"), "in the same ratio to the supply as before");
        }

        yield return Drive("slew_current", With(drive.SlewCurrentAmperes, "A"), $"{Units.Percent(drive.SlewCurrentAmperes / motor.RatedCurrentAmperes)} of the rated current");
        yield return Drive("tracking_current", With(drive.TrackingCurrentAmperes, "A"), Share);
        yield return Drive("holding_current", With(drive.HoldingCurrentAmperes, "A"), Share);
        if (double.IsFinite(drive.ChangeoverRadiansPerSecond))
        {
            yield return Drive("changeover", With(drive.ChangeoverRadiansPerSecond, "rad/s"), "the same rate in full steps a second as before");
        }

        foreach ((GearStage was, GearStage stage) in before.Train.Stages.Zip(model.Train.Stages).Where(pair => pair.First.Ratio != pair.Second.Ratio))
        {
            yield return new($"{axis}.stages.{was.Name}.ratio={Number(stage.Ratio)}", Reduction(model));
        }

        foreach (GearStage stage in model.Train.Stages.Skip(before.Train.Stages.Count))
        {
            yield return new($"{axis}.stages.{stage.Name}.ratio={Number(stage.Ratio)}", Reduction(model));
            yield return new($"{axis}.stages.{stage.Name}.efficiency={Number(stage.Efficiency)}", "a belt, common practice");
        }

        if (before.Motion.Ramp.RadiansPerSecondSquared is not null)
        {
            // The comparison keeps the ramp time; a file with an acceleration must be given the one that keeps it.
            yield return new($"{axis}.motion.acceleration={With(Units.Degrees(model.Motion.PeakAcceleration), "deg/s^2")}", "keeps the ramp time");
        }

        yield return new($"{axis}.motion.slew_rate={With(Units.Degrees(model.Motion.SlewRateRadiansPerSecond), "deg/s")}", "the greatest that holds with the margin asked for");
    }

    private static string Reduction(AxisModel model) => $"a total reduction of {Say.Number(model.Train.TotalRatio, 4)}";

    private static string With(double value, string unit) => $"{Number(value)} {unit}";

    // Twelve digits are more than any datasheet has, and hide what conversions leave in the last ones.
    private static string Number(double value) => value.ToString("G12", CultureInfo.InvariantCulture);
}
