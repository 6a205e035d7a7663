using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Files.Units;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Keys;

/// <summary>Keys of one axis: motor, drive, motion, bearings and load. Bounds are there to catch slips of unit or digit, not to judge a design.</summary>
internal static class AxisKeys
{
    /// <summary>Keys below <c>polar.</c> or <c>declination.</c>.</summary>
    public static IEnumerable<ScenarioKey> Of(string axis) =>
        Motor($"{axis}.motor").Concat(Drive($"{axis}.drive")).Concat(TrainKeys.Of(axis)).Concat(Bearings(axis)).Concat(Motion($"{axis}.motion")).Concat(Load($"{axis}.load"));

    private static IEnumerable<ScenarioKey> Motor(string s) =>
    [
        Needed($"{s}.holding_torque", Dimension.Torque, "0.44 N*m", MotorBounds.HoldingTorque, "Holding torque of the datasheet: both phases on at the rated current."),
        Needed($"{s}.rated_current", Dimension.Current, "1.5 A", MotorBounds.RatedCurrent, "Rated current per phase: direct current, which is the peak of the microstepping sine."),
        Needed($"{s}.resistance", Dimension.Resistance, "1.5 ohm", MotorBounds.Resistance, "Resistance per phase at 20 degC."),
        Needed($"{s}.inductance", Dimension.Inductance, "3 mH", MotorBounds.Inductance, "Inductance per phase."),
        Needed($"{s}.rotor_inertia", Dimension.Inertia, "60 g*cm^2", MotorBounds.RotorInertia, "Inertia of the rotor with what sits on its shaft."),
        Needed($"{s}.detent_torque", Dimension.Torque, "0.015 N*m", MotorBounds.DetentTorque, "Detent torque: what the unpowered motor resists by itself. Write \"0 N*m\" to leave it out."),
        Number($"{s}.steps_per_revolution", KeyKind.WholeNumber, null, "200", MotorBounds.StepsPerRevolution, "Full steps per revolution: 200 for a motor of 1.8 deg, 400 for 0.9 deg."),
        Given($"{s}.viscous", Dimension.Damping, "0 N*m*s/rad", "1e-5 N*m*s/rad", MotorBounds.Viscous, "Viscous drag on the shaft (bearings, eddy currents)."),
        Given($"{s}.friction", Dimension.Torque, "0 N*m", "0.005 N*m", MotorBounds.CoulombTorque, "Dry friction of the motor's own bearings."),
        Free($"{s}.thermal_resistance", Dimension.ThermalResistance, "rated current in both phases at rest raises the winding by 80 K", "12 K/W", MotorBounds.ThermalResistance, "Thermal resistance from winding to ambient."),
        Given($"{s}.thermal_time", Dimension.Time, "25 min", "25 min", MotorBounds.ThermalTimeConstant, "Thermal time constant; 15 to 40 min by size (common practice)."),
        Choice($"{s}.insulation_class", "B", "Thermal class of the insulation (IEC 60085).", "A", "E", "B", "F", "H", "N"),
        Choice($"{s}.figures_for", "as-wired", "What the figures above are for: the motor as it is wired, or one half coil of each phase.", "as-wired", "half-coil"),
        Choice($"{s}.wiring", null, "How the half coils are wired; converts figures that are for a half coil.", "bipolar-series", "bipolar-parallel", "half-coil") with { Required = false, DefaultInWords = "needed only with figures_for = \"half-coil\"" },
    ];

    private static IEnumerable<ScenarioKey> Drive(string s) =>
    [
        Needed($"{s}.supply_voltage", Dimension.Voltage, "24 V", DriveBounds.SupplyVoltage, "Open-circuit voltage of the supply."),
        Given($"{s}.supply_resistance", Dimension.Resistance, "0 ohm", "0.3 ohm", DriveBounds.SupplyResistance, "Resistance of supply and leads; 0 is an ideal supply."),
        Given($"{s}.bus_capacitance", Dimension.Capacitance, "1000 uF", "1000 uF", DriveBounds.BusCapacitance, "Capacitance across the drive's supply; matters when the supply has a resistance."),
        Free($"{s}.brake_limit", Dimension.Voltage, "no limit", "32 V", DriveBounds.BrakeLimit, "Bus voltage above which braking energy is dumped."),
        Needed($"{s}.slew_current", Dimension.Current, "1.4 A", DriveBounds.MovingCurrent, "Phase current while slewing, peak of the sine (\"A rms\" is converted)."),
        Needed($"{s}.tracking_current", Dimension.Current, "1.0 A", DriveBounds.MovingCurrent, "Phase current while tracking."),
        Needed($"{s}.holding_current", Dimension.Current, "0.7 A", DriveBounds.HoldingCurrent, "Phase current at rest; 0 A with a self-locking worm that may hold unpowered."),
        Given($"{s}.current_fall_delay", Dimension.Time, "0.5 s", "0.5 s", DriveBounds.CurrentFallDelay, "Delay from the end of the slew to the fall of the slew current."),
        Number($"{s}.microsteps", KeyKind.WholeNumber, null, "64", DriveBounds.Microsteps, "Microsteps per full step."),
        Given($"{s}.changeover", Dimension.AxisOrMotorRate, "never", "400 rpm", DriveBounds.Changeover, "Speed above which the drive full-steps. deg/s, arcmin/s, arcsec/s and x sidereal are at the axis; rpm, rev/s, rad/s and steps/s at the motor. \"never\": always microstep.") with { Unit = "", AlsoAllowed = "never" },
        Share($"{s}.full_step_current", "1", "0.9", DriveBounds.FullStepCurrent, "Current of each phase while full-stepping over the peak of the microstepping sine; drives differ."),
        Given($"{s}.regulator_time", Dimension.Time, "40 us", "50 us", DriveBounds.RegulatorTime, "Time constant of the current regulator: one to two periods of its chopping frequency, usually 20 to 100 us."),
        Free($"{s}.damping", Dimension.Damping, "by damping_share", "1e-4 N*m*s/rad", DriveBounds.Damping, "Damping torque per speed of the rotor relative to its command: iron loss, bearings, what the regulator leaves. Give this or damping_share."),
        Share($"{s}.damping_share", "0.05", "0.05", DriveBounds.DampingShare, "The same as a share of the critical damping of rotor and train, without the load, on the magnetic field at the slew current; usually 0.01 to 0.3. The default is common practice, no source."),
        Free($"{s}.max_pulse_rate", Dimension.PulseRate, "no limit", "200 kHz", DriveBounds.MaximumPulseRate, "Greatest pulse rate of the controller, microsteps per second."),
    ];

