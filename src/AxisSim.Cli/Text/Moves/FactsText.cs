using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Moves;

/// <summary>What follows from the settings without simulation.</summary>
internal static class FactsText
{
    /// <summary>Writes the facts of each axis, those that two axes share only once.</summary>
    public static void Write(Page page, IReadOnlyList<(MountAxis Axis, DerivedFacts Facts)> axes)
    {
        List<(MountAxis Axis, List<(string Name, string Value)> Rows)> all = [.. axes.Select(axis => (axis.Axis, Rows(axis.Facts).ToList()))];
        (string Name, string Value)[] shared = all.Count < 2 ? [] : [.. all[0].Rows.Where(row => all.TrueForAll(axis => axis.Rows.Contains(row)))];
        if (shared.Length > 0)
        {
            page.Heading("Drive train, both axes");
            page.Rows(shared);
        }

        foreach ((MountAxis axis, List<(string Name, string Value)> rows) in all.Where(axis => axis.Rows.Count > shared.Length))
        {
            page.Heading($"Drive train, {axis.Words()}");
            page.Rows(rows.Where(row => !shared.Contains(row)));
        }
    }

    private static IEnumerable<(string Name, string Value)> Rows(DerivedFacts facts)
    {
        yield return ("total reduction", $"{Say.Number(facts.TotalReduction, 6)} : 1");
        yield return ("full step at the axis", $"{Units.SmallAngle(facts.FullStepRadians)}; microstep {Units.SmallAngle(facts.MicrostepRadians)}");
        yield return ("slew rate", $"{Units.Rate(facts.SlewRateRadiansPerSecond)} = {Say.With(Math.Round(Units.Arcseconds(facts.SlewRateRadiansPerSecond)), "arcsec/s", 5)} = {Units.Sidereal(facts.SlewRateRadiansPerSecond)}");
        yield return ("motor at that rate", $"{Units.Speed(facts.MotorSpeedRadiansPerSecond)}, {Say.With(facts.FullStepsPerSecond, "full steps/s", 4)}, {Say.With(facts.PulsesPerSecond, "pulses/s", 4)}");
        yield return ("acceleration", Say.With(Units.Degrees(facts.AccelerationRadiansPerSecondSquared), "deg/s^2"));
        yield return ("inertia", $"{Units.Inertia(facts.AxisInertiaKilogramSquareMetres)} about the axis, {Units.Inertia(facts.ReflectedInertiaKilogramSquareMetres)} at the motor");
        yield return ("worm", $"{Units.Percent(facts.WormEfficiency)} efficient driving, {(facts.SelfLocking ? "locks itself with the motor off" : "does not lock itself: the load can turn it with the motor off")}");
        yield return ("whole train", $"{Units.Percent(facts.TrainEfficiency)} efficient driving");
        yield return ("worm period", $"{Say.With(facts.WormPeriodSeconds, "s", 4)} at the sidereal rate");
        yield return ("rotor resonance", $"{Say.With(facts.RotorResonanceHertz, "Hz")}, damped with {Say.Number(100.0 * facts.DampingShare)} % of critical ({Say.With(1e3 * facts.DampingNewtonMetreSecondsPerRadian, "mN m s/rad")})");
        if (facts.EncoderCountRadians > 0.0)
        {
            yield return ("encoder", $"{Units.SmallAngle(facts.EncoderCountRadians)} per count");
        }
    }
}
