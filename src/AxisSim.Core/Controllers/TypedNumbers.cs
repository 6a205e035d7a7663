using AxisSim.Core.Bounds;
using AxisSim.Core.Drives;
using AxisSim.Core.Mount;

namespace AxisSim.Core.Controllers;

/// <summary>Turns the settings of an axis into the numbers that a controller takes, rounded to the safe side (<see cref="SafeSides"/>), and those numbers back into an axis.</summary>
/// <remarks>
/// Later numbers are chosen for what earlier ones made: the slew rate first, then the start rate (not above it), the ramp, the changeover, the slew current, and the currents after it. A ramp
/// distance d becomes the ramp time <c>2 d/(v0 + v)</c> with the rates as typed.
/// </remarks>
public static class TypedNumbers
{
    /// <summary>The numbers for an axis.</summary>
    /// <param name="model">The axis as it is wanted.</param>
    /// <param name="scales">What the controller takes: each quantity at most once, and one way to give the ramp.</param>
    public static TypedAxis Of(AxisModel model, IReadOnlyList<ControllerScale> scales)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(scales);
        AxisModel typed = model;
        var numbers = new Dictionary<ControllerScale, TypedNumber>();
        foreach (ControllerScale scale in scales.OrderBy(scale => scale.Quantity))
        {
            if (Choose(scale, model, typed) is { } number)
            {
                numbers[scale] = number;
                typed = With(typed, scale.Quantity, number.Value);
            }
        }

