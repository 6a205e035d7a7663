using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Outcomes;

/// <summary>What an axis may do without end.</summary>
public enum ContinuousDuty
{
    /// <summary>Slewing, at the mean copper loss of this slew.</summary>
    Slewing,

    /// <summary>Tracking the sky at the tracking current (polar axis only).</summary>
    Tracking,

    /// <summary>Resting at the holding current.</summary>
    Holding,
}

/// <summary>The hottest that a winding gets when one thing is done without end.</summary>
/// <param name="Celsius">Winding temperature, degrees Celsius; infinite when the copper's rising loss runs away.</param>
/// <param name="Duty">Doing what.</param>
/// <remarks>
/// Copper loss at 20 degrees Celsius: the mean of the simulated slew; for tracking and holding <c>I^2 R</c>, both phases together, for the microstepped currents
/// <c>I cos, I sin</c> make that at any place of the rotor. <see cref="Winding.ContinuousCelsius"/> gives the temperature.
/// </remarks>
public readonly record struct ContinuousHeat(double Celsius, ContinuousDuty Duty)
{
    /// <summary>Of one axis, from the mean copper loss of its own slew at 20 degrees Celsius, W.</summary>
    internal static ContinuousHeat Of(MountSetup setup, MountAxis axis, double slewWattsAt20)
    {
        AxisModel model = setup.Axis(axis);
        var heat = new WindingHeat(setup.Disturbances.AmbientCelsius, model.Motor.ThermalResistanceKelvinPerWatt, model.Motor.ThermalTimeConstantSeconds);
        ContinuousHeat At(ContinuousDuty duty, double watts) => new(heat.Balance(watts), duty);
        double Copper(double amperes) => amperes * amperes * model.Motor.ResistanceOhms;
        ContinuousHeat hottest = At(ContinuousDuty.Slewing, slewWattsAt20);
        ContinuousHeat tracking = At(ContinuousDuty.Tracking, axis == MountAxis.Polar ? Copper(model.Drive.TrackingCurrentAmperes) : 0.0);
        ContinuousHeat holding = At(ContinuousDuty.Holding, Copper(model.Drive.HoldingCurrentAmperes));
        hottest = tracking.Celsius > hottest.Celsius ? tracking : hottest;
        return holding.Celsius > hottest.Celsius ? holding : hottest;
    }
}
