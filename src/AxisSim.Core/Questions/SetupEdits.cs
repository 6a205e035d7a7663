using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Questions;

/// <summary>A mount with one figure of one axis changed: every edit that a study makes, each with one meaning.</summary>
/// <remarks>SI units. Nothing else changes but what the hardware ties to the figure, as each edit says.</remarks>
public static class SetupEdits
{
    /// <summary>Efficiency of a stage that has to be added: a toothed belt, 0.95 to 0.98 (common practice, no source).</summary>
    public const double BeltEfficiency = 0.97;

    private const double SameRatio = 1e-9;

    /// <summary>Another slew rate, rad/s at the axis; a ramp given as a time keeps its time, one given as an acceleration its acceleration.</summary>
    public static MountSetup WithSlewRate(this MountSetup setup, MountAxis axis, double radiansPerSecond) =>
        Edit(setup, axis, model => model with { Motion = model.Motion with { SlewRateRadiansPerSecond = radiansPerSecond } });

    /// <summary>Another ramp, as a time, s.</summary>
    public static MountSetup WithRampTime(this MountSetup setup, MountAxis axis, double seconds) =>
        Edit(setup, axis, model => model with { Motion = model.Motion with { Ramp = Ramp.OfSeconds(seconds) } });

    /// <summary>Another ramp, as a greatest acceleration, rad/s2 at the axis.</summary>
    public static MountSetup WithAcceleration(this MountSetup setup, MountAxis axis, double radiansPerSecondSquared) =>
        Edit(setup, axis, model => model with { Motion = model.Motion with { Ramp = Ramp.OfAcceleration(radiansPerSecondSquared) } });

    /// <summary>Another slew current, A peak.</summary>
    public static MountSetup WithSlewCurrent(this MountSetup setup, MountAxis axis, double amperes) => WithDrive(setup, axis, drive => drive with { SlewCurrentAmperes = amperes });

    /// <summary>Another changeover, rad/s of the motor; infinite for microstepping throughout.</summary>
    public static MountSetup WithChangeover(this MountSetup setup, MountAxis axis, double radiansPerSecond) => WithDrive(setup, axis, drive => drive with { ChangeoverRadiansPerSecond = radiansPerSecond });

    /// <summary>Another damping of the rotor, as a share of critical.</summary>
    public static MountSetup WithDampingShare(this MountSetup setup, MountAxis axis, double share) =>
        WithDrive(setup, axis, drive => drive with { GivenDampingNewtonMetreSecondsPerRadian = null, DampingShare = share });

    /// <summary>Another supply voltage, V; a limit for braking keeps its ratio to it.</summary>
    public static MountSetup WithSupply(this MountSetup setup, MountAxis axis, double volts) =>
        WithDrive(setup, axis, drive => drive with { SupplyVolts = volts, BrakeLimitVolts = drive.BrakeLimitVolts * volts / drive.SupplyVolts });

    /// <summary>A clutch that slips at another torque, N m about the axis; infinite for one that cannot.</summary>
    public static MountSetup WithClutch(this MountSetup setup, MountAxis axis, double newtonMetres) =>
        Edit(setup, axis, model => model with { Train = model.Train with { ClutchNewtonMetres = newtonMetres } });

    /// <summary>
    /// Another total reduction, motor turns per axis turn: the last stage before the worm gets another ratio, and keeps its efficiency, inertia, backlash and stiffness at its own shafts. Where
    /// there is no stage, one is added: a belt without inertia (<see cref="BeltEfficiency"/>). Below the worm's own ratio the stage steps up.
    /// </summary>
    public static MountSetup WithReduction(this MountSetup setup, MountAxis axis, double totalReduction)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(totalReduction);
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        GearTrain train = WithReduction(model.Train, totalReduction);
        return ReferenceEquals(train, model.Train) ? setup : setup.With(axis, model with { Train = train });
    }

    /// <summary>The train with another total reduction, likewise.</summary>
    public static GearTrain WithReduction(GearTrain train, double totalReduction)
    {
        ArgumentNullException.ThrowIfNull(train);
        double last = LastStageRatio(train, totalReduction);
        if (Math.Abs((totalReduction / train.TotalRatio) - 1.0) < SameRatio)
        {
            return train;
        }

        GearStage stage = train.Stages.Count > 0 ? train.Stages[^1] : new GearStage { Name = "belt", DrivenTeeth = 1.0, DrivingTeeth = 1.0, Efficiency = BeltEfficiency };
        return train with { Stages = [.. train.Stages.SkipLast(1), stage with { DrivenTeeth = last, DrivingTeeth = 1.0 }] };
    }

    /// <summary>Ratio of the last stage before the worm at a total reduction; below one it steps up.</summary>
    public static double LastStageRatio(GearTrain train, double totalReduction)
    {
        ArgumentNullException.ThrowIfNull(train);
        return totalReduction / train.Worm.Ratio / train.Stages.SkipLast(1).Aggregate(1.0, (product, stage) => product * stage.Ratio);
    }

    /// <summary>Inertia, imbalance and the axis' friction of bearings times a factor: what a load factor means.</summary>
    public static MountSetup Loaded(this MountSetup setup, MountAxis axis, double factor)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return (setup with { Load = setup.Load.Scaled(factor, factor) }).WithBearings(axis, factor);
    }

    /// <summary>All friction of the axis' bearings and seals times a factor.</summary>
    public static MountSetup WithBearings(this MountSetup setup, MountAxis axis, double factor) => Edit(setup, axis, model => model with
    {
        Bearings = new AxisBearings
        {
            CoulombNewtonMetres = model.Bearings.CoulombNewtonMetres * factor,
            BreakawayNewtonMetres = model.Bearings.BreakawayNewtonMetres * factor,
            ViscousNewtonMetreSecondsPerRadian = model.Bearings.ViscousNewtonMetreSecondsPerRadian * factor,
        },
    });

    /// <summary>The imbalance of one axis scaled so that its greatest gravity torque over the planned path is another, N m.</summary>
    public static MountSetup WithWorstImbalance(this MountSetup setup, MountAxis axis, double newtonMetres)
    {
        double now = WorstImbalance(setup, axis);
        double factor = now > 0.0 ? newtonMetres / now : 1.0;
        MountLoad load = setup.Load;
        return setup with
        {
            Load = axis == MountAxis.Polar
                ? load with { PolarGravity = [.. load.PolarGravity.Select(x => x * factor)] }
                : load with { DeclinationGravity = [.. load.DeclinationGravity.Select(x => x * factor)] },
        };
    }

    /// <summary>Greatest gravity torque about the axis over the planned path, N m.</summary>
    public static double WorstImbalance(MountSetup setup, MountAxis axis)
    {
        const int Places = 200;
        ArgumentNullException.ThrowIfNull(setup);
        var plan = new MovePlan(setup);
        return Enumerable.Range(0, Places + 1).Max(i => Math.Abs(setup.Load.GravityTorque(axis, plan.Pose(plan.SlewSeconds * i / Places))));
    }

    /// <summary>One axis replaced by what an edit makes of it.</summary>
    public static MountSetup Edit(this MountSetup setup, MountAxis axis, Func<AxisModel, AxisModel> edit)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(edit);
        return setup.With(axis, edit(setup.Axis(axis)));
    }

    /// <summary>One axis' drive replaced by what an edit makes of it.</summary>
    public static MountSetup WithDrive(this MountSetup setup, MountAxis axis, Func<ChopperDrive, ChopperDrive> edit)
    {
        ArgumentNullException.ThrowIfNull(edit);
        return Edit(setup, axis, model => model with { Drive = edit(model.Drive) });
    }
}
