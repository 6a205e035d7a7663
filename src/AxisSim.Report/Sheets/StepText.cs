using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>The sequence from power on to the full slew: slow before fast, light before heavy, with the value expected at each step.</summary>
internal static class StepText
{
    /// <summary>How long the tracking is watched, s.</summary>
    public const double TrackingSeconds = 600.0;

    /// <summary>The nudge that shows the sense of rotation, rad (1 deg).</summary>
    private const double NudgeRadians = Math.PI / 180.0;

    private const int CountDigits = 6;

    /// <summary>The steps.</summary>
    public static IReadOnlyList<SheetStep> Of(SheetInput input) =>
        [PowerOn(input), MotorTurn(input), Nudge(input), Tracking(input), .. Enumerable.Range(0, input.Axes[0].Slews.Count).Select(stage => Slew(input, stage))];

    private static SheetRow Row(SheetInput input, string name, string unit, Func<SheetAxis, string> value) => new(name, unit, [.. input.Axes.Select(value)]);

    private static SheetStep PowerOn(SheetInput input)
    {
        double ambient = input.Setup.Disturbances.AmbientCelsius;
        return new(
            "Power on",
            "Clutches open (an axis without a clutch: payload and weights off). Nothing commanded. Read the supply current with the drives off (powered, motors without current), then on: the difference counts.",
            [
                Row(input, "Supply current, drives on less off", "A", axis => Say.Number(PowerOnStudy.SupplyAmperes(axis.Model, axis.Model.Drive.HoldingCurrentAmperes, ambient), 2)),
            ],
            "a motor turns by itself, smells or is too hot to touch; the difference is far off (rms and peak mixed up: twice or half of it; a drive's bridge may add a fifth); the voltage sinks.");
    }

    private static SheetStep MotorTurn(SheetInput input) => new(
        "One motor turn",
        "Clutches still open. Command one motor turn, slowly, and the same back.",
        [
            Row(input, "Pulses", "", axis => Say.Count(axis.Figures.PulsesPerMotorTurn)),
            Row(input, "The worm turns by", "deg", axis => Say.Number(360.0 / axis.Model.Train.StageRatio, 4)),
        ],
        "it buzzes and does not turn (a phase is open or crossed), or turns by another amount (microsteps or reduction wrong).");

    private static SheetStep Nudge(SheetInput input) => new(
        "Sense of rotation",
        "Clutches closed, payload on, a hand at the switch. A slow nudge of 1 deg, each way, axis by axis.",
        [
            Row(input, "Pulses for 1 deg", "", axis => Say.Number(NudgeRadians / axis.Facts.MicrostepRadians, CountDigits)),
            .. input.Axes.Any(axis => axis.Model.EncoderCounts > 0.0)
                ? new[] { Row(input, "Encoder counts for 1 deg", "", axis => axis.Facts.EncoderCountRadians > 0.0 ? Say.Number(NudgeRadians / axis.Facts.EncoderCountRadians, 4) : "none") }
                : [],
        ],
        "an axis goes the wrong way (supply off, then swap the two leads of one phase, or set the sense in the controller), runs on, or the clutch slips.");

