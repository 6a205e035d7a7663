using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>What is set on a controller and a drive for one axis.</summary>
/// <param name="SlewRateRadiansPerSecond">Slew rate at the axis, rad/s.</param>
/// <param name="RampSeconds">Ramp time, s.</param>
/// <param name="SlewCurrentAmperes">Phase current while slewing, A peak.</param>
/// <param name="TrackingCurrentAmperes">Phase current while tracking, A peak.</param>
/// <param name="HoldingCurrentAmperes">Phase current at rest, A peak.</param>
/// <param name="ChangeoverRadiansPerSecond">Motor speed above which the drive full-steps, rad/s; infinite for never.</param>
public readonly record struct AxisSettings(
    double SlewRateRadiansPerSecond, double RampSeconds, double SlewCurrentAmperes, double TrackingCurrentAmperes, double HoldingCurrentAmperes, double ChangeoverRadiansPerSecond)
{
    /// <summary>Digits to which currents and ramps are set.</summary>
    internal const int Digits = 3;

    /// <summary>The settings that a setup has now.</summary>
    public static AxisSettings Of(MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        return new(
            model.Motion.SlewRateRadiansPerSecond, model.Motion.RampInUseSeconds, model.Drive.SlewCurrentAmperes, model.Drive.TrackingCurrentAmperes, model.Drive.HoldingCurrentAmperes, model.Drive.ChangeoverRadiansPerSecond);
    }

    /// <summary>The setup with these settings.</summary>
    public MountSetup Apply(MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        return setup.With(axis, model with
        {
            Motion = model.Motion with { SlewRateRadiansPerSecond = SlewRateRadiansPerSecond, Ramp = Ramp.OfSeconds(RampSeconds) },
            Drive = model.Drive with
            {
                SlewCurrentAmperes = SlewCurrentAmperes,
                TrackingCurrentAmperes = TrackingCurrentAmperes,
                HoldingCurrentAmperes = HoldingCurrentAmperes,
                ChangeoverRadiansPerSecond = ChangeoverRadiansPerSecond,
            },
        });
    }
}
