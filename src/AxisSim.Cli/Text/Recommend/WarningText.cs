using AxisSim.Core.Motors;
using AxisSim.Core.Recommendations;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>Where a recommendation leans on more than was checked.</summary>
internal static class WarningText
{
    // Twice what the file has: what its owner may have tried lies well below (a choice of ours).
    private const double FarBeyond = 2.0;

    // Below this share of its holding torque the model's inductance, and iron that it leaves out, decide (a choice of ours).
    private const double LittleTorque = 0.1;

    /// <summary>The warnings; empty when there are none.</summary>
    public static IReadOnlyList<string> Of(RecommendedAxis advice)
    {
        var warnings = new List<string>();
        AxisRecommendation answer = advice.Answer;
        AxisSettings settings = answer.Chosen!.Settings;
        if (answer.FailingBelow.Count > 0)
        {
            warnings.Add($"Near a resonance: {Say.List([.. answer.FailingBelow.Select(RecommendVerdict.Rate)])} {(answer.FailingBelow.Count == 1 ? "does" : "do")} not hold with the margin though slower. Stay at the rate recommended or go well below.");
        }

        if (settings.SlewRateRadiansPerSecond > FarBeyond * advice.Now.SlewRateRadiansPerSecond || settings.SlewRateRadiansPerSecond / settings.RampSeconds > FarBeyond * advice.Now.SlewRateRadiansPerSecond / advice.Now.RampSeconds)
        {
            warnings.Add("This is more than twice the rate or the acceleration of the file: friction and stiffness were not measured there. Go up in steps.");
        }

        double speed = settings.SlewRateRadiansPerSecond * advice.Model.Train.TotalRatio;
        double torque = PullOutLaw.OnDrive(advice.Model.Motor, advice.Model.Drive with { SlewCurrentAmperes = settings.SlewCurrentAmperes }, speed > settings.ChangeoverRadiansPerSecond, advice.Model.Drive.SupplyVolts, speed);
        if (torque < LittleTorque * advice.Model.Motor.HoldingTorqueNewtonMetres)
        {
            warnings.Add($"At this speed the motor has less than {Units.Percent(LittleTorque)} of its holding torque left: iron losses and saturation, which the model leaves out, may count there.");
        }

        if (advice.StepSeconds < advice.AskedStepSeconds)
        {
            warnings.Add($"The simulation took a shorter step than usual, {Say.With(1e6 * advice.StepSeconds, "us")}, for the speed of the motor or a stiff part.");
        }

        if (answer.Currents is { TrackingReason: CurrentReason.Capped } or { HoldingReason: CurrentReason.Capped })
        {
            warnings.Add("Tracking or holding would want more current than the slew current: for its torque, or so that the detent torque moves the axis by less than the settling tolerance.");
        }

        return warnings;
    }
}
