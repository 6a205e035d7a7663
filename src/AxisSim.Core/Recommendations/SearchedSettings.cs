using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>The ramps, currents and changeovers that are searched.</summary>
internal static class SearchedSettings
{
    private static readonly double[] Ramps = [0.3, 0.6, 1.2, 2.0, 4.0];
    private static readonly double[] CoarseRamps = [0.5, 1.2, 3.0];
    private static readonly double[] Shares = [1.0, 0.8, 0.6, 0.45];
    private static readonly double[] CoarseShares = [1.0, 0.6];

    /// <summary>A ramp of the grid within a tenth of the file's gives way to it.</summary>
    private const double Near = 0.1;

    /// <summary>Shares of the greatest rate of each setting that become points of the trade-off.</summary>
    public static double[] RateShares(bool coarse) => coarse ? [1.0, 0.6] : [1.0, 0.85, 0.7, 0.5];

    /// <summary>All settings without a rate; those of the file are among them.</summary>
    public static IReadOnlyList<AxisSettings> Of(MountSetup setup, MountAxis axis, bool coarse)
    {
        AxisModel model = setup.Axis(axis);
        AxisSettings own = AxisSettings.Of(setup, axis);
        double rated = model.Motor.RatedCurrentAmperes;
        double[] ramps = [.. (coarse ? CoarseRamps : Ramps).Where(ramp => Math.Abs(Math.Log(ramp / own.RampSeconds)) > Near).Append(RoundDigits.Up(own.RampSeconds, AxisSettings.Digits)).Order()];
        double[] currents = [.. (coarse ? CoarseShares : Shares).Select(share => Math.Min(rated, RoundDigits.Down(share * rated, AxisSettings.Digits))).Append(RoundDigits.Down(Math.Min(own.SlewCurrentAmperes, rated), AxisSettings.Digits)).Distinct().OrderDescending()];
        double[] changeovers = Changeovers(model, coarse);
        return
        [
            .. from current in currents
               from changeover in changeovers
               where double.IsPositiveInfinity(changeover) || current == currents[0]
               from ramp in ramps
               select own with { RampSeconds = ramp, SlewCurrentAmperes = current, ChangeoverRadiansPerSecond = changeover },
        ];
    }

    /// <summary>Never; the one of the file; and the speed from which the voltage no longer drives the microstepped current: beyond it full-stepping has more to give.</summary>
    private static double[] Changeovers(AxisModel model, bool coarse)
    {
        double own = model.Drive.ChangeoverRadiansPerSecond;
        double limited = VoltageLimitedSpeed(model);
        IEnumerable<double> found = [double.PositiveInfinity, own, .. coarse && double.IsFinite(own) ? [] : new[] { Rounded(limited) }];
        return [.. found.Distinct()];
    }

    /// <summary>Motor speed (rad/s) above which the supply cannot drive the full current in microstepping.</summary>
    public static double VoltageLimitedSpeed(AxisModel model)
    {
        double at(double speed) => PullOutLaw.OnDrive(model.Motor, model.Drive with { SlewCurrentAmperes = model.Motor.RatedCurrentAmperes }, false, model.Drive.SupplyVolts, speed)
            + model.Motor.CoulombTorqueNewtonMetres + (model.Motor.ViscousNewtonMetreSecondsPerRadian * speed);
        double full = at(0.0), low = 0.0, high = 1.0;
        while (high < 1e5 && at(high) > 0.999 * full)
        {
            high *= 2.0;
        }

        for (int i = 0; i < 30; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = at(middle) > 0.999 * full ? (middle, high) : (low, middle);
        }

        return low;
    }

    // A whole number of rpm in tens: what a drive may be set to.
    private static double Rounded(double speed)
    {
        double rpm = speed * 30.0 / Math.PI;
        double grain = rpm >= 100.0 ? 10.0 : 1.0;
        return Math.Max(1.0, Math.Round(rpm / grain) * grain) * Math.PI / 30.0;
    }
}
