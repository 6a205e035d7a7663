using AxisSim.Plots.Pictures;

namespace AxisSim.Tests.Invented;

/// <summary>Pictures of a balance made by hand.</summary>
internal static class SampleBalances
{
    /// <summary>Two axes, a move, a horizon, a payload of two parts and weights that should go further out.</summary>
    public static BalancePicture Both()
    {
        double[] hours = [.. Enumerable.Range(0, 25).Select(i => i - 12.0)], declinations = [.. Enumerable.Range(0, 19).Select(i => (10.0 * i) - 90.0)];
        double Up(double hour, double declination) => (0.8 * Math.Sin(declination * Math.PI / 180.0)) + (0.6 * Math.Cos(declination * Math.PI / 180.0) * Math.Cos(hour * Math.PI / 12.0));
        double[] Torque(double most) => [.. declinations.SelectMany(declination => hours.Select(hour => Up(hour, declination) < 0.0 ? double.NaN : most * Math.Abs(Math.Cos(hour * Math.PI / 12.0))))];
        return new BalancePicture
        {
            Title = "Harrow Fell Observatory: balance",
            Sentence = "OUT OF BALANCE: by up to 6.3 N m about the polar axis.",
            HourAngles = hours,
            Declinations = declinations,
            Axes = [new("About the polar axis", Torque(6.3), 1.8, new MapPoint(0.0, 10.0, "6.3 N m, telescope west")), new("About the declination axis", Torque(1.2), 0.9, null)],
            Move = [.. Enumerable.Range(0, 11).Select(i => (-0.3 - (0.45 * i), 10.0 + (4.5 * i)))],
            Parts = [new("tube 10 kg", 0.3, 0.09, 0.32, 1.1), new("camera 2 kg", 0.3, -0.5, 0.0, 0.0)],
            Weights = new("weights 14 kg", -0.37, 0.0, 0.14, 0.16),
            Advised = new("where they should be", -0.449, 0.0, 0.14, 0.16),
            BarMetres = 0.6,
            GreatestMetres = 0.55,
        };
    }
}
