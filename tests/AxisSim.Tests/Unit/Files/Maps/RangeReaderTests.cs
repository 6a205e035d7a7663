using AxisSim.Files.Maps;

namespace AxisSim.Tests.Unit.Files.Maps;

/// <summary>Ranges of keys as they are written on the command line.</summary>
public sealed class RangeReaderTests
{
    [Fact]
    public void Even_spacing_has_clean_numbers_and_the_ends_as_written()
    {
        MapRange range = VariantTests.Range("--x", "polar.motion.ramp_time=0.1..0.7 s", 7);
        Assert.Equal([0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7], range.Shown.Values);
        Assert.Equal("polar.motion.ramp_time=0.3 s", range.Setting(range.Shown.Values[2]));
    }

    [Fact]
    public void Logarithmic_spacing_has_equal_ratios()
    {
        MapRange range = VariantTests.Range("--x", "payload.tube.mass=log 1..100 kg", 5);
        Assert.True(range.Shown.Logarithmic);
        Assert.Equal([1.0, 3.16227766017, 10.0, 31.6227766017, 100.0], range.Shown.Values);
    }

    [Theory]
    [InlineData("polar.drive.microsteps=log 1..256", 9, new[] { 1.0, 2, 4, 8, 16, 32, 64, 128, 256 })]
    [InlineData("polar.drive.microsteps=1..4", 61, new[] { 1.0, 2, 3, 4 })]
    [InlineData("polar.motor.steps_per_revolution=199..213", 6, new[] { 200.0, 204, 208, 212 })]
    [InlineData("polar.worm.teeth=100.4..103.6", 3, new[] { 101.0, 102, 103 })]
    public void Whole_numbers_are_rounded_and_each_is_kept_once(string text, int count, double[] values) =>
        Assert.Equal(values, VariantTests.Range("--x", text, count).Shown.Values);

    [Theory]
    [InlineData("polar.motion.slew_rate=1..5 deg/s", Math.PI / 180.0)]
    [InlineData("polar.drive.slew_current=1..2 A rms", 1.4142135623730951)]
    [InlineData("polar.drive.slew_current=1..2 A", 1.0)]
    [InlineData("disturbances.turbulence=1..20 %", 0.01)]
    [InlineData("polar.worm.friction=0.05..0.1", 0.05)]
    [InlineData("polar.stages.belt.ratio=1..3", 1.0)]
    [InlineData("polar.drive.changeover=1..5 deg/s", Math.PI / 180.0)]
    [InlineData("polar.motion.slew_rate=−1..5 deg/s", double.NaN)]
    [InlineData("disturbances.ambient=−10..20 degC", -10.0)]
    public void Units_are_those_of_scenarios(string text, double firstSi)
    {
        var reader = new RangeReader("--x", text, 5);
        MapRange? range = reader.Read();
        Assert.Equal(double.IsNaN(firstSi), range is null);
        if (range is not null)
        {
            Assert.Equal(firstSi, range.Si[0], 1e-15);
            Assert.Equal(range.Shown.Values[2], range.FromSi(range.Si[2]), 1e-12);
        }
    }

    [Theory]
    [InlineData("polar.motion.ramp_time=0.2..2", "a number without its unit", "--x \"polar.motion.ramp_time=0.2..2 s\"")]
    [InlineData("polar.motion.ramp_time=0,2..2 s", "a comma is not a decimal point", "--x \"polar.motion.ramp_time=0.2..2 s\"")]
    [InlineData("polar.motion.ramp_time=2..0.2 s", "does not rise", "--x \"polar.motion.ramp_time=0.2..2 s\"")]
    [InlineData("polar.motion.ramp_time=log 2..0.2 s", "does not rise", "--x \"polar.motion.ramp_time=log 0.2..2 s\"")]
    [InlineData("polar.motion.ramp_time=2..2 s", "does not rise", "")]
    [InlineData("polar.motion.ramp_time=1 s..2 s", "a unit at the start", "--x \"polar.motion.ramp_time=1..2 s\"")]
    [InlineData("polar.motion.ramp_time=1..2 kg", "unit of mass", "")]
    [InlineData("polar.motion.ramp_time=1-2 s", "no two dots", "--x \"polar.motion.ramp_time=2..4 s\"")]
    [InlineData("polar.motion.ramp_time=..2 s", "no two dots", "")]
    [InlineData("polar.motion.ramp_time=1.. s", "there is no number after", "")]
    [InlineData("polar.motion.ramp_time=1..inf s", "not a finite number", "")]
    [InlineData("polar.motion.ramp_time=", "no two dots", "")]
    [InlineData("polar.motion.ramp_time=0.1..5000 s", "out of bounds", "")]
    [InlineData("disturbances.wind=log 0..5 m/s", "logarithmic spacing", "--x \"disturbances.wind=0..5 m/s\"")]
    [InlineData("polar.motion.shape=1..2", "one of a few words", "")]
    [InlineData("counterweight.turns_with_declination=0..1", "true or false", "")]
    [InlineData("name=1..2", "a text", "")]
    [InlineData("polar.drive.microsteps=1..8 kg", "a plain number without a unit", "--x \"polar.drive.microsteps=1..8\"")]
    [InlineData("polar.worm.starts=1..1.2", "no two values", "")]
    [InlineData("polar.worm.starts=1.2..1.8", "no two values", "")]
    [InlineData("polar.motion.ramp_time", "there is no =", "")]
    [InlineData("=1..2 s", "no key before", "")]
    [InlineData("polar.motion.ramp_time=1..1.0000000000001 s", "too near", "")]
    public void A_bad_range_is_one_clear_message(string text, string found, string fix)
    {
        var reader = new RangeReader("--x", text, 41);
        Assert.Null(reader.Read());
        string message = Assert.Single(reader.Problems).ToString();
        Assert.Contains(found, message, StringComparison.Ordinal);
        Assert.Contains(fix, message, StringComparison.Ordinal);
        Assert.StartsWith("--x: ", message, StringComparison.Ordinal);
    }
}
