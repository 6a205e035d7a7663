using AxisSim.Core.Gearing;
using AxisSim.Report.Text;
using static AxisSim.Report.Sheets.Rows;

namespace AxisSim.Report.Sheets;

/// <summary>Teeth, reduction and pulses of the drive train.</summary>
internal static class GearRows
{
    /// <summary>The group.</summary>
    public static SheetGroup Of(IReadOnlyList<SheetAxis> axes) => new("Gearing", [.. Teeth(axes), .. Pulses(axes), .. Encoder(axes), .. Play(axes)]);

    private static IEnumerable<SheetRow> Teeth(IReadOnlyList<SheetAxis> axes)
    {
        yield return Row(axes, "Full steps per motor turn", "", axis => Say.Count(axis.Model.Motor.StepsPerRevolution));
        yield return Row(axes, "Microsteps per full step", "", axis => Say.Count(axis.Model.Drive.MicrostepsPerFullStep));
        int stages = axes.Max(axis => axis.Model.Train.Stages.Count);
        for (int i = 0; i < stages; i++)
        {
            int stage = i;
            yield return Row(axes, stages == 1 ? "Stage before the worm" : $"Stage {Say.Count(i + 1)} from the motor", "driven/driving", axis => Stage(axis.Model.Train.Stages, stage));
        }

        yield return Row(axes, "Worm wheel", axes.Any(axis => axis.Model.Train.Worm.Starts > 1) ? "teeth; starts" : "teeth", axis => axis.Model.Train.Worm.Starts > 1
            ? $"{Say.Count(axis.Model.Train.Worm.WheelTeeth)}; {Say.Count(axis.Model.Train.Worm.Starts)}"
            : Say.Count(axis.Model.Train.Worm.WheelTeeth));
        yield return Row(axes, "Total reduction", "exact", axis => axis.Figures.ExactReduction?.ToString() ?? "decimal only");
        yield return Row(axes, "", "decimal", axis => Say.Number(axis.Model.Train.TotalRatio, ReductionDigits));
    }

    private static IEnumerable<SheetRow> Pulses(IReadOnlyList<SheetAxis> axes)
    {
        yield return Row(axes, "Pulses per motor turn", "", axis => Say.Count(axis.Figures.PulsesPerMotorTurn));
        yield return Row(axes, "Pulses per worm turn", "", axis => Say.Number(axis.Figures.PulsesPerWormTurn, ReductionDigits));
        yield return Row(axes, "Pulses per axis turn", "", axis => axis.Figures.ExactPulsesPerAxisTurn?.ToString() ?? Say.Number(axis.Figures.PulsesPerAxisTurn, ReductionDigits));
        yield return Row(axes, "Pulses per degree", "", axis => Say.Number(axis.Figures.Pulses(Math.PI / 180.0), ReductionDigits));
        yield return Row(axes, "Pulses per arcsec", "", axis => Say.Number(axis.Figures.Pulses(Math.PI / 648000.0), ReductionDigits));
        yield return Row(axes, "Full step at the axis", "arcsec", axis => Entered(Units.Arcseconds(axis.Facts.FullStepRadians)));
        yield return Row(axes, "Microstep at the axis", "arcsec", axis => Entered(Units.Arcseconds(axis.Facts.MicrostepRadians)));
    }

    private static IEnumerable<SheetRow> Encoder(IReadOnlyList<SheetAxis> axes)
    {
        if (axes.All(axis => axis.Model.EncoderCounts <= 0.0))
        {
            yield break;
        }

        SheetRow With(string name, string unit, Func<SheetAxis, double> value) => Row(axes, name, unit, axis => axis.Model.EncoderCounts > 0.0 ? Entered(value(axis)) : "none");
        yield return With("Encoder, counts per axis turn", "", axis => axis.Model.EncoderCounts);
        yield return With("Encoder, one count", "arcsec", axis => Units.Arcseconds(axis.Facts.EncoderCountRadians));
        yield return With("Encoder, pulses per count", "", axis => axis.Figures.PulsesPerEncoderCount);
    }

    private static IEnumerable<SheetRow> Play(IReadOnlyList<SheetAxis> axes)
    {
        yield return Row(axes, "Backlash at the axis", "arcsec; pulses", axis => $"{Say.Number(Units.Arcseconds(axis.Figures.BacklashRadians))}; {Say.Number(axis.Figures.BacklashPulses)}");
        yield return Row(axes, "Worm period, sidereal", "s", axis => Entered(axis.Facts.WormPeriodSeconds));
    }

    private static string Stage(IReadOnlyList<GearStage> stages, int i) => i >= stages.Count ? "none"
        : stages[i].DrivingTeeth == 1.0 ? Say.Number(stages[i].DrivenTeeth, ReductionDigits)
        : $"{Say.Number(stages[i].DrivenTeeth, ReductionDigits)}/{Say.Number(stages[i].DrivingTeeth, ReductionDigits)}";
}
