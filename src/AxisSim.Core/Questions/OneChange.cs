using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Questions;

/// <summary>One thing changed in a re-run, to see whether that thing is to blame.</summary>
public enum OneChange
{
    /// <summary>Ten times the supply voltage, from a stiff supply.</summary>
    AmpleVoltage,

    /// <summary>No imbalance.</summary>
    WithoutImbalance,

    /// <summary>No wind.</summary>
    WithoutWind,

    /// <summary>No friction of bearings and seals.</summary>
    WithoutFriction,

    /// <summary>No loss in worm and stages.</summary>
    WithoutTrainLoss,

    /// <summary>A tenth of the inertia.</summary>
    TenthOfInertia,

    /// <summary>Microstepping throughout.</summary>
    WithoutFullStepping,

    /// <summary>A rotor whose swings are damped to half of critical; steady torque stays as it is.</summary>
    DampedRotor,

    /// <summary>A clutch that does not slip.</summary>
    RigidClutch,
}

/// <summary>Makes the changes of <see cref="OneChange"/>.</summary>
public static class OneChanges
{
    /// <summary>Times the supply voltage with which it is ample.</summary>
    public const double AmpleFactor = 10.0;

    /// <summary>Share of the critical damping of a damped rotor.</summary>
    public const double DampedShare = 0.5;

    private const double InertiaLeft = 0.1;

    /// <summary>The changes that mean anything for a setup.</summary>
    public static IReadOnlyList<OneChange> For(MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        double top = model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio;
        return
        [
            .. Enum.GetValues<OneChange>().Where(change => change switch
            {
                OneChange.WithoutFullStepping => top > model.Drive.ChangeoverRadiansPerSecond,
                OneChange.RigidClutch => double.IsFinite(model.Train.ClutchNewtonMetres),
                OneChange.WithoutWind => !WindTorque.Calm(setup.Disturbances),
                _ => true,
            }),
        ];
    }

    /// <summary>The setup with one thing changed.</summary>
    public static MountSetup Apply(this OneChange change, MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return change switch
        {
            OneChange.AmpleVoltage => setup.WithDrive(axis, drive => drive with { SupplyVolts = AmpleFactor * drive.SupplyVolts, SupplyResistanceOhms = 0.0, BrakeLimitVolts = double.PositiveInfinity }),
            OneChange.WithoutImbalance => setup with { Load = setup.Load.Scaled(1.0, 0.0) },
            OneChange.WithoutFriction => setup.Edit(axis, model => model with { Bearings = new AxisBearings() }),
            OneChange.WithoutTrainLoss => setup.Edit(axis, model => model with { Train = WithoutLoss(model.Train) }),
            OneChange.WithoutWind => setup with { Disturbances = setup.Disturbances with { WindMetresPerSecond = 0.0, GustMetresPerSecond = 0.0 } },
            OneChange.TenthOfInertia => setup with { Load = setup.Load.Scaled(InertiaLeft, 1.0) },
            OneChange.WithoutFullStepping => setup.WithChangeover(axis, double.PositiveInfinity),
            OneChange.DampedRotor => setup.WithDampingShare(axis, Math.Max(DampedShare, ShareOf(setup.Axis(axis)))),
            _ => setup.WithClutch(axis, double.PositiveInfinity),
        };
    }

    /// <summary>The train without loss in worm and stages.</summary>
    public static GearTrain WithoutLoss(GearTrain train)
    {
        ArgumentNullException.ThrowIfNull(train);
        return train with
        {
            Stages = [.. train.Stages.Select(stage => stage with { Efficiency = 1.0 })],
            Worm = train.Worm with { GivenDrivingEfficiency = 1.0, GivenBackDrivingEfficiency = 1.0 },
        };
    }

    /// <summary>Damping of the rotor as a share of critical.</summary>
    internal static double ShareOf(AxisModel model) => model.DampingNewtonMetreSecondsPerRadian / model.CriticalDampingNewtonMetreSecondsPerRadian;
}