    private static SheetStep Tracking(SheetInput input)
    {
        double ambient = input.Setup.Disturbances.AmbientCelsius;
        bool Tracks(SheetAxis axis) => axis.Result.Outcome.Axis == MountAxis.Polar;
        double Amperes(SheetAxis axis) => Tracks(axis) ? axis.Model.Drive.TrackingCurrentAmperes : axis.Model.Drive.HoldingCurrentAmperes;
        double rate = SkyRates.MeanSiderealRadiansPerSecond;
        return new(
            $"Track for {Say.Number(TrackingSeconds / 60.0)} min",
            "Polar axis at the sidereal rate; the declination axis holds.",
            [
                Row(input, "The axis moves", "arcsec/s", axis => Tracks(axis) ? Say.Number(Units.Arcseconds(rate), 4) : "0"),
                Row(input, "One full step each", "s", axis => Tracks(axis) ? Say.Number(axis.Facts.FullStepRadians / rate, 4) : "none"),
                Row(input, "Supply current, drives on less off", "A", axis => Say.Number(PowerOnStudy.SupplyAmperes(axis.Model, Amperes(axis), ambient), 2)),
                Row(input, $"Winding after {Say.Number(TrackingSeconds / 60.0)} min, from {Units.Celsius(ambient)}", "degC", axis => axis.Model.Motor.ThermalResistanceKelvinPerWatt > 0.0 ? Say.Number(Math.Round(PowerOnStudy.Celsius(axis.Model, Amperes(axis), ambient, TrackingSeconds))) : "heating left out"),
            ],
            "the sky or the encoder shows another rate, it sticks and jumps, or a case is hotter than the winding should be.");
    }

    private static SheetStep Slew(SheetInput input, int stage)
    {
        double share = input.Axes[0].Slews[stage].Share;
        bool last = share == 1.0;
        return new(
            Name(share),
            Fails(input, stage) ? "LEAVE THIS OUT: it is predicted to fail." : last ? "Only if all before was right. The whole move, there and back; then listen and feel for heat." : stage == 0
                ? "The ramp takes the time above. First 5 deg, then the move of the scenario, each axis alone, then both."
                : "The same move, the ramp takes the same time.",
            [
                Row(input, "Rate; greatest acceleration", "deg/s; deg/s\u00b2", axis => $"{Say.Number(Units.Degrees(axis.Slews[stage].SlewRateRadiansPerSecond), 4)}; {Say.Number(Units.Degrees(axis.Slews[stage].AccelerationRadiansPerSecondSquared))}"),
                Row(input, "The move takes", "s", axis => axis.Slews[stage].OwnSeconds > 0.0 ? Say.Number(axis.Slews[stage].OwnSeconds) : "does not move"),
                Row(input, "Peak supply current, on less off", "A", axis => Say.Number(axis.Slews[stage].Outcome.Power.PeakSupplyAmperes, 2)),
                Row(input, $"Within {Units.SmallAngle(input.Setup.Move.SettleToleranceRadians)} of its rest after", "s", axis => Rest(axis.Slews[stage])),
            ],
            last ? "it growls, thumps or falls silent (lost step: supply off, hold the tube), encoder and step count disagree, or it ends elsewhere."
                : stage == 0 ? "it growls, thumps or stops while pulses go on; a cable pulls taut; the supply sinks. Supply off, one hand on the tube."
                : "as before; or the case gets too hot to touch.");
    }

    /// <summary>The slews that are predicted to fail, by their titles in lower case.</summary>
    public static IEnumerable<string> Failing(SheetInput input) =>
        Enumerable.Range(0, input.Axes[0].Slews.Count).Where(stage => Fails(input, stage)).Select(stage => Name(input.Axes[0].Slews[stage].Share)).Select(name => char.ToLowerInvariant(name[0]) + name[1..]);

    private static bool Fails(SheetInput input, int stage) => input.Axes.Any(axis => axis.Slews[stage] is { Outcome.Verdict: not MoveEnd.Arrives });

    private static string Name(double share) => share switch
    {
        0.25 => "A quarter of the slew rate",
        0.5 => "Half the slew rate",
        1.0 => "The full slew rate",
        _ => Units.Percent(share) + " of the slew rate",
    };

    private static string Rest(SlewStage stage) => stage switch
    {
        { Outcome.Verdict: MoveEnd.Broken or MoveEnd.Stalls or MoveEnd.ClutchSlips } => Rows.Failed(stage.Outcome.Verdict),
        { Outcome.Settling.AgainstRestSeconds: { } time } => time > 0.0 ? Say.Number(time) : "at once",
        _ => Rows.Failed(MoveEnd.DoesNotSettle),
    };
}
