using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;

namespace AxisSim.Tests.Unit.Core.Mount.Checks;

/// <summary>A key of a scenario and the same figure in a setup made in code.</summary>
/// <param name="Key">Path of the key in the nominal scenario.</param>
/// <param name="Apply">Puts an SI value into a setup.</param>
/// <param name="Unit">Unit to write the value in where the key has none of its own.</param>
/// <param name="With">Settings that the key needs besides.</param>
internal sealed record SetupFigure(string Key, Func<MountSetup, double, MountSetup> Apply, string Unit = "", params string[] With);

/// <summary>Every numeric key that becomes a figure of a setup, beside that figure.</summary>
internal static class SetupTable
{
    public static IReadOnlyList<SetupFigure> All { get; } =
    [
        Motor("holding_torque", (m, v) => m with { HoldingTorqueNewtonMetres = v }),
        Motor("rated_current", (m, v) => m with { RatedCurrentAmperes = v }),
        Motor("resistance", (m, v) => m with { ResistanceOhms = v }),
        Motor("inductance", (m, v) => m with { InductanceHenries = v }),
        Motor("rotor_inertia", (m, v) => m with { RotorInertiaKilogramSquareMetres = v }),
        Motor("detent_torque", (m, v) => m with { DetentTorqueNewtonMetres = v }),
        Motor("steps_per_revolution", (m, v) => m with { StepsPerRevolution = (int)v }),
        Motor("viscous", (m, v) => m with { ViscousNewtonMetreSecondsPerRadian = v }),
        Motor("friction", (m, v) => m with { CoulombTorqueNewtonMetres = v }),
        Motor("thermal_resistance", (m, v) => m with { GivenThermalResistanceKelvinPerWatt = v }),
        Motor("thermal_time", (m, v) => m with { ThermalTimeConstantSeconds = v }),
        Drive("supply_voltage", (d, v) => d with { SupplyVolts = v }),
        Drive("supply_resistance", (d, v) => d with { SupplyResistanceOhms = v }),
        Drive("bus_capacitance", (d, v) => d with { BusCapacitanceFarads = v }),
        Drive("brake_limit", (d, v) => d with { BrakeLimitVolts = v }),
        Drive("slew_current", (d, v) => d with { SlewCurrentAmperes = v }),
        Drive("tracking_current", (d, v) => d with { TrackingCurrentAmperes = v }),
        Drive("holding_current", (d, v) => d with { HoldingCurrentAmperes = v }),
        Drive("current_fall_delay", (d, v) => d with { CurrentFallDelaySeconds = v }),
        Drive("microsteps", (d, v) => d with { MicrostepsPerFullStep = (int)v }),
        Drive("changeover", (d, v) => d with { ChangeoverRadiansPerSecond = v }, "rad/s"),
        Drive("full_step_current", (d, v) => d with { FullStepCurrentFraction = v }),
        Drive("regulator_time", (d, v) => d with { RegulatorSeconds = v }),
        Drive("damping", (d, v) => d with { GivenDampingNewtonMetreSecondsPerRadian = v }),
        Drive("damping_share", (d, v) => d with { DampingShare = v }),
        Drive("max_pulse_rate", (d, v) => d with { MaximumPulseRateHertz = v }),
        Stage("ratio", (s, v) => s with { DrivenTeeth = v, DrivingTeeth = 1.0 }),
        Stage("efficiency", (s, v) => s with { Efficiency = v }),
        Stage("inertia", (s, v) => s with { InertiaKilogramSquareMetres = v }),
        Stage("backlash", (s, v) => s with { BacklashRadians = v }),
        Train(
            "stages.belt.stiffness",
            (t, v) => t with { Stages = [t.Stages[0] with { StiffnessNewtonMetresPerRadian = v }], Worm = t.Worm with { InertiaKilogramSquareMetres = 5e-6 } },
            "polar.worm.inertia=5e-6 kg*m^2"),
        Worm("starts", (w, v) => w with { Starts = (int)v }),
        Worm("teeth", (w, v) => w with { WheelTeeth = (int)v }),
        Worm("lead_angle", (w, v) => w with { LeadAngleRadians = v, FrictionCoefficient = 0.06, GivenDrivingEfficiency = null }, "polar.worm.friction=0.06"),
        Worm("friction", (w, v) => w with { LeadAngleRadians = 4.0 * Math.PI / 180.0, FrictionCoefficient = v, GivenDrivingEfficiency = null }, "polar.worm.lead_angle=4 deg"),
        Worm("pressure_angle", (w, v) => w with { PressureAngleRadians = v }),
        Worm("inertia", (w, v) => w with { InertiaKilogramSquareMetres = v }),
        Worm("efficiency", (w, v) => w with { GivenDrivingEfficiency = v }),
        Worm("back_efficiency", (w, v) => w with { GivenBackDrivingEfficiency = v }),
        Error("periodic_error", (e, v) => e with { FirstAmplitudeRadians = v }),
        Error("periodic_phase", (e, v) => e with { FirstPhaseRadians = v }),
        Error("second_harmonic", (e, v) => e with { SecondAmplitudeRadians = v }),
        Error("second_phase", (e, v) => e with { SecondPhaseRadians = v }),
        Error("runout", (e, v) => e with { RunoutAmplitudeRadians = v }),
        Error("runout_phase", (e, v) => e with { RunoutPhaseRadians = v }),
        Train("axis.stiffness", (t, v) => t with { StiffnessNewtonMetresPerRadian = v }),
        Train("axis.damping_ratio", (t, v) => t with { DampingRatio = v }),
        Train("axis.backlash", (t, v) => t with { BacklashRadians = v }),
        Train("clutch.slip_torque", (t, v) => t with { ClutchNewtonMetres = v }),
        Axis("axis.friction", (a, v) => a with { Bearings = new AxisBearings { CoulombNewtonMetres = v, ViscousNewtonMetreSecondsPerRadian = a.Bearings.ViscousNewtonMetreSecondsPerRadian } }),
        Axis("axis.breakaway", (a, v) => a with { Bearings = a.Bearings with { BreakawayNewtonMetres = v } }),
        Axis("axis.viscous", (a, v) => a with { Bearings = a.Bearings with { ViscousNewtonMetreSecondsPerRadian = v } }),
        Axis("axis.encoder_counts", (a, v) => a with { EncoderCounts = v }),
        Axis("flexible.frequency", (a, v) => a with { Flexible = new FlexiblePayload { FrequencyHertz = v } }),
        Axis("flexible.damping_ratio", (a, v) => a with { Flexible = new FlexiblePayload { FrequencyHertz = 8.0, DampingRatio = v } }, "polar.flexible.frequency=8 Hz"),
        Axis("flexible.share", (a, v) => a with { Flexible = new FlexiblePayload { FrequencyHertz = 8.0, InertiaShare = v } }, "polar.flexible.frequency=8 Hz"),
        Motion("slew_rate", (m, v) => m with { SlewRateRadiansPerSecond = v }),
        Motion("ramp_time", (m, v) => m with { Ramp = Ramp.OfSeconds(v) }),
        Motion("acceleration", (m, v) => m with { Ramp = Ramp.OfAcceleration(v) }),
        Motion("jerk_share", (m, v) => m with { JerkShare = v }),
        Motion("start_rate", (m, v) => m with { StartRateRadiansPerSecond = v }, "deg/s"),
        Move("move.start_polar", (m, v) => m with { Start = m.Start with { PolarRadians = v } }),
        Move("move.end_polar", (m, v) => m with { End = m.End with { PolarRadians = v } }),
        Move("move.start_declination", (m, v) => m with { Start = m.Start with { DeclinationRadians = v }, End = m.End with { DeclinationRadians = v } }),
        Move("move.end_declination", (m, v) => m with { End = m.End with { DeclinationRadians = v } }),
        Move("move.observe", (m, v) => m with { ObserveSeconds = v }),
        Move("settling.tolerance", (m, v) => m with { SettleToleranceRadians = v }),
        Outside("wind", (d, v) => d with { WindMetresPerSecond = v }, "disturbances.area=0 m^2", "disturbances.lever=0 m"),
        Outside("gust", (d, v) => d with { GustMetresPerSecond = v }, "disturbances.area=0 m^2", "disturbances.lever=0 m"),
        Outside("gust_start", (d, v) => d with { GustStartSeconds = v }),
        Outside("gust_length", (d, v) => d with { GustSeconds = v }),
        Outside("turbulence", (d, v) => d with { TurbulenceIntensity = v }),
        Outside("turbulence_length", (d, v) => d with { TurbulenceLengthMetres = v }),
        Outside("turbulence_seed", (d, v) => d with { TurbulenceSeed = (int)v }),
        Outside("air_density", (d, v) => d with { AirDensityKilogramsPerCubicMetre = v }),
        Outside("drag_coefficient", (d, v) => d with { DragCoefficient = v }),
        Outside("area", (d, v) => d with { AreaSquareMetres = v }),
        Outside("lever", (d, v) => d with { LeverMetres = v }),
        Outside("cold_grease", (d, v) => d with { ColdGreaseFactor = v }),
        Outside("ambient", (d, v) => d with { AmbientCelsius = v }),
    ];

