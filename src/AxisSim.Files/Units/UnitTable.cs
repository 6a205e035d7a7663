using AxisSim.Core.Sky;

namespace AxisSim.Files.Units;

/// <summary>The units that scenarios use, looked up without the slow start of a general library.</summary>
/// <remarks>
/// The first spelling of each dimension is the one shown in messages. Everything else is left to <see cref="WiderUnits"/>;
/// a test holds this table against it. Angles: 1 degree = pi/180 rad, 1 arcsecond = pi/648000 rad.
/// </remarks>
internal static class UnitTable
{
    private static readonly UnitDefinition[] AxisRates =
    [
        new("deg/s", Math.PI, 180.0), new("arcmin/s", Math.PI, 10800.0), new("arcsec/s", Math.PI, 648000.0),
        new("x sidereal", SkyRates.MeanSiderealRadiansPerSecond), new("x", SkyRates.MeanSiderealRadiansPerSecond),
    ];

    private static readonly UnitDefinition[] MotorRates =
    [
        new("rpm", Math.PI, 30.0, Place: RatePlace.Motor), new("rev/s", 2.0 * Math.PI, Place: RatePlace.Motor), new("rad/s", 1.0, Place: RatePlace.Motor),
        new("steps/s", 1.0, Place: RatePlace.MotorSteps),
    ];

    private static readonly UnitDefinition[] AxisAccelerations =
    [
        new("deg/s^2", Math.PI, 180.0), new("arcmin/s^2", Math.PI, 10800.0), new("arcsec/s^2", Math.PI, 648000.0), new("rad/s^2", 1.0),
    ];

    private static readonly Dictionary<Dimension, UnitDefinition[]> Units = new()
    {
        [Dimension.Mass] = [new("kg", 1.0), new("g", 1.0, 1000.0), new("lb", 0.45359237)],
        [Dimension.Length] = [new("m", 1.0), new("cm", 1.0, 100.0), new("mm", 1.0, 1000.0), new("in", 0.0254), new("ft", 0.3048)],
        [Dimension.Area] = [new("m^2", 1.0), new("cm^2", 1.0, 1e4), new("mm^2", 1.0, 1e6)],
        [Dimension.Angle] =
        [
            new("deg", Math.PI, 180.0), new("arcmin", Math.PI, 10800.0), new("arcsec", Math.PI, 648000.0), new("rad", 1.0), new("mrad", 1.0, 1000.0),
        ],
        [Dimension.HourAngle] = [new("h", Math.PI, 12.0), new("deg", Math.PI, 180.0), new("rad", 1.0)],
        [Dimension.AxisRate] = [.. AxisRates, new("rad/s", 1.0), new("mrad/s", 1.0, 1000.0)],
        [Dimension.AxisOrMotorRate] = [.. AxisRates, .. MotorRates],
        [Dimension.AngularAcceleration] = AxisAccelerations,
        [Dimension.Torque] =
        [
            new("N*m", 1.0), new("Nm", 1.0), new("mN*m", 1.0, 1000.0), new("mNm", 1.0, 1000.0), new("N*cm", 1.0, 100.0), new("Ncm", 1.0, 100.0),
            new("kgf*cm", 0.0980665), new("ozf*in", 0.45359237 * 9.80665 * 0.0254, 16.0),
        ],
        [Dimension.Current] = [new("A", 1.0), new("mA", 1.0, 1000.0)],
        [Dimension.Resistance] = [new("ohm", 1.0), new("mohm", 1.0, 1000.0), new("kohm", 1000.0)],
        [Dimension.Inductance] = [new("mH", 1.0, 1000.0), new("H", 1.0), new("uH", 1.0, 1e6)],
        [Dimension.Capacitance] = [new("uF", 1.0, 1e6), new("mF", 1.0, 1000.0), new("F", 1.0), new("nF", 1.0, 1e9)],
        [Dimension.Voltage] = [new("V", 1.0), new("mV", 1.0, 1000.0), new("kV", 1000.0)],
        [Dimension.Inertia] =
        [
            new("kg*m^2", 1.0), new("kg*cm^2", 1.0, 1e4), new("g*cm^2", 1.0, 1e7), new("kg*mm^2", 1.0, 1e6), new("kgm^2", 1.0),
            new("kgcm^2", 1.0, 1e4), new("gcm^2", 1.0, 1e7),
        ],
        [Dimension.Stiffness] =
        [
            new("N*m/rad", 1.0), new("kN*m/rad", 1000.0), new("N*m/deg", 180.0, Math.PI), new("N*m/arcmin", 10800.0, Math.PI),
            new("N*m/arcsec", 648000.0, Math.PI),
        ],
        [Dimension.Damping] = [new("N*m*s/rad", 1.0), new("mN*m*s/rad", 1.0, 1000.0), new("N*m*s", 1.0), new("N*m/rpm", 30.0, Math.PI)],
        [Dimension.ThermalResistance] = [new("K/W", 1.0), new("degC/W", 1.0)],
        [Dimension.Temperature] = [new("degC", 1.0), new("K", 1.0, Offset: -273.15)],
        [Dimension.Frequency] = [new("Hz", 1.0), new("kHz", 1000.0)],
        [Dimension.PulseRate] = [new("kHz", 1000.0), new("Hz", 1.0), new("MHz", 1e6), new("pulses/s", 1.0), new("microsteps/s", 1.0)],
        [Dimension.Time] = [new("s", 1.0), new("ms", 1.0, 1000.0), new("us", 1.0, 1e6), new("min", 60.0), new("h", 3600.0)],
        [Dimension.Speed] = [new("m/s", 1.0), new("km/h", 1.0, 3.6)],
        [Dimension.Density] = [new("kg/m^3", 1.0), new("g/m^3", 1.0, 1000.0)],
        [Dimension.Share] = [new("%", 1.0, 100.0)],
        [Dimension.RateOfPulses] = [.. AxisRates, .. MotorRates, new("pulses/s", 1.0, Place: RatePlace.Pulses)],
        [Dimension.AccelerationOfPulses] = [.. AxisAccelerations, new("steps/s^2", 1.0, Place: RatePlace.MotorSteps), new("pulses/s^2", 1.0, Place: RatePlace.Pulses)],
    };

    /// <summary>The unit of a dimension with this spelling, or null.</summary>
    public static UnitDefinition? Find(Dimension dimension, string spelling)
    {
        foreach (UnitDefinition unit in Units[dimension])
        {
            if (string.Equals(unit.Spelling, spelling, StringComparison.Ordinal))
            {
                return unit;
            }
        }

        return null;
    }

    /// <summary>All units of a dimension.</summary>
    public static IReadOnlyList<UnitDefinition> Of(Dimension dimension) => Units[dimension];

    /// <summary>Dimensions that know this spelling; used to say what a misplaced unit measures.</summary>
    public static IReadOnlyList<Dimension> Knowing(string spelling) => [.. Units.Where(pair => Array.Exists(pair.Value, unit => unit.Spelling == spelling)).Select(pair => pair.Key)];

    /// <summary>Spellings accepted for a dimension, for messages; aliases that only leave out a sign are not repeated.</summary>
    public static string Accepted(Dimension dimension)
    {
        IEnumerable<string> names = Units[dimension].Select(unit => unit.Spelling).Where(name => name is not ("Nm" or "mNm" or "Ncm" or "kgm^2" or "kgcm^2" or "gcm^2" or "x"));
        return dimension == Dimension.Current ? "A, A peak, A rms, mA" : string.Join(", ", names);
    }
}
