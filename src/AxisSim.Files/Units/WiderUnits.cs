using System.Globalization;
using UnitsNet;

namespace AxisSim.Files.Units;

/// <summary>Units beyond the small table, by the UnitsNet library with the invariant culture.</summary>
/// <remarks>
/// The library matches abbreviations without regard to case (it takes <c>mN·m</c> for a meganewton metre), so a unit counts only
/// when its abbreviation is written exactly. Abbreviations that mean something else in a scenario are refused.
/// </remarks>
internal static class WiderUnits
{
    private static readonly HashSet<(Dimension, string)> Refused =
    [
        (Dimension.Time, "m"), (Dimension.Angle, "g"), (Dimension.Angle, "r"), (Dimension.Angle, "sin(θ)"), (Dimension.Angle, "min"),
        (Dimension.AxisRate, "rpm"), (Dimension.AxisRate, "r/min"), (Dimension.AxisRate, "r/s"), (Dimension.Frequency, "rad/s"), (Dimension.Frequency, "B Units"),
    ];

    /// <summary>The SI value of a number with a unit in plain spelling; false when the library does not know the unit for this dimension.</summary>
    public static bool TryToSi(Dimension dimension, double number, string plainUnit, out double si)
    {
        si = double.NaN;
        (string Quantity, Enum Si)? target = Target(dimension);
        if (target is null || Refused.Contains((dimension, plainUnit)))
        {
            return false;
        }

        (string name, Enum siUnit) = target.Value;
        Enum? unit = Exact(name, Symbols(plainUnit)) ?? Exact(name, plainUnit);
        if (unit is null)
        {
            return false;
        }

        si = Quantity.From(number, unit).As(siUnit);
        return true;
    }

    private static Enum? Exact(string quantity, string abbreviation)
    {
        QuantityInfo info = Quantity.ByName[quantity];
        if (!UnitsNetSetup.Default.UnitParser.TryParse(abbreviation, info.UnitType, CultureInfo.InvariantCulture, out Enum? found) || found is null)
        {
            // An abbreviation that several units share but for its case is ambiguous to the library; look at each.
            found = info.UnitInfos.Select(unit => unit.Value).FirstOrDefault(unit => Spells(unit, abbreviation));
        }

        if (found is not null && !Spells(found, abbreviation))
        {
            found = info.UnitInfos.Select(unit => unit.Value).FirstOrDefault(unit => Spells(unit, abbreviation));
        }

        return found;
    }

    private static bool Spells(Enum unit, string abbreviation) => UnitsNetSetup.Default.UnitAbbreviations
        .GetUnitAbbreviations(unit.GetType(), Convert.ToInt32(unit, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        .Contains(abbreviation, StringComparer.Ordinal);

    private static string Symbols(string plain)
    {
        string text = plain.Replace("^2", "²", StringComparison.Ordinal).Replace("^3", "³", StringComparison.Ordinal)
            .Replace('*', '\u00b7').Replace("ohm", "\u03a9", StringComparison.Ordinal).Replace("degC", "°C", StringComparison.Ordinal).Replace("degF", "°F", StringComparison.Ordinal);
        return text.Length > 1 && text[0] == 'u' ? "\u00b5" + text[1..] : text;
    }

    private static (string, Enum)? Target(Dimension dimension) => dimension switch
    {
        Dimension.Mass => (nameof(Mass), UnitsNet.Units.MassUnit.Kilogram),
        Dimension.Length => (nameof(Length), UnitsNet.Units.LengthUnit.Meter),
        Dimension.Area => (nameof(Area), UnitsNet.Units.AreaUnit.SquareMeter),
        Dimension.Angle => (nameof(Angle), UnitsNet.Units.AngleUnit.Radian),
        Dimension.AxisRate => (nameof(RotationalSpeed), UnitsNet.Units.RotationalSpeedUnit.RadianPerSecond),
        Dimension.AngularAcceleration => (nameof(RotationalAcceleration), UnitsNet.Units.RotationalAccelerationUnit.RadianPerSecondSquared),
        Dimension.Torque => (nameof(Torque), UnitsNet.Units.TorqueUnit.NewtonMeter),
        Dimension.Current => (nameof(ElectricCurrent), UnitsNet.Units.ElectricCurrentUnit.Ampere),
        Dimension.Resistance => (nameof(ElectricResistance), UnitsNet.Units.ElectricResistanceUnit.Ohm),
        Dimension.Inductance => (nameof(ElectricInductance), UnitsNet.Units.ElectricInductanceUnit.Henry),
        Dimension.Capacitance => (nameof(ElectricCapacitance), UnitsNet.Units.ElectricCapacitanceUnit.Farad),
        Dimension.Voltage => (nameof(ElectricPotential), UnitsNet.Units.ElectricPotentialUnit.Volt),
        Dimension.Inertia => (nameof(MassMomentOfInertia), UnitsNet.Units.MassMomentOfInertiaUnit.KilogramSquareMeter),
        Dimension.Stiffness => (nameof(RotationalStiffness), UnitsNet.Units.RotationalStiffnessUnit.NewtonMeterPerRadian),
        Dimension.Temperature => (nameof(Temperature), UnitsNet.Units.TemperatureUnit.DegreeCelsius),
        Dimension.Frequency => (nameof(Frequency), UnitsNet.Units.FrequencyUnit.Hertz),
        Dimension.Time => (nameof(Duration), UnitsNet.Units.DurationUnit.Second),
        Dimension.Speed => (nameof(Speed), UnitsNet.Units.SpeedUnit.MeterPerSecond),
        Dimension.Density => (nameof(Density), UnitsNet.Units.DensityUnit.KilogramPerCubicMeter),
        _ => null,
    };
}
