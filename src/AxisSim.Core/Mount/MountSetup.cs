using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Mount;

/// <summary>Everything about one axis that does not depend on the other.</summary>
public sealed record AxisModel
{
    /// <summary>The motor as wired.</summary>
    public required StepperMotor Motor { get; init; }

    /// <summary>Its drive and supply.</summary>
    public required ChopperDrive Drive { get; init; }

    /// <summary>The transmission.</summary>
    public required GearTrain Train { get; init; }

    /// <summary>Bearings of the axis.</summary>
    public required AxisBearings Bearings { get; init; }

    /// <summary>Flexible payload, or null when rigid.</summary>
    public FlexiblePayload? Flexible { get; init; }

    /// <summary>How the axis is commanded.</summary>
    public required AxisMotion Motion { get; init; }

    /// <summary>Counts per axis revolution of an encoder on the axis; 0 when there is none.</summary>
    public double EncoderCounts { get; init; }

    /// <summary>Inertia that swings on the motor's field, at its shaft: rotor and train without the load, kg m2.</summary>
    public double RotorSideInertiaKilogramSquareMetres => Motor.RotorInertiaKilogramSquareMetres + Train.ReflectedTrainInertia;

    /// <summary>Critical damping of that inertia on the microstepping field at the slew current, N m s/rad; see <see cref="RotorDamping"/>.</summary>
    public double CriticalDampingNewtonMetreSecondsPerRadian =>
        StaticTorque.CriticalDamping(Motor, StaticTorque.Peak(Motor, Drive.SlewCurrentAmperes, 0.0), RotorSideInertiaKilogramSquareMetres);

    /// <summary>Damping of the rotor in use: the one given, or the share of critical, N m s/rad.</summary>
    public double DampingNewtonMetreSecondsPerRadian =>
        Drive.GivenDampingNewtonMetreSecondsPerRadian ?? (Drive.DampingShare * CriticalDampingNewtonMetreSecondsPerRadian);
}

/// <summary>A whole mount and one move of it: what a checked scenario becomes.</summary>
public sealed record MountSetup
{
    /// <summary>The polar axis; null when the scenario leaves it out (its pose then follows its plan ideally or rests).</summary>
    public AxisModel? Polar { get; init; }

    /// <summary>The declination axis; null when the scenario leaves it out.</summary>
    public AxisModel? Declination { get; init; }

    /// <summary>Inertia and imbalance of what turns.</summary>
    public required MountLoad Load { get; init; }

    /// <summary>The move.</summary>
    public required MoveSettings Move { get; init; }

    /// <summary>Wind, cold and the sync probe.</summary>
    public required Disturbances Disturbances { get; init; }

    /// <summary>The model of one axis; throws when the scenario has none.</summary>
    public AxisModel Axis(MountAxis axis) =>
        (axis == MountAxis.Polar ? Polar : Declination) ?? throw new InvalidOperationException($"the setup has no {axis} axis");

    /// <summary>Whether an axis tracks the sky after the slew.</summary>
    public bool Tracks(MountAxis axis) => axis == MountAxis.Polar && Move.FollowUp == FollowUp.Sidereal;

    /// <summary>The same setup with one axis replaced.</summary>
    public MountSetup With(MountAxis axis, AxisModel model) =>
        axis == MountAxis.Polar ? this with { Polar = model } : this with { Declination = model };
}
