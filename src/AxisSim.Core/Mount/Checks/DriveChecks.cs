using AxisSim.Core.Bounds;
using AxisSim.Core.Drives;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Checks of a drive, alone and with the motor and the motion that it has to make.</summary>
internal static class DriveChecks
{
    // A limit that was computed from the rate itself must hold.
    private const double Rounding = 1e-9;

    public static void Check(ProblemCollector found, string owner, ChopperDrive drive)
    {
        found.At(owner, nameof(AxisModel.Drive));
        found.Check(drive.SupplyVolts, DriveBounds.SupplyVoltage);
        found.Check(drive.SupplyResistanceOhms, DriveBounds.SupplyResistance);
        found.Check(drive.BusCapacitanceFarads, DriveBounds.BusCapacitance);
        found.Check(drive.BrakeLimitVolts, DriveBounds.BrakeLimit);
        found.Check(drive.SlewCurrentAmperes, DriveBounds.MovingCurrent);
        found.Check(drive.TrackingCurrentAmperes, DriveBounds.MovingCurrent);
        found.Check(drive.HoldingCurrentAmperes, DriveBounds.HoldingCurrent);
        found.Check(drive.CurrentFallDelaySeconds, DriveBounds.CurrentFallDelay);
        found.Check(drive.MicrostepsPerFullStep, DriveBounds.Microsteps);
        found.Check(drive.ChangeoverRadiansPerSecond, DriveBounds.Changeover);
        found.Check(drive.FullStepCurrentFraction, DriveBounds.FullStepCurrent);
        found.Check(drive.RegulatorSeconds, DriveBounds.RegulatorTime);
        found.CheckGiven(drive.GivenDampingNewtonMetreSecondsPerRadian, DriveBounds.Damping);
        found.Check(drive.DampingShare, DriveBounds.DampingShare);
        found.Check(drive.MaximumPulseRateHertz, DriveBounds.MaximumPulseRate);
        if (drive.BrakeLimitVolts <= drive.SupplyVolts)
        {
            found.Add(nameof(drive.BrakeLimitVolts), $"{ProblemCollector.Text(drive.BrakeLimitVolts)} (not above the supply voltage)", $"a voltage above {ProblemCollector.Text(drive.SupplyVolts)} V, or infinite for none");
        }
    }

    /// <summary>Currents against the motor's, pulses against the controller's.</summary>
    public static void Together(ProblemCollector found, string owner, AxisModel model)
    {
        ChopperDrive drive = model.Drive;
        found.At(owner, nameof(AxisModel.Drive));
        Current(found, model, drive.SlewCurrentAmperes, nameof(drive.SlewCurrentAmperes));
        Current(found, model, drive.TrackingCurrentAmperes, nameof(drive.TrackingCurrentAmperes));
        Current(found, model, drive.HoldingCurrentAmperes, nameof(drive.HoldingCurrentAmperes));
        double steps = model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio / (2.0 * Math.PI) * model.Motor.StepsPerRevolution;
        double pulses = steps * drive.MicrostepsPerFullStep;
        if (pulses > drive.MaximumPulseRateHertz * (1.0 + Rounding))
        {
            found.Add(
                nameof(drive.MaximumPulseRateHertz),
                $"{ProblemCollector.Text(drive.MaximumPulseRateHertz)} (the slew rate asks for {ProblemCollector.Text(steps)} full steps/s x {ProblemCollector.Text(drive.MicrostepsPerFullStep)} = {ProblemCollector.Text(pulses)} pulses/s)",
                "at least the pulses of the slew rate: fewer microsteps, a lower slew rate, or a faster controller");
        }
    }

    private static void Current(ProblemCollector found, AxisModel model, double amperes, string property)
    {
        double rated = model.Motor.RatedCurrentAmperes;
        if (amperes > DriveBounds.GreatestOverRated * rated * (1.0 + Rounding))
        {
            found.Add(property, $"{ProblemCollector.Text(amperes)} ({ProblemCollector.Text(amperes / rated)} times the rated current)", $"at most {ProblemCollector.Text(DriveBounds.GreatestOverRated)} times the rated current of {ProblemCollector.Text(rated)} A");
        }
    }
}