        return new TypedAxis(typed, [.. scales.Where(numbers.ContainsKey).Select(scale => numbers[scale])]);
    }

    /// <summary>What an axis wants of a quantity, SI.</summary>
    /// <param name="model">The axis as it is wanted.</param>
    /// <param name="quantity">The quantity.</param>
    /// <param name="slewAmperes">Slew current that shares of it are of, A peak.</param>
    public static double Wanted(AxisModel model, ControllerQuantity quantity, double slewAmperes)
    {
        ArgumentNullException.ThrowIfNull(model);
        AxisMotion motion = model.Motion;
        ChopperDrive drive = model.Drive;
        return quantity switch
        {
            ControllerQuantity.SlewRate => motion.SlewRateRadiansPerSecond,
            ControllerQuantity.StartRate => motion.StartRateRadiansPerSecond,
            ControllerQuantity.RampTime => motion.RampInUseSeconds,
            ControllerQuantity.Acceleration => motion.PeakAcceleration,
            ControllerQuantity.RampDistance => new ControllerFigures(model).RampRadians,
            ControllerQuantity.Changeover => drive.ChangeoverRadiansPerSecond,
            ControllerQuantity.SlewCurrent => drive.SlewCurrentAmperes,
            ControllerQuantity.TrackingCurrent => drive.TrackingCurrentAmperes,
            ControllerQuantity.HoldingCurrent => drive.HoldingCurrentAmperes,
            ControllerQuantity.TrackingShare => drive.TrackingCurrentAmperes / slewAmperes,
            ControllerQuantity.HoldingShare => drive.HoldingCurrentAmperes / slewAmperes,
            _ => drive.CurrentFallDelaySeconds,
        };
    }

    /// <summary>Whether a quantity may have a value at all, by the bounds of the setup.</summary>
    public static bool Possible(ControllerQuantity quantity, double value) => quantity switch
    {
        ControllerQuantity.TrackingShare => value > 0.0 && double.IsFinite(value),
        ControllerQuantity.HoldingShare => value >= 0.0 && double.IsFinite(value),
        ControllerQuantity.RampDistance => value > 0.0 && double.IsFinite(value),
        _ => Bound(quantity).Holds(value),
    };

    private static Bound Bound(ControllerQuantity quantity) => quantity switch
    {
        ControllerQuantity.SlewRate => AxisBounds.SlewRate,
        ControllerQuantity.StartRate => AxisBounds.StartRate,
        ControllerQuantity.RampTime => AxisBounds.RampTime,
        ControllerQuantity.Acceleration => AxisBounds.Acceleration,
        ControllerQuantity.Changeover => DriveBounds.Changeover,
        ControllerQuantity.HoldingCurrent => DriveBounds.HoldingCurrent,
        ControllerQuantity.CurrentFallDelay => DriveBounds.CurrentFallDelay,
        _ => DriveBounds.MovingCurrent,
    };

    private static TypedNumber? Choose(ControllerScale scale, AxisModel model, AxisModel typed)
    {
        ControllerQuantity quantity = scale.Quantity;
        double wanted = Wanted(model, quantity, typed.Drive.SlewCurrentAmperes), slewing = typed.Motion.SlewRateRadiansPerSecond * typed.Train.TotalRatio;
        bool microsteps = model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio <= model.Drive.ChangeoverRadiansPerSecond;

        // "Never" is any speed that the slew does not pass.
        double aim = double.IsFinite(wanted) ? wanted : slewing;
        double most = quantity == ControllerQuantity.StartRate ? typed.Motion.SlewRateRadiansPerSecond : double.PositiveInfinity;
        bool Takes(double? number) => number is { } some && Possible(quantity, scale.Value(some)) && scale.Value(some) <= most;
        (double? below, double? above) = Ends(scale, aim, Takes);
        (double? first, double? second) = SafeSides.Of(quantity) switch
        {
            SafeSide.Lower => (below, above),
            SafeSide.Higher => (above, below),
            SafeSide.HigherToRated => Keeps(scale, above, quantity, model, typed) ? (above, below) : (below, above),
            _ => (microsteps && above is not null) || (!microsteps && below is null) ? (above, below) : (below, above),
        };
        if (SafeSides.Of(quantity) == SafeSide.SameStepping)
        {
            bool Same(double? number) => number is { } some && slewing <= scale.Value(some) == microsteps;
            double? nearest = new[] { below, above }.Where(Same).MinBy(number => Math.Abs(scale.Value(number!.Value) - aim));
            return (nearest ?? first ?? second) is not { } chosen ? null : new TypedNumber(scale, wanted, chosen, Fit(scale, wanted, chosen, nearest is not null));
        }

        bool safe = first is not null && (SafeSides.Of(quantity) != SafeSide.HigherToRated || Keeps(scale, first, quantity, model, typed));
        return (first ?? second) is not { } one ? null : new TypedNumber(scale, wanted, one, Fit(scale, wanted, one, safe));
    }

    // Next to the value where that is possible; else the first possible number towards the other end.
    private static (double? Below, double? Above) Ends(ControllerScale scale, double aim, Func<double?, bool> takes)
    {
        (double? below, double? above) = scale.Around(aim);
        if (takes(below) || takes(above))
        {
            return (takes(below) ? below : null, takes(above) ? above : null);
        }

        // A rate below one unit rounds to nought, which is no rate: the first step that is one.
        double? next = above is { } number && takes(number + scale.Step) && number + scale.Step <= scale.Greatest ? number + scale.Step : null;
        return (null, next);
    }

    private static bool Keeps(ControllerScale scale, double? number, ControllerQuantity quantity, AxisModel model, AxisModel typed)
    {
        bool share = quantity is ControllerQuantity.TrackingShare or ControllerQuantity.HoldingShare;
        double asked = quantity switch
        {
            ControllerQuantity.SlewCurrent => model.Drive.SlewCurrentAmperes,
            ControllerQuantity.TrackingCurrent or ControllerQuantity.TrackingShare => model.Drive.TrackingCurrentAmperes,
            _ => model.Drive.HoldingCurrentAmperes,
        };
        double cap = Math.Max(model.Motor.RatedCurrentAmperes, asked) * (1.0 + 1e-9);
        return number is { } some && scale.Value(some) * (share ? typed.Drive.SlewCurrentAmperes : 1.0) <= cap;
    }

    private static TypedFit Fit(ControllerScale scale, double wanted, double number, bool safe)
    {
        const double Same = 1e-6;
        double off = Math.Abs(scale.Value(number) - wanted);
        return double.IsFinite(off) && off <= Same * Math.Max(Math.Abs(wanted), Math.Abs(scale.Unit * scale.Step)) ? TypedFit.Exact : safe ? TypedFit.SafeSide : TypedFit.OtherSide;
    }

    private static AxisModel With(AxisModel model, ControllerQuantity quantity, double value)
    {
        AxisMotion motion = model.Motion;
        ChopperDrive drive = model.Drive;
        double start = motion.StartRateRadiansPerSecond;
        return quantity switch
        {
            ControllerQuantity.SlewRate => model with { Motion = motion with { SlewRateRadiansPerSecond = value, StartRateRadiansPerSecond = Math.Min(start, value) } },
            ControllerQuantity.StartRate => model with { Motion = motion with { StartRateRadiansPerSecond = value } },
            ControllerQuantity.RampTime => model with { Motion = motion with { Ramp = Ramp.OfSeconds(value) } },
            ControllerQuantity.Acceleration => model with { Motion = motion with { Ramp = Ramp.OfAcceleration(value) } },
            ControllerQuantity.RampDistance => model with { Motion = motion with { Ramp = Ramp.OfSeconds(2.0 * value / (start + motion.SlewRateRadiansPerSecond)) } },
            ControllerQuantity.Changeover => model with { Drive = drive with { ChangeoverRadiansPerSecond = value } },
            ControllerQuantity.SlewCurrent => model with { Drive = drive with { SlewCurrentAmperes = value } },
            ControllerQuantity.TrackingCurrent => model with { Drive = drive with { TrackingCurrentAmperes = value } },
            ControllerQuantity.HoldingCurrent => model with { Drive = drive with { HoldingCurrentAmperes = value } },
            ControllerQuantity.TrackingShare => model with { Drive = drive with { TrackingCurrentAmperes = value * drive.SlewCurrentAmperes } },
            ControllerQuantity.HoldingShare => model with { Drive = drive with { HoldingCurrentAmperes = value * drive.SlewCurrentAmperes } },
            _ => model with { Drive = drive with { CurrentFallDelaySeconds = value } },
        };
    }
}
