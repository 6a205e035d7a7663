using AxisSim.Core.Mount;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Text.Reductions;

/// <summary>The lesson on the reduction of one axis.</summary>
internal sealed record ReductionReport
{
    public required MountAxis Axis { get; init; }

    /// <summary>Scenario as the user gave it, and the settings over it; for commands to copy.</summary>
    public required string File { get; init; }

    public LaidOver Laid { get; init; } = LaidOver.Nothing;

    /// <summary>Key of the ratio of the stage that is changed; null when the scenario has no stage before the worm.</summary>
    public required string? StageKey { get; init; }

    public required double SlewRateRadiansPerSecond { get; init; }

    public required double AccelerationRadiansPerSecondSquared { get; init; }

    public required double RampSeconds { get; init; }

    /// <summary>The band within which the axis counts as settled, rad.</summary>
    public required double ToleranceRadians { get; init; }

    public required double MaximumPulseRateHertz { get; init; }

    public required double SupplyVolts { get; init; }

    public required int Microsteps { get; init; }

    /// <summary>Whether the drive full-steps at the slew rate.</summary>
    public required bool FullSteps { get; init; }

    /// <summary>Voltage at which the drive stops braking, V; infinite for none.</summary>
    public double BrakeLimitVolts { get; init; } = double.PositiveInfinity;

    public required ReductionResult Result { get; init; }

    /// <summary>The change that works against what binds, once it has been run as typed; null when there is none or it does not arrive.</summary>
    public TypedLine? AgainstTheBound { get; init; }

    /// <summary>Another reduction that does on paper, once it has been run as typed; null when none is looked for or none arrives.</summary>
    public TypedLine? AnotherReduction { get; init; }

    /// <summary>Ratio of the stage that is changed, at a total reduction.</summary>
    public double StageRatioAt(double totalReduction) => totalReduction / Result.Own.Facts.TotalReduction * Result.Own.Facts.LastStageRatio;

    /// <summary>Puts the report together.</summary>
    public static ReductionReport Of(MountSetup setup, MountAxis axis, string file, LaidOver laid, ReductionResult result)
    {
        AxisModel model = setup.Axis(axis);
        return new ReductionReport
        {
            Axis = axis,
            File = file,
            Laid = laid,
            StageKey = model.Train.Stages.Count > 0 ? $"{axis.Key()}.stages.{model.Train.Stages[^1].Name}.ratio" : null,
            SlewRateRadiansPerSecond = model.Motion.SlewRateRadiansPerSecond,
            AccelerationRadiansPerSecondSquared = model.Motion.PeakAcceleration,
            RampSeconds = model.Motion.RampInUseSeconds,
            ToleranceRadians = setup.Move.SettleToleranceRadians,
            MaximumPulseRateHertz = model.Drive.MaximumPulseRateHertz,
            SupplyVolts = model.Drive.SupplyVolts,
            BrakeLimitVolts = model.Drive.BrakeLimitVolts,
            Microsteps = model.Drive.MicrostepsPerFullStep,
            FullSteps = model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio > model.Drive.ChangeoverRadiansPerSecond,
            Result = result,
        };
    }
}
