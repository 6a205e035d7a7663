using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;
using AxisSim.Report.Sheets;

namespace AxisSim.Cli.Text.Moves;

/// <summary>The figures of one axis: torque, settling, offset, supply and heat.</summary>
internal static class FiguresText
{
    /// <summary>Rows of names and values.</summary>
    public static IEnumerable<(string Name, string Value)> Rows(MountSetup setup, AxisResult result)
    {
        AxisOutcome outcome = result.Outcome;
        yield return ("slew duration", SlewText.Duration(setup, outcome));
        yield return ("least torque margin", Margin(outcome.Margin));
        if (outcome.LoadFactor is { } factor)
        {
            yield return ("load factor", Factor(factor));
        }

        if (result.Rates is { } rates)
        {
            yield return ("room in slew rate", RateRoomText.Of(rates, setup.Axis(outcome.Axis).Motion.SlewRateRadiansPerSecond));
        }

        if (RotorSwingText.Of(outcome) is { } swing)
        {
            yield return ("swing of the rotor", swing);
        }

        foreach ((string, string) row in Settle(outcome))
        {
            yield return row;
        }

        if (outcome.Loss is null)
        {
            yield return ("offset at the end", Offset(outcome.Offset));
        }

        if (outcome.ClutchSlipRadians != 0.0)
        {
            yield return ("clutch slip", Units.SmallAngle(Math.Abs(outcome.ClutchSlipRadians)));
        }

        foreach ((string, string) row in Power(setup, outcome))
        {
            yield return row;
        }
    }

    /// <summary>A warning when the margin is thin; null otherwise.</summary>
    public static string? Thin(AxisOutcome outcome) => outcome.LoadFactor is { IsThin: true } factor
        ? $"The margin is thin: with inertia, imbalance and friction {Units.Percent(factor.Value - 1.0)} above those given it would stall, and friction alone is rarely known better than 30 %. A load factor of {Say.Number(LoadFactor.Usual)} or more is common practice."
        : null;

    private static string Volts(PowerAndHeat power)
    {
        string low = Say.With(power.LowestBusVolts, "V"), high = Say.With(power.HighestBusVolts, "V");
        return low == high ? low : $"{Say.Number(power.LowestBusVolts)} to {high}";
    }

    private static string Margin(TorqueMargin margin) =>
        $"{(margin.Value >= 0.0 ? Units.Percent(margin.Value) : double.IsFinite(margin.Value) ? $"none, {Units.Percent(-margin.Value)} short," : "none")} at {Units.Time(margin.TimeSeconds)}: {Units.ShaftTorque(margin.NeededNewtonMetres)} needed of {Units.ShaftTorque(margin.AvailableNewtonMetres)} pull-out torque at {Units.Speed(Math.Abs(margin.MotorSpeedRadiansPerSecond))}{(margin.Band is { } band ? $"; between {Say.Number(Units.Rpm(band.FromRadiansPerSecond))} and {Units.Speed(band.ToRadiansPerSecond)} it may lose step or not" : margin.ShakesAtRate ? "; shaken near a resonance, so that it does not decide" : Math.Abs(margin.Value) <= TorqueMargin.Undecided ? "; within 10 % it does not decide" : string.Empty)}";

    private static string Factor(LoadFactor factor) => factor.AtLeast
        ? $"at least {Say.Number(factor.Value)}: with inertia, imbalance and friction times {Say.Number(factor.Value)} it still arrives"
        : $"{Say.Number(factor.Value)}: up to this factor on inertia, imbalance and friction it still arrives";

