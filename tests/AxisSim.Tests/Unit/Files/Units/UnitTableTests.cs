using AxisSim.Files.Units;

namespace AxisSim.Tests.Unit.Files.Units;

/// <summary>Units: values against hand calculation, and the small table against the general library.</summary>
public sealed class UnitTableTests
{
    // Four roundings at most on either side of the comparison.
    private const double Rounding = 1e-15;

    // The library keeps its own factors, some to fewer digits (its pound force is exact, its arcsecond is not a multiple of pi).
    private const double LibraryDigits = 1e-12;

    public static TheoryData<string, object, double> Values => new()
    {
        { "14 kg", Dimension.Mass, 14.0 }, { "450 g", Dimension.Mass, 0.45 }, { "2 lb", Dimension.Mass, 0.90718474 },
        { "0.44 N*m", Dimension.Torque, 0.44 }, { "0.44 N m", Dimension.Torque, 0.44 }, { "0.44 N·m", Dimension.Torque, 0.44 }, { "0.44Nm", Dimension.Torque, 0.44 },
        { "15 mN*m", Dimension.Torque, 0.015 }, { "15 mN m", Dimension.Torque, 0.015 }, { "44 N cm", Dimension.Torque, 0.44 }, { "60 ozf*in", Dimension.Torque, 0.4236931088535624 },
        { "2.5 deg/s", Dimension.AxisRate, 2.5 * Math.PI / 180 }, { "2.5°/s", Dimension.AxisRate, 2.5 * Math.PI / 180 },
        { "15 arcsec/s", Dimension.AxisRate, 15 * Math.PI / 648000 }, { "160 x sidereal", Dimension.AxisRate, 160 * 2 * Math.PI / 86164.09053083288 }, { "160 x", Dimension.AxisRate, 160 * 2 * Math.PI / 86164.09053083288 },
        { "160×", Dimension.AxisRate, 160 * 2 * Math.PI / 86164.09053083288 }, { "160x sidereal", Dimension.AxisRate, 160 * 2 * Math.PI / 86164.09053083288 },
        { "30 arcsec", Dimension.Angle, 30 * Math.PI / 648000 }, { "−10 deg", Dimension.Angle, -Math.PI / 18 }, { "-2.5 h", Dimension.HourAngle, -2.5 * Math.PI / 12 },
        { "600 rpm", Dimension.AxisOrMotorRate, 20 * Math.PI }, { "400 steps/s", Dimension.AxisOrMotorRate, 400 },
        { "3 mH", Dimension.Inductance, 0.003 }, { "1.5 Ω", Dimension.Resistance, 1.5 }, { "1.5 ohm", Dimension.Resistance, 1.5 },
        { "1000 uF", Dimension.Capacitance, 1e-3 }, { "1000 µF", Dimension.Capacitance, 1e-3 },
        { "1.5 A", Dimension.Current, 1.5 }, { "1.5 A peak", Dimension.Current, 1.5 }, { "1 A rms", Dimension.Current, 1.4142135623730951 }, { "850 mA rms", Dimension.Current, 1.2020815280171309 },
        { "60 g*cm^2", Dimension.Inertia, 6e-6 }, { "60 g·cm²", Dimension.Inertia, 6e-6 }, { "60 gcm2", Dimension.Inertia, 6e-6 }, { "6 kg m2", Dimension.Inertia, 6 },
        { "2e4 N*m/rad", Dimension.Stiffness, 2e4 }, { "0.1 N*m/arcsec", Dimension.Stiffness, 20626.480624709636 }, { "0.1 N*m*s/rad", Dimension.Damping, 0.1 },
        { "45 %", Dimension.Share, 0.45 }, { "0.45", Dimension.Share, 0.45 }, { "45%", Dimension.Share, 0.45 },
        { "100 us", Dimension.Time, 1e-4 }, { "25 min", Dimension.Time, 1500 }, { "20 degC", Dimension.Temperature, 20 }, { "-5 °C", Dimension.Temperature, -5 }, { "293.15 K", Dimension.Temperature, 20 },
        { "200 kHz", Dimension.PulseRate, 2e5 }, { "8 Hz", Dimension.Frequency, 8 }, { "12 K/W", Dimension.ThermalResistance, 12 }, { "36 km/h", Dimension.Speed, 10 },
        { "1.225 kg/m^3", Dimension.Density, 1.225 }, { "0.3 m²", Dimension.Area, 0.3 }, { "30 cm", Dimension.Length, 0.3 }, { ".5 m", Dimension.Length, 0.5 }, { "1.5deg/s^2", Dimension.AngularAcceleration, 1.5 * Math.PI / 180 },
    };

