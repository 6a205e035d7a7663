using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>A change of the mount itself, of which it is asked what it would buy.</summary>
public enum MountChange
{
    /// <summary>A quarter more supply voltage.</summary>
    MoreVoltage,

    /// <summary>A quarter more reduction.</summary>
    MoreReduction,

    /// <summary>A quarter less reduction.</summary>
    LessReduction,

    /// <summary>Half the imbalance.</summary>
    BetterBalance,

    /// <summary>A quarter less friction of bearings.</summary>
    LessFriction,

    /// <summary>A quarter less inertia.</summary>
    LessInertia,

    /// <summary>Half as much ramp time again.</summary>
    LongerRamp,

    /// <summary>The rated current, where less is set.</summary>
    MoreCurrent,

    /// <summary>A motor of a quarter more torque at the same current, inductance and resistance.</summary>
    StrongerMotor,

    /// <summary>Half as many microsteps, for a pulse rate that ends it.</summary>
    FewerMicrosteps,
}

/// <summary>Makes changes of a mount.</summary>
public static class MountChanges
{
    private const double More = 1.25;
    private const double Less = 0.75;
    private const double Half = 0.5;
    private const double LongerBy = 1.5;

    /// <summary>Mount and settings with a change; null where it does not apply.</summary>
    public static (MountSetup Setup, AxisSettings Settings)? Apply(MountChange change, MountSetup setup, MountAxis axis, AxisSettings settings)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        return change switch
        {
            MountChange.MoreVoltage => (setup.WithSupply(axis, More * model.Drive.SupplyVolts), settings),
            MountChange.MoreReduction => (setup.WithReduction(axis, More * model.Train.TotalRatio), settings),
            MountChange.LessReduction => (setup.WithReduction(axis, Less * model.Train.TotalRatio), settings),
            MountChange.BetterBalance => (setup with { Load = setup.Load.Scaled(1.0, Half) }, settings),
            MountChange.LessFriction => (setup.WithBearings(axis, Less), settings),
            MountChange.LessInertia => (setup with { Load = setup.Load.Scaled(Less, 1.0) }, settings),
            MountChange.LongerRamp => (setup, settings with { RampSeconds = LongerBy * settings.RampSeconds }),
            MountChange.MoreCurrent when settings.SlewCurrentAmperes < 0.999 * model.Motor.RatedCurrentAmperes => (setup, settings with { SlewCurrentAmperes = model.Motor.RatedCurrentAmperes }),
            MountChange.StrongerMotor => ((ToleranceFactors.Nominal with { MotorTorque = More }).Apply(setup, axis), settings),
            MountChange.FewerMicrosteps when model.Drive.MicrostepsPerFullStep % 2 == 0 && double.IsFinite(model.Drive.MaximumPulseRateHertz) =>
                (setup.WithDrive(axis, drive => drive with { MicrostepsPerFullStep = drive.MicrostepsPerFullStep / 2 }), settings),
            _ => null,
        };
    }
}
