namespace AxisSim.Files.Units;

/// <summary>What a value measures; it decides which units are accepted and what the SI value means.</summary>
internal enum Dimension
{
    /// <summary>Mass, kg.</summary>
    Mass,

    /// <summary>Length, m.</summary>
    Length,

    /// <summary>Area, m2.</summary>
    Area,

    /// <summary>Angle, rad.</summary>
    Angle,

    /// <summary>Hour angle, rad; hours of 15 degrees are accepted.</summary>
    HourAngle,

    /// <summary>Rate of an axis, rad/s; multiples of the sidereal rate are accepted, revolutions of a shaft are not.</summary>
    AxisRate,

    /// <summary>
    /// Rate given at the axis (deg/s, arcmin/s, arcsec/s, x sidereal) or at the motor (rpm, rev/s, rad/s, steps/s); the unit says which.
    /// </summary>
    AxisOrMotorRate,

    /// <summary>The same, or in pulses/s; the unit says which.</summary>
    RateOfPulses,

    /// <summary>Acceleration of an axis, rad/s2.</summary>
    AngularAcceleration,

    /// <summary>Acceleration given at the axis, or at the motor in steps/s^2 or pulses/s^2; the unit says which.</summary>
    AccelerationOfPulses,

    /// <summary>Torque, N m.</summary>
    Torque,

    /// <summary>Phase current, A peak; rms figures are converted.</summary>
    Current,

    /// <summary>Electrical resistance, ohm.</summary>
    Resistance,

    /// <summary>Inductance, H.</summary>
    Inductance,

    /// <summary>Capacitance, F.</summary>
    Capacitance,

    /// <summary>Voltage, V.</summary>
    Voltage,

    /// <summary>Moment of inertia, kg m2.</summary>
    Inertia,

    /// <summary>Torsional stiffness, N m/rad.</summary>
    Stiffness,

    /// <summary>Torsional viscous damping, N m s/rad.</summary>
    Damping,

    /// <summary>Thermal resistance, K/W.</summary>
    ThermalResistance,

    /// <summary>Temperature, degrees Celsius.</summary>
    Temperature,

    /// <summary>Frequency, Hz.</summary>
    Frequency,

    /// <summary>Pulse rate, microsteps per second.</summary>
    PulseRate,

    /// <summary>Time, s.</summary>
    Time,

    /// <summary>Speed of the air, m/s.</summary>
    Speed,

    /// <summary>Density, kg/m3.</summary>
    Density,

    /// <summary>Share of one; a plain number or per cent.</summary>
    Share,
}
