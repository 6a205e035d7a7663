using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Comparisons;

/// <summary>Puts a candidate into a mount.</summary>
/// <remarks>
/// <para>Currents: the slew current is a share of the candidate's rated current; tracking and holding current keep the shares of the rated current that
/// they have in the mount. Microsteps, pulse rate, delay, damping and the supply's resistance stay. The changeover keeps its rate in full steps per second,
/// for a drive counts steps. A brake limit keeps its ratio to the supply voltage.</para>
/// <para>Reduction: the worm stays, and the last stage before it takes the ratio that is needed (<see cref="SetupEdits.WithReduction(GearTrain, double)"/>).</para>
/// </remarks>
public static class CandidateSetup
{
    /// <summary>The mount with the candidate on each of the axes.</summary>
    public static MountSetup Of(MountSetup setup, IReadOnlyList<MountAxis> axes, Candidate candidate, double currentShare)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(axes);
        ArgumentNullException.ThrowIfNull(candidate);
        return axes.Aggregate(setup, (made, axis) => made.With(axis, Model(made.Axis(axis), candidate, currentShare)));
    }

    private static AxisModel Model(AxisModel model, Candidate candidate, double currentShare) => model with
    {
        Motor = candidate.Motor.Motor,
        Drive = Drive(model.Drive, model.Motor, candidate, currentShare),
        Train = candidate.TotalReduction is { } ratio ? SetupEdits.WithReduction(model.Train, ratio) : model.Train,
    };

    private static ChopperDrive Drive(ChopperDrive drive, StepperMotor before, Candidate candidate, double currentShare)
    {
        StepperMotor motor = candidate.Motor.Motor;
        double open = candidate.SupplyVolts ?? drive.SupplyVolts;
        double volts = Math.Max(0.0, open - candidate.Motor.VoltageLossVolts);
        double rated = motor.RatedCurrentAmperes / before.RatedCurrentAmperes;
        return drive with
        {
            SupplyVolts = volts,
            BrakeLimitVolts = drive.BrakeLimitVolts * open / drive.SupplyVolts,
            SlewCurrentAmperes = currentShare * motor.RatedCurrentAmperes,
            TrackingCurrentAmperes = drive.TrackingCurrentAmperes * rated,
            HoldingCurrentAmperes = drive.HoldingCurrentAmperes * rated,
            ChangeoverRadiansPerSecond = drive.ChangeoverRadiansPerSecond * before.StepsPerRevolution / motor.StepsPerRevolution,
        };
    }
}
