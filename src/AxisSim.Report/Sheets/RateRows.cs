using AxisSim.Core.Controllers;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Report.Text;
using static AxisSim.Report.Sheets.Rows;

namespace AxisSim.Report.Sheets;

/// <summary>Rates and ramps to enter, in every unit that a controller may ask for.</summary>
internal static class RateRows
{
    /// <summary>Slew rate, ramp, sidereal rate, and the rates for guiding and centring.</summary>
    public static IEnumerable<SheetGroup> Of(IReadOnlyList<SheetAxis> axes)
    {
        yield return new("Slew rate", [
            Row(axes, "At the axis", "deg/s", axis => Entered(Units.Degrees(axis.Facts.SlewRateRadiansPerSecond))),
            Row(axes, "", "arcsec/s", axis => Entered(Units.Arcseconds(axis.Facts.SlewRateRadiansPerSecond))),
            Row(axes, "", "x sidereal", axis => Entered(axis.Facts.SlewRateRadiansPerSecond / SkyRates.MeanSiderealRadiansPerSecond)),
            Row(axes, "At the motor", "rpm", axis => Entered(Units.Rpm(axis.Facts.MotorSpeedRadiansPerSecond))),
            Row(axes, "", "full steps/s", axis => Entered(axis.Facts.FullStepsPerSecond)),
            Row(axes, "", "pulses/s", axis => Entered(axis.Facts.PulsesPerSecond)),
        ]);
        yield return new("Ramp", [.. Ramp(axes)]);
        yield return new("Sidereal rate", [
            Row(axes, "At the motor", "pulses/s", axis => Entered(axis.Figures.SiderealPulsesPerSecond)),
            Row(axes, "One pulse each", "ms", axis => Entered(1e3 * axis.Figures.PulseSeconds(SkyRates.MeanSiderealRadiansPerSecond))),
        ]);
        yield return new("Moving by hand, x sidereal", [
            .. HandRates.Guiding.Select(share => Hand(axes, $"Guiding {Say.Number(share)}", share)),
            .. HandRates.Centring.Select(share => Hand(axes, $"Centring {Say.Number(share)}", share)),
        ]);
    }

    private static SheetRow Hand(IReadOnlyList<SheetAxis> axes, string name, double timesSidereal)
    {
        double rate = HandRates.RadiansPerSecond(timesSidereal);
        return Row(axes, name, "arcsec/s; pulses/s", axis => rate <= axis.Facts.SlewRateRadiansPerSecond
            ? $"{Say.Number(Units.Arcseconds(rate), 5)}; {Say.Number(axis.Figures.Pulses(rate), 5)}"
            : "above the slew rate");
    }

    private static IEnumerable<SheetRow> Ramp(IReadOnlyList<SheetAxis> axes)
    {
        if (axes.Any(axis => axis.Model.Motion.StartRateRadiansPerSecond > 0.0))
        {
            yield return Row(axes, "Start rate, no ramp below it", "deg/s", axis => Entered(Units.Degrees(axis.Model.Motion.StartRateRadiansPerSecond)));
        }

        yield return Row(axes, "Time", "s", axis => Entered(axis.Model.Motion.RampInUseSeconds));
        yield return Row(axes, "Distance", "deg", axis => Entered(Units.Degrees(axis.Figures.RampRadians)));
        yield return Row(axes, "Greatest acceleration", "deg/s\u00b2", axis => Entered(Units.Degrees(axis.Facts.AccelerationRadiansPerSecondSquared)));
        yield return Row(axes, "", "arcsec/s\u00b2", axis => Entered(Units.Arcseconds(axis.Facts.AccelerationRadiansPerSecondSquared)));
        yield return Row(axes, "", "full steps/s\u00b2", axis => Entered(axis.Figures.FullSteps(axis.Facts.AccelerationRadiansPerSecondSquared)));
        yield return Row(axes, "", "pulses/s\u00b2", axis => Entered(axis.Figures.Pulses(axis.Facts.AccelerationRadiansPerSecondSquared)));
        yield return Row(axes, axes.Any(axis => axis.Model.Motion.Shape == RampShape.SCurve) ? "Shape; jerk share" : "Shape", "", axis => Shape(axis.Model.Motion));
    }

    private static string Shape(AxisMotion motion) => motion.Shape == RampShape.SCurve
        ? $"S-curve; {Units.Percent(motion.JerkShare)}"
        : "trapezoid";
}