    private static SetupFigure Axis(string key, Func<AxisModel, double, AxisModel> apply, params string[] with) =>
        new("polar." + key, (setup, v) => setup with { Polar = apply(setup.Polar!, v) }, "", with);

    private static SetupFigure Motor(string key, Func<StepperMotor, double, StepperMotor> apply) => Axis("motor." + key, (a, v) => a with { Motor = apply(a.Motor, v) });

    private static SetupFigure Drive(string key, Func<ChopperDrive, double, ChopperDrive> apply, string unit = "") =>
        Axis("drive." + key, (a, v) => a with { Drive = apply(a.Drive, v) }) with { Unit = unit };

    private static SetupFigure Train(string key, Func<GearTrain, double, GearTrain> apply, params string[] with) => Axis(key, (a, v) => a with { Train = apply(a.Train, v) }, with);

    private static SetupFigure Stage(string key, Func<GearStage, double, GearStage> apply) => Train("stages.belt." + key, (t, v) => t with { Stages = [apply(t.Stages[0], v)] });

    private static SetupFigure Worm(string key, Func<WormStage, double, WormStage> apply, params string[] with) => Train("worm." + key, (t, v) => t with { Worm = apply(t.Worm, v) }, with);

    private static SetupFigure Error(string key, Func<PeriodicError, double, PeriodicError> apply) => Worm(key, (w, v) => w with { PeriodicError = apply(w.PeriodicError, v) });

    private static SetupFigure Motion(string key, Func<AxisMotion, double, AxisMotion> apply, string unit = "") =>
        Axis("motion." + key, (a, v) => a with { Motion = apply(a.Motion, v) }) with { Unit = unit };

    private static SetupFigure Move(string key, Func<MoveSettings, double, MoveSettings> apply) => new(key, (setup, v) => setup with { Move = apply(setup.Move, v) });

    private static SetupFigure Outside(string key, Func<Disturbances, double, Disturbances> apply, params string[] with) =>
        new("disturbances." + key, (setup, v) => setup with { Disturbances = apply(setup.Disturbances, v) }, "", with);
}
