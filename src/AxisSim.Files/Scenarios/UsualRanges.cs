using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using static System.FormattableString;

namespace AxisSim.Files.Scenarios;

/// <summary>Usual ranges of what a scenario may leave out: the ends at which a verdict is tried again.</summary>
/// <remarks>
/// Damping and the regulator's time have their sources beside their laws (<see cref="RotorDamping"/>, <see cref="ChopperDrive"/>). All others are common practice, no
/// source: bearings and seals break away at up to twice their running friction; a motor's own bearings take up to 2 % of its holding torque; grease adds up to half the
/// dry friction at the slew rate; supply and leads have up to half an ohm; a train is damped with 2 to 10 % of critical; a full step has 0.707 to all of the sine's peak;
/// a tube on its saddle swings at 6 Hz or more with half of the inertia.
/// </remarks>
internal static class UsualRanges
{
    /// <summary>The keys that were left out, for every axis of a document.</summary>
    public static IReadOnlyList<AssumedKey> Of(ValueSet values, AxisModel? polar, AxisModel? declination)
    {
        var assumed = new List<AssumedKey>();
        if (polar is not null)
        {
            Add(assumed, values, "polar", polar);
        }

        // What a declination axis that is like the polar one takes over goes with the polar axis' setting.
        if (declination is not null && !values.Written("declination.like"))
        {
            Add(assumed, values, "declination", declination);
        }

        if (!values.Written("disturbances.cold_grease"))
        {
            assumed.Add(new AssumedKey("disturbances.cold_grease", "grease as at room temperature", [["disturbances.cold_grease=1.5"]]));
        }

        return assumed;
    }

    private static void Add(List<AssumedKey> assumed, ValueSet values, string axis, AxisModel model)
    {
        void Key(string name, bool matters, string taken, params string[] ends)
        {
            if (matters && !values.Written($"{axis}.{name}"))
            {
                assumed.Add(new AssumedKey($"{axis}.{name}", taken, [.. ends.Select(end => new[] { $"{axis}.{name}={end}" })]));
            }
        }

        double friction = model.Bearings.CoulombNewtonMetres, rate = model.Motion.SlewRateRadiansPerSecond;
        bool fullSteps = rate * model.Train.TotalRatio > model.Drive.ChangeoverRadiansPerSecond;
        Key("drive.damping_share", !values.Written($"{axis}.drive.damping"), Invariant($"{100.0 * RotorDamping.UsualShare:G3} % of critical"), Invariant($"{RotorDamping.LeastUsualShare:G3}"), Invariant($"{RotorDamping.MostUsualShare:G3}"));
        Key("drive.regulator_time", true, Invariant($"{1e6 * ChopperDrive.UsualRegulatorSeconds:G3} us"), Invariant($"{1e6 * ChopperDrive.LeastUsualRegulatorSeconds:G3} us"), Invariant($"{1e6 * ChopperDrive.MostUsualRegulatorSeconds:G3} us"));
        Key("drive.supply_resistance", true, "none", "0.5 ohm");
        Key("drive.full_step_current", fullSteps, "the peak of the sine", "0.707");
        Key("motor.friction", true, "none", Invariant($"{0.02 * model.Motor.HoldingTorqueNewtonMetres:G3} N*m"));
        Key("axis.breakaway", friction > 0.0, "the running friction", Invariant($"{2.0 * friction:G3} N*m"));
        Key("axis.viscous", friction > 0.0, "none", Invariant($"{0.5 * friction / rate:G3} N*m*s/rad"));
        Key("axis.damping_ratio", true, "5 %", "0.02", "0.1");
        if (!values.Written($"{axis}.flexible.frequency"))
        {
            assumed.Add(new AssumedKey($"{axis}.flexible.frequency", "a rigid payload", [[$"{axis}.flexible.frequency=6 Hz"]]));
        }
    }
}