    private static IEnumerable<(string Name, string Value)> Settle(AxisOutcome outcome)
    {
        if (outcome.Settling is not { } settling)
        {
            yield break;
        }

        string band = $"+-{Units.SmallAngle(settling.ToleranceRadians)}";
        yield return ("settles to its rest", settling.AgainstRestSeconds is { } rest ? $"{After(rest)} the slew, to within {band} of where it stays{Graze(settling)}" : $"not to within {band} in the time watched");
        yield return ("settles to the target", settling.AgainstCommandSeconds is { } command
            ? $"{After(command)} the slew, to within {band} of the command"
            : $"no: it does not stay within {band} of the command (see the offset)");
        yield return ("ripple at rest", $"up to {Units.SmallAngle(settling.RippleRadians)} about where it rests, at the end of the watch");
        if (Doubt(settling) is { } doubt)
        {
            yield return ("place of rest", doubt);
        }

        yield return ("overshoot", Units.SmallAngle(settling.OvershootRadians) + " beyond the final rest");
        yield return ("jump as current falls", settling.HoldJumpRadians is { } jump ? Units.Offset(jump) : "none seen (the current does not change in the time watched)");
    }

    /// <summary>A warning when the motor loses step in the same move at half the step.</summary>
    public static string? Unsure(AxisOutcome outcome) => outcome.Settling?.HalfStep is { Radians: null }
        ? "Run again at half the step, the motor loses step: this verdict hangs on the last digit. Take the move as one that may stall."
        : null;

    // Less than this does not matter to the move: a tenth of the tolerance, but no less than the step's own promise.
    private static string? Doubt(Settling settling)
    {
        const double Promise = 0.1 * Math.PI / 648000.0;
        return settling.HalfStep?.Radians is { } rest && Math.Abs(rest - settling.RestRadians) is var off && off > Math.Max(Promise, 0.1 * settling.ToleranceRadians)
            ? $"known to about {Units.SmallAngle(off)}: so far off it rests when run again at half the step. The last digit decides where between flanks and friction it stops"
            : null;
    }

    private static string Graze(Settling settling) =>
        settling.Grazes ? " (roughly: a peak grazes the band)" : "";

    private static string After(double seconds) => seconds > 0.0 ? Units.Time(seconds) + " after" : "at the end of";

    private static string Offset(OffsetSplit offset) =>
        $"{Units.Offset(offset.TotalRadians)} from the command: backlash {Units.Offset(offset.BacklashRadians)}, wind-up {Units.Offset(offset.WindUpRadians)}, friction {Units.Offset(offset.FrictionRadians)}, periodic error {Units.Offset(offset.PeriodicRadians)}{Bend(offset)}";

    private static string Bend(OffsetSplit offset) => offset.FlexureRadians == 0.0 ? "" : $", bend of the payload {Units.Offset(offset.FlexureRadians)}";

    private static IEnumerable<(string Name, string Value)> Power(MountSetup setup, AxisOutcome outcome)
    {
        PowerAndHeat power = outcome.Power;
        AxisModel model = setup.Axis(outcome.Axis);
        string after = setup.Tracks(outcome.Axis) ? $"{Units.Current(model.Drive.TrackingCurrentAmperes)} tracking after it" : $"{Units.Current(model.Drive.HoldingCurrentAmperes)} at rest after it";
        yield return ("phase current", $"{Units.Current(model.Drive.SlewCurrentAmperes)} slewing, {after}; rated {Units.Current(model.Motor.RatedCurrentAmperes)}");
        yield return ("supply", $"motors through an ideal drive: {Say.With(power.PeakSupplyAmperes, "A")} peak (over 10 ms), {Say.With(power.MeanSupplyAmperes, "A")} mean over the slew, {Units.Energy(power.EnergyJoules)} in all, the watch after the slew included; {Volts(power)} at the drive");
        string limit = $"class {power.Insulation} allows {Units.Celsius(power.LimitCelsius)}";
        string duty = DutyText.Doing(power.Duty);
        string endless = double.IsFinite(power.ContinuousCelsius) ? Units.Celsius(power.ContinuousCelsius) : "above the limit";
        string hot = power.ContinuousCelsius > power.LimitCelsius ? $": TOO HOT for {duty} without end" : "";
        yield return ("winding", $"{Units.Celsius(power.EndCelsius)} at the end; hottest without end: {endless}, {duty}; {limit}{hot}");
    }
}