    private static IEnumerable<ScenarioKey> Bearings(string axis) =>
    [
        Needed($"{axis}.axis.stiffness", Dimension.Stiffness, "20000 N*m/rad", TrainBounds.Stiffness, "Torsional stiffness seen at the axis with the rotor held."),
        Share($"{axis}.axis.damping_ratio", "0.05", "0.05", TrainBounds.DampingRatio, "Damping ratio of the axis on that stiffness."),
        Needed($"{axis}.axis.backlash", Dimension.Angle, "30 arcsec", TrainBounds.Backlash, "Total backlash of the worm mesh seen at the axis. Write \"0 arcsec\" for a spring-loaded worm."),
        Needed($"{axis}.axis.friction", Dimension.Torque, "0.8 N*m", AxisBounds.Coulomb, "Dry friction of bearings and seals while turning."),
        Free($"{axis}.axis.breakaway", Dimension.Torque, "as friction", "1.2 N*m", AxisBounds.Coulomb, "Dry friction to overcome from rest; not below friction."),
        Given($"{axis}.axis.viscous", Dimension.Damping, "0 N*m*s/rad", "0.1 N*m*s/rad", AxisBounds.Viscous, "Viscous friction of the axis."),
        Number($"{axis}.axis.encoder_counts", KeyKind.WholeNumber, "0", "72000", AxisBounds.EncoderCounts, "Counts per revolution of an encoder on the axis; 0 without one."),
        Free($"{axis}.clutch.slip_torque", Dimension.Torque, "no clutch: it never slips", "60 N*m", TrainBounds.Clutch, "Torque at the axis at which the clutch slips."),
        Needed($"{axis}.flexible.frequency", Dimension.Frequency, "8 Hz", AxisBounds.FlexibleFrequency, "Frequency of the flexible part of the payload with the axis held."),
        Share($"{axis}.flexible.damping_ratio", "0.02", "0.02", AxisBounds.FlexibleDamping, "Damping ratio of that mode."),
        Share($"{axis}.flexible.share", "0.5", "0.5", AxisBounds.FlexibleShare, "Share of the axis inertia that is on the spring."),
    ];

    private static IEnumerable<ScenarioKey> Motion(string s) =>
    [
        Needed($"{s}.slew_rate", Dimension.AxisRate, "2.5 deg/s", AxisBounds.SlewRate, "Greatest rate of the axis; the planned move must end within 24 h."),
        Free($"{s}.ramp_time", Dimension.Time, "give this or acceleration", "2 s", AxisBounds.RampTime, "Time from the start rate to the slew rate."),
        Free($"{s}.acceleration", Dimension.AngularAcceleration, "give this or ramp_time", "1.5 deg/s^2", AxisBounds.Acceleration, "Greatest acceleration of the axis."),
        Choice($"{s}.shape", "trapezoid", "Shape of the ramp: constant acceleration, or jerk-limited.", "trapezoid", "s-curve"),
        Share($"{s}.jerk_share", "0.25", "0.25", AxisBounds.JerkShare, "For an S-curve: share of the ramp over which the acceleration rises, and as long falls."),
        Given($"{s}.start_rate", Dimension.AxisOrMotorRate, "0 deg/s", "200 steps/s", AxisBounds.StartRate, "Rate at which the drive starts and stops without a ramp; units as for changeover.") with { Unit = "" },
    ];

    private static IEnumerable<ScenarioKey> Load(string s) =>
    [
        Needed($"{s}.inertia", Dimension.Inertia, "6 kg*m^2", PayloadBounds.LumpedInertia, "Lumped load instead of bodies: inertia about the axis."),
        Needed($"{s}.imbalance", Dimension.Torque, "4 N*m", PayloadBounds.LumpedImbalance, "Lumped load: imbalance as if the axis were horizontal; its sign counts."),
        Given($"{s}.phase", Dimension.Angle, "0 deg", "90 deg", PayloadBounds.LumpedPhase, "Lumped load: phase of the imbalance."),
    ];
}
