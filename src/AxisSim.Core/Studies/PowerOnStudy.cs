using AxisSim.Core.Drives;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>What to expect of an axis as it is first powered on, from standstill over tracking to the full slew.</summary>
public static class PowerOnStudy
{
    /// <summary>Slew rates tried before the full one, as shares of it.</summary>
    private static readonly double[] Shares = [0.25, 0.5];

    /// <summary>The move at a quarter, half and all of the slew rate; the last is the result that is known already.</summary>
    public static IReadOnlyList<SlewStage> Slews(MountSetup setup, AxisResult full, double stepSeconds, Action<string, double>? progress = null)
    {
        MountAxis axis = full.Outcome.Axis;
        var stages = new List<SlewStage>();
        foreach (double share in Shares)
        {
            MountSetup slower = Slowed(setup, share);
            AxisResult result = MoveStudy.RunUnchecked(slower, axis, new MoveOptions
            {
                StepSeconds = stepSeconds,
                Explain = false,
                Progress = (_, done) => progress?.Invoke("trying slower slews", (stages.Count + done) / Shares.Length),
            });
            stages.Add(Stage(slower, share, result));
        }

        stages.Add(Stage(setup, 1.0, full));
        return stages;
    }

    /// <summary>The same mount with the slew rates of both axes times a share, and ramps of the same time.</summary>
    public static MountSetup Slowed(MountSetup setup, double share) => setup with { Polar = Slowed(setup.Polar, share), Declination = Slowed(setup.Declination, share) };

    /// <summary>Steady supply current of an axis that stands, or turns so slowly that only the copper takes power, A.</summary>
    /// <param name="model">The axis.</param>
    /// <param name="amperesPeak">Phase current, A peak.</param>
    /// <param name="celsius">Temperature of the winding; without effect when heating is left out.</param>
    public static double SupplyAmperes(AxisModel model, double amperesPeak, double celsius) =>
        SupplyLaw.Amperes(model.Drive, ColdWatts(model, amperesPeak) * (model.Motor.ThermalResistanceKelvinPerWatt > 0.0 ? Winding.ResistanceFactor(celsius) : 1.0));

    /// <summary>Temperature of the winding after a time at a steady phase current, from the ambient temperature.</summary>
    /// <param name="model">The axis.</param>
    /// <param name="amperesPeak">Phase current, A peak.</param>
    /// <param name="ambientCelsius">Ambient temperature.</param>
    /// <param name="seconds">Time, s.</param>
    public static double Celsius(AxisModel model, double amperesPeak, double ambientCelsius, double seconds) =>
        Winding.WarmedUp(ambientCelsius, ColdWatts(model, amperesPeak), model.Motor.ThermalResistanceKelvinPerWatt, model.Motor.ThermalTimeConstantSeconds, seconds);

    // Sine and cosine of the two phases: their squares add up to that of the peak.
    private static double ColdWatts(AxisModel model, double amperesPeak) => amperesPeak * amperesPeak * model.Motor.ResistanceOhms;

    private static AxisModel? Slowed(AxisModel? model, double share)
    {
        if (model is null)
        {
            return null;
        }

        AxisMotion motion = model.Motion;
        double rate = share * motion.SlewRateRadiansPerSecond;
        return model with
        {
            Motion = motion with
            {
                SlewRateRadiansPerSecond = rate,
                Ramp = Ramp.OfSeconds(motion.RampInUseSeconds),
                StartRateRadiansPerSecond = share * motion.StartRateRadiansPerSecond,
            },
        };
    }

    private static SlewStage Stage(MountSetup setup, double share, AxisResult result)
    {
        MountAxis axis = result.Outcome.Axis;
        AxisMotion motion = setup.Axis(axis).Motion;
        return new SlewStage(
            share, motion.SlewRateRadiansPerSecond, motion.PeakAcceleration, MotionProfile.Create(setup.Move.Distance(axis), motion).DurationSeconds, result.Outcome);
    }
}
