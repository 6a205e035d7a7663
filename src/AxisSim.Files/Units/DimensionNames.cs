namespace AxisSim.Files.Units;

/// <summary>Dimensions in words, for messages and for the table of keys.</summary>
internal static class DimensionNames
{
    /// <summary>A dimension in words.</summary>
    public static string Of(Dimension dimension) => dimension switch
    {
        Dimension.Mass => "mass",
        Dimension.Length => "length",
        Dimension.Area => "area",
        Dimension.Angle => "angle",
        Dimension.HourAngle => "hour angle",
        Dimension.AxisRate => "axis rate",
        Dimension.AxisOrMotorRate => "axis rate (deg/s, arcmin/s, arcsec/s, x sidereal) or motor speed (rpm, rev/s, rad/s, steps/s)",
        Dimension.RateOfPulses => "rate of axis or motor",
        Dimension.AngularAcceleration => "axis acceleration",
        Dimension.AccelerationOfPulses => "acceleration of axis or motor",
        Dimension.Torque => "torque",
        Dimension.Current => "current",
        Dimension.Resistance => "resistance",
        Dimension.Inductance => "inductance",
        Dimension.Capacitance => "capacitance",
        Dimension.Voltage => "voltage",
        Dimension.Inertia => "moment of inertia",
        Dimension.Stiffness => "torsional stiffness",
        Dimension.Damping => "torsional damping",
        Dimension.ThermalResistance => "thermal resistance",
        Dimension.Temperature => "temperature",
        Dimension.Frequency => "frequency",
        Dimension.PulseRate => "pulse rate",
        Dimension.Time => "time",
        Dimension.Speed => "speed",
        Dimension.Density => "density",
        Dimension.Share => "share (a number from 0 to 1, or per cent)",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "unknown dimension"),
    };
}
