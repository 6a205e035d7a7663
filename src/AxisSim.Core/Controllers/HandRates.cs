using AxisSim.Core.Sky;

namespace AxisSim.Core.Controllers;

/// <summary>Rates at which a mount is moved by hand or by a guider, as multiples of the sidereal rate. Which of them a controller offers differs; these are common practice, no source.</summary>
public static class HandRates
{
    /// <summary>Guiding: what a correction adds to tracking or takes from it; 1 stops the polar axis or doubles its rate.</summary>
    public static IReadOnlyList<double> Guiding { get; } = [0.25, 0.5, 0.75, 1.0];

    /// <summary>Centring: to bring a target from the edge of the field to its middle.</summary>
    public static IReadOnlyList<double> Centring { get; } = [4.0, 16.0, 64.0];

    /// <summary>The rate at the axis, rad/s: the multiple times the mean sidereal rate.</summary>
    public static double RadiansPerSecond(double timesSidereal) => timesSidereal * SkyRates.MeanSiderealRadiansPerSecond;
}
