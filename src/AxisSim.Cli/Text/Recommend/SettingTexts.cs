using System.Globalization;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>Recommended settings as a scenario writes them.</summary>
internal static class SettingTexts
{
    private const double RpmPerRadianPerSecond = 30.0 / Math.PI;

    /// <summary><c>key=value</c> of each setting.</summary>
    public static IReadOnlyList<string> Of(MountAxis axis, AxisSettings settings)
    {
        string key = axis.Key();
        return
        [
            $"{key}.motion.slew_rate={Digits(Units.Degrees(settings.SlewRateRadiansPerSecond), 9)} deg/s",
            $"{key}.motion.ramp_time={Digits(settings.RampSeconds, 9)} s",
            $"{key}.drive.slew_current={Digits(settings.SlewCurrentAmperes, 9)} A",
            $"{key}.drive.tracking_current={Digits(settings.TrackingCurrentAmperes, 9)} A",
            $"{key}.drive.holding_current={Digits(settings.HoldingCurrentAmperes, 9)} A",
            $"{key}.drive.changeover={Changeover(settings.ChangeoverRadiansPerSecond)}",
        ];
    }

    /// <summary>A changeover: never, or a motor speed.</summary>
    public static string Changeover(double radiansPerSecond)
    {
        if (double.IsPositiveInfinity(radiansPerSecond))
        {
            return "never";
        }

        double rpm = radiansPerSecond * RpmPerRadianPerSecond;
        return Math.Abs(rpm - Math.Round(rpm)) < 1e-6 * rpm ? $"{Digits(Math.Round(rpm), 9)} rpm" : $"{Digits(radiansPerSecond, 9)} rad/s";
    }

    private static string Digits(double value, int digits) => Math.Round(value, digits).ToString("0.#########", CultureInfo.InvariantCulture);
}