    public static TheoryData<string, object, double> WiderValues => new()
    {
        // Units of the general library that the small table lacks, by hand.
        { "1 lbf*ft", Dimension.Torque, 1.3558179483314004 }, { "1 lb*ft^2", Dimension.Inertia, 0.04214011009380480 }, { "10 kn", Dimension.Speed, 5.144444444444445 },
        { "68 °F", Dimension.Temperature, 20 }, { "2 oz", Dimension.Mass, 0.056699046250 }, { "1 kN*mm/rad", Dimension.Stiffness, 1 },
    };

    public static TheoryData<string, object, string> Refused => new()
    {
        { "14", Dimension.Mass, "without its unit" }, { "", Dimension.Mass, "empty" }, { "heavy", Dimension.Mass, "no number" }, { "14 kgs", Dimension.Mass, "not known" },
        { "1,5 A", Dimension.Current, "comma" }, { "1.234,5 A", Dimension.Current, "comma" }, { "0.44 kg", Dimension.Torque, "unit of mass" }, { "nan A", Dimension.Current, "finite" },
        { "-inf A", Dimension.Current, "finite" }, { "1e999 A", Dimension.Current, "too large" }, { "3 MH", Dimension.Inductance, "not known" }, { "1.5 mN·M", Dimension.Torque, "not known" },
        { "5 m", Dimension.Time, "unit of length" }, { "30 rpm", Dimension.AxisRate, "unit of motor speed" }, { "1.5 A rmss", Dimension.Current, "not known" }, { "١٫٥ A", Dimension.Current, "no number" },
        { "1.5 5 A", Dimension.Current, "not known" }, { "1..5 A", Dimension.Current, "not known" }, { "0x10 A", Dimension.Current, "not known" },
    };

    [Theory]
    [MemberData(nameof(Values))]
    public void A_value_has_its_si_value(string text, object dimension, double si)
    {
        QuantityReading reading = QuantityText.Read(text, (Dimension)dimension);
        Assert.Null(reading.Failure);
        Assert.True(Math.Abs(reading.Si - si) <= Rounding * Math.Abs(si), $"{text}: {reading.Si:R}, expected {si:R}");
    }

    [Theory]
    [MemberData(nameof(WiderValues))]
    public void Other_units_come_from_the_general_library(string text, object dimension, double si)
    {
        QuantityReading reading = QuantityText.Read(text, (Dimension)dimension);
        Assert.Null(reading.Failure);
        // The library's own factors have at least 9 digits.
        Assert.True(Math.Abs(reading.Si - si) <= 1e-9 * Math.Abs(si), $"{text}: {reading.Si:R}, expected {si:R}");
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_is_not_a_value_is_refused_with_its_reason(string text, object dimension, string reason)
    {
        QuantityReading reading = QuantityText.Read(text, (Dimension)dimension);
        Assert.NotNull(reading.Failure);
        Assert.Contains(reason, reading.Failure, StringComparison.Ordinal);
        Assert.True(double.IsNaN(reading.Si));
    }

    [Fact]
    public void The_small_table_agrees_with_the_general_library()
    {
        int compared = 0;
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            foreach (UnitDefinition unit in UnitTable.Of(dimension).Where(unit => unit.Place == RatePlace.Axis))
            {
                if (WiderUnits.TryToSi(dimension, 12.5, unit.Spelling, out double si))
                {
                    compared++;
                    double own = unit.ToSi(12.5);
                    Assert.True(Math.Abs(own - si) <= LibraryDigits * Math.Abs(si), $"{dimension} {unit.Spelling}: {own:R}, library {si:R}");
                }
            }
        }

        // Of about 95 units the library knows all but the sidereal multiples and the short spellings.
        Assert.True(compared >= 50, $"only {compared} units were compared");
    }

    [Fact]
    public void Back_from_si_is_the_inverse()
    {
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            foreach (UnitDefinition unit in UnitTable.Of(dimension))
            {
                Assert.Equal(3.7, unit.FromSi(unit.ToSi(3.7)), 12);
            }
        }
    }

    [Fact]
    public void The_place_of_a_rate_follows_its_unit()
    {
        Assert.Equal(RatePlace.Axis, QuantityText.Read("2 deg/s", Dimension.AxisOrMotorRate).Place);
        Assert.Equal(RatePlace.Axis, QuantityText.Read("100 x sidereal", Dimension.AxisOrMotorRate).Place);
        Assert.Equal(RatePlace.Motor, QuantityText.Read("20 rad/s", Dimension.AxisOrMotorRate).Place);
        Assert.Equal(RatePlace.MotorSteps, QuantityText.Read("400 steps/s", Dimension.AxisOrMotorRate).Place);
    }
}
