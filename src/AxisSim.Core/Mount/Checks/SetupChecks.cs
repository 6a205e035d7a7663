using AxisSim.Core.Bounds;
using AxisSim.Core.Motors;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Whether a mount can be simulated as it is given: the same rules that a scenario file is held to.</summary>
/// <remarks>The bounds of single figures stand beside their records (<see cref="MotorBounds"/>, <see cref="Drives.DriveBounds"/>, <see cref="Gearing.TrainBounds"/>,
/// <see cref="AxisBounds"/>, <see cref="MoveBounds"/>, <see cref="DisturbanceBounds"/>); here they are applied, with what several figures must keep together.</remarks>
public static class SetupChecks
{
    /// <summary>All problems of a setup; empty when there are none.</summary>
    public static IReadOnlyList<SetupProblem> Problems(MountSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        var found = new ProblemCollector();
        if (setup.Polar is null && setup.Declination is null)
        {
            found.At("");
            found.Add("Polar", "null, and no Declination either", "at least one axis");
        }

        found.At("");
        bool load = found.Has(setup.Load), move = found.Has(setup.Move), outside = found.Has(setup.Disturbances);
        double cold = outside ? setup.Disturbances.ColdGreaseFactor : 1.0;
        Axis(found, nameof(MountSetup.Polar), setup.Polar, cold);
        Axis(found, nameof(MountSetup.Declination), setup.Declination, cold);
        if (move)
        {
            MoveChecks.Check(found, setup.Move);
            MoveChecks.Length(found, nameof(MountSetup.Polar), setup.Polar?.Motion, setup.Move.Distance(MountAxis.Polar));
            MoveChecks.Length(found, nameof(MountSetup.Declination), setup.Declination?.Motion, setup.Move.Distance(MountAxis.Declination));
        }

        if (load)
        {
            LoadChecks.Check(found, setup, move ? setup.Move : null);
        }

        if (outside)
        {
            DisturbanceChecks.Check(found, setup.Disturbances);
        }

        return found.Problems;
    }

    /// <summary>All problems of a motor as it is wired; empty when there are none.</summary>
    public static IReadOnlyList<SetupProblem> Problems(StepperMotor motor)
    {
        ArgumentNullException.ThrowIfNull(motor);
        var found = new ProblemCollector();
        MotorChecks.Check(found, "", motor);
        return found.Problems;
    }

    /// <summary>All problems of what a study is asked: of the setup, and of an axis that it does not have.</summary>
    internal static IReadOnlyList<SetupProblem> Problems(MountSetup setup, params IReadOnlyList<MountAxis> axes)
    {
        IReadOnlyList<SetupProblem> found = Problems(setup);
        foreach (MountAxis axis in axes)
        {
            if ((axis == MountAxis.Polar ? setup.Polar : setup.Declination) is null)
            {
                found = [.. found, new SetupProblem(axis.ToString(), "null", "a model of the axis that is to be simulated")];
            }
        }

        return found;
    }

    private static void Axis(ProblemCollector found, string name, AxisModel? model, double cold)
    {
        if (model is null)
        {
            return;
        }

        found.At(name);
        bool motor = found.Has(model.Motor), drive = found.Has(model.Drive), train = found.Has(model.Train), motion = found.Has(model.Motion);
        if (found.Has(model.Bearings))
        {
            AxisChecks.Bearings(found, name, model.Bearings);
        }

        if (motor)
        {
            MotorChecks.Check(found, name, model.Motor);
        }

        if (drive)
        {
            DriveChecks.Check(found, name, model.Drive);
        }

        if (train)
        {
            TrainChecks.Check(found, name, model.Train, cold);
        }

        if (motion)
        {
            AxisChecks.Motion(found, name, model.Motion);
        }

        if (motor && drive && train && motion)
        {
            DriveChecks.Together(found, name, model);
        }

        AxisChecks.Rest(found, name, model);
    }
}
