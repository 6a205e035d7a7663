using AxisSim.Core.Controllers;
using AxisSim.Core.Mount;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Controllers;

/// <summary>Numbers for a controller: rounded to the safe side, clear where that side is out of reach, and turned back into the axis that they make.</summary>
public sealed class TypedNumbersTests
{
    private const double Degree = SampleAxis.Degree, Rpm = Math.PI / 30.0, Rounding = 1e-9;

    private static readonly AxisModel s_axis = SampleAxis.Model;

    // Quantity; unit, zero, least, greatest, step in the unit of the quantity; the number expected and how it stands. The axis: 3 deg/s, 1.5 s, 2 deg/s2, 2.25 deg; 0.9, 0.6, 0.5 A of 1 A; 108 rpm.
    public static TheoryData<ControllerQuantity, double, double, double, double, double, double, TypedFit> Cases => new()
    {
        { ControllerQuantity.RampTime, 0.25, 0, 1, 9, 1, 6, TypedFit.Exact },
        { ControllerQuantity.RampTime, 0.4, 0, 1, 9, 1, 4, TypedFit.SafeSide }, // 1.6 s, longer
        { ControllerQuantity.RampTime, 0.25, 0, 1, 5, 1, 5, TypedFit.OtherSide }, // 1.25 s at most
        { ControllerQuantity.RampTime, -1, 10, 1, 9, 1, 8, TypedFit.SafeSide }, // greater is quicker: 10 - 8 = 2 s
        { ControllerQuantity.SlewRate, 0.7, 0, 0, 99, 1, 4, TypedFit.SafeSide }, // 2.8 deg/s
        { ControllerQuantity.SlewRate, 0.7, 0, 5, 99, 1, 5, TypedFit.OtherSide }, // 3.5 deg/s at least
        { ControllerQuantity.SlewRate, 5, 0, 0, 9, 1, 1, TypedFit.OtherSide }, // nought is no slew
        { ControllerQuantity.SlewRate, 1, 0, 0, 9, 0.4, 2.8, TypedFit.SafeSide },
        { ControllerQuantity.Acceleration, 0.3, 0, 0, 99, 1, 6, TypedFit.SafeSide }, // 1.8 deg/s2
        { ControllerQuantity.RampDistance, 0.5, 0, 0, 99, 1, 5, TypedFit.SafeSide }, // 2.5 deg
        { ControllerQuantity.SlewCurrent, 0.25, 0, 0, 9, 1, 4, TypedFit.SafeSide }, // 1.0 A, the rated current
        { ControllerQuantity.SlewCurrent, 0.4, 0, 0, 9, 1, 2, TypedFit.SafeSide }, // 1.2 A would be above it: 0.8 A
        { ControllerQuantity.SlewCurrent, 0.0625, 0.0625, 0, 31, 1, 14, TypedFit.SafeSide }, // 15 x 0.0625 = 0.9375 A
        { ControllerQuantity.SlewCurrent, 2, 0, 1, 9, 1, 1, TypedFit.OtherSide }, // nothing at or below the rated current
        { ControllerQuantity.HoldingCurrent, 0.2, 0, 0, 9, 1, 3, TypedFit.SafeSide }, // 0.6 A holds what 0.5 A holds
        { ControllerQuantity.TrackingShare, 0.05, 0, 0, 20, 1, 14, TypedFit.SafeSide }, // 0.6/0.9 = 0.667: 70 %
        { ControllerQuantity.CurrentFallDelay, 0.3, 0, 0, 9, 1, 2, TypedFit.SafeSide }, // 0.6 s for 0.5 s
        { ControllerQuantity.Changeover, 10, 0, 0, 99, 1, 11, TypedFit.SafeSide }, // never: above the 108 rpm of the slew
        { ControllerQuantity.Changeover, 10, 0, 0, 10, 1, 10, TypedFit.OtherSide }, // 100 rpm at most, so the slew full-steps
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_number_is_on_the_safe_side(ControllerQuantity quantity, double unit, double zero, double least, double greatest, double step, double number, TypedFit fit)
    {
        double si = Si(quantity);
        ControllerScale scale = new("x", quantity, unit * si, unit, "", zero * si, least, greatest, step);
        TypedAxis typed = TypedNumbers.Of(s_axis, [scale]);
        TypedNumber one = Assert.Single(typed.Numbers);
        Assert.Equal((number, fit), (one.Number, one.Fit));

        // The axis is the one that the number makes, and nothing else has changed but what follows from it.
        Assert.Equal(((number * unit) + zero) * si, TypedNumbers.Wanted(typed.Model, quantity, typed.Model.Drive.SlewCurrentAmperes), Rounding * si);
        Assert.Equal(s_axis with { Motion = typed.Model.Motion, Drive = typed.Model.Drive }, typed.Model);
    }

    [Fact]
    public void A_changeover_keeps_the_slew_stepped_as_it_is()
    {
        // 95 rpm, so the slew at 108 rpm full-steps: 120 rpm is nearer to it than 60, but would have it microstep.
        AxisModel full = s_axis with { Drive = s_axis.Drive with { ChangeoverRadiansPerSecond = 95.0 * Rpm } };
        TypedNumber one = Assert.Single(TypedNumbers.Of(full, [new ControllerScale("x", ControllerQuantity.Changeover, 60.0 * Rpm, 60, "rpm")]).Numbers);
        Assert.Equal((1.0, TypedFit.SafeSide), (one.Number, one.Fit));
        one = Assert.Single(TypedNumbers.Of(full, [new ControllerScale("x", ControllerQuantity.Changeover, 50.0 * Rpm, 50, "rpm")]).Numbers);
        Assert.Equal((2.0, TypedFit.SafeSide), (one.Number, one.Fit));
    }

    [Fact]
    public void Later_numbers_are_for_what_earlier_ones_make()
    {
        TypedAxis typed = TypedNumbers.Of(s_axis, [
            new("hold", ControllerQuantity.HoldingShare, 0.05, 5, "%"),
            new("current", ControllerQuantity.SlewCurrent, 0.25, 0.25, "A"),
            new("ramp", ControllerQuantity.RampDistance, 0.5 * Degree, 0.5, "deg"),
            new("rate", ControllerQuantity.SlewRate, 0.8 * Degree, 0.8, "deg/s"),
        ]);

        // 3 x 0.8 = 2.4 deg/s; 2.5 deg at a mean of 1.2 deg/s: 2.083 s; 1 A; 0.5 A is 50 % of it. In the order of the scales.
        Assert.Equal([10.0, 4.0, 5.0, 3.0], typed.Numbers.Select(number => number.Number));
        Assert.Equal(2.4 * Degree, typed.Model.Motion.SlewRateRadiansPerSecond, Rounding);
        Assert.Equal(2.5 / 1.2, typed.Model.Motion.RampInUseSeconds, Rounding);
        Assert.Equal(0.5, typed.Model.Drive.HoldingCurrentAmperes, Rounding);
    }

    [Fact]
    public void An_unpowered_rest_stays_unpowered()
    {
        AxisModel dead = s_axis with { Drive = s_axis.Drive with { HoldingCurrentAmperes = 0.0 } };
        TypedNumber one = Assert.Single(TypedNumbers.Of(dead, [new ControllerScale("x", ControllerQuantity.HoldingCurrent, 0.1, 0.1, "A")]).Numbers);
        Assert.Equal((0.0, TypedFit.Exact), (one.Number, one.Fit));
    }

    /// <summary>Any scale: what is typed is one of its numbers, on the safe side unless it says otherwise, and no further off than a step.</summary>
    [Fact]
    public void Law_of_the_safe_side()
    {
        Gen<(double Unit, int Least, int Count, int Which)> any = Gen.Select(Gen.Double[0.01, 3.0], Gen.Int[0, 5], Gen.Int[0, 200], Gen.Int[0, 4]);
        any.Sample(drawn =>
        {
            ControllerQuantity quantity = new[] { ControllerQuantity.SlewRate, ControllerQuantity.RampTime, ControllerQuantity.Acceleration, ControllerQuantity.SlewCurrent, ControllerQuantity.HoldingCurrent }[drawn.Which];
            double si = Si(quantity);
            ControllerScale scale = new("x", quantity, drawn.Unit * si, drawn.Unit, "", 0.0, drawn.Least, drawn.Least + drawn.Count);
            IReadOnlyList<TypedNumber> numbers = TypedNumbers.Of(s_axis, [scale]).Numbers;
            if (numbers.Count == 0)
            {
                // Nothing above nought at all.
                Assert.Equal(0, drawn.Least + drawn.Count);
                return;
            }

            TypedNumber one = numbers[0];
            Assert.Equal(Math.Round(one.Number), one.Number);
            Assert.InRange(one.Number, drawn.Least, drawn.Least + drawn.Count);
            bool lower = quantity is ControllerQuantity.SlewRate or ControllerQuantity.Acceleration, current = quantity is ControllerQuantity.SlewCurrent or ControllerQuantity.HoldingCurrent;
            double off = one.Value - one.Wanted, slack = Rounding * si;
            Assert.Equal(one.Fit == TypedFit.Exact, Math.Abs(off) <= 1e-6 * Math.Max(one.Wanted, Math.Abs(scale.Unit)));
            if (one.Fit == TypedFit.SafeSide)
            {
                Assert.True(lower ? off <= slack : current ? one.Value <= s_axis.Motor.RatedCurrentAmperes + slack : off >= -slack, $"{drawn}: {one}");
                Assert.True(Math.Abs(off) < scale.Unit + slack || one.Number == drawn.Least || one.Number == drawn.Least + drawn.Count, $"{drawn}: {one}");
            }
        });
    }

    private static double Si(ControllerQuantity quantity) => quantity switch
    {
        ControllerQuantity.SlewRate or ControllerQuantity.Acceleration or ControllerQuantity.RampDistance => Degree,
        ControllerQuantity.Changeover => Rpm,
        _ => 1.0,
    };
}
