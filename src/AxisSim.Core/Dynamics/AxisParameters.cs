using AxisSim.Core.Gearing;

namespace AxisSim.Core.Dynamics;

/// <summary>Constants of the mechanical step of one axis, SI. An absent part has a zero or infinite value as said.</summary>
internal sealed record AxisParameters
{
    /// <summary>Inertia on the rotor's side (with all that is rigidly geared to it), kg m2; infinite locks the rotor.</summary>
    public required double RotorInertia { get; init; }

    public double RotorViscous { get; init; }

    /// <summary>Damping against the difference of rotor speed and plan, N m s/rad.</summary>
    public double PlanDamping { get; init; }

    public double RotorCoulomb { get; init; }

    /// <summary>Reduction of the elastic stages between rotor and worm shaft; 1 when they are rigid (and lumped at the rotor).</summary>
    public double StageRatio { get; init; } = 1.0;

    /// <summary>Inertia of the worm shaft, kg m2; 0 when the stages are rigid.</summary>
    public double ShaftInertia { get; init; }

    /// <summary>Mesh of the elastic stages, at the worm shaft.</summary>
    public MeshContact StageMesh { get; init; }

    public MeshLoss StageLoss { get; init; }

    /// <summary>Reduction from the worm's node (worm shaft, or rotor when there is none) to the axis.</summary>
    public double WormRatio { get; init; } = 1.0;

    /// <summary>Mesh of worm and axis, at the axis; stiffness 0 disconnects the axis.</summary>
    public MeshContact Mesh { get; init; }

    public MeshLoss Loss { get; init; }

    /// <summary>Slip torque of the clutch, N m; infinite when there is none.</summary>
    public double Clutch { get; init; } = double.PositiveInfinity;

    /// <summary>Inertia of the axis at the start of the run (without the flexible part), kg m2; infinite locks the axis.</summary>
    public double AxisInertia { get; init; } = double.PositiveInfinity;

    public double AxisViscous { get; init; }

    public double AxisCoulomb { get; init; }

    public double AxisBreakaway { get; init; }

    /// <summary>Inertia of the flexible part of the payload, kg m2; 0 when rigid.</summary>
    public double PayloadInertia { get; init; }

    public double PayloadStiffness { get; init; }

    public double PayloadDamping { get; init; }
}
