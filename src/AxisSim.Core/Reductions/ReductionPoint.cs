using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;

namespace AxisSim.Core.Reductions;

/// <summary>What comes of one reduction: closed forms and simulation side by side.</summary>
public sealed record ReductionPoint
{
    /// <summary>The closed forms.</summary>
    public required ReductionFacts Facts { get; init; }

    /// <summary>Greatest slew rate with the margin asked for, by simulation at the scenario's ramp time, rad/s; NaN when none that was tried arrives.</summary>
    public required double SafeRateRadiansPerSecond { get; init; }

    /// <summary>First rate that fails, rad/s; NaN when none was found.</summary>
    public required double FirstFailingRateRadiansPerSecond { get; init; }

    /// <summary>What stands against a greater rate.</summary>
    public required Limit Bound { get; init; }

    /// <summary>Torques at the motor's shaft at the hardest moment of the first move that fails, N m; null when none fails.</summary>
    public TorqueShares? Shares { get; init; }

    /// <summary>Greatest acceleration with the margin asked for, by simulation, rad/s2; NaN when none that was tried arrives. No ramp is shorter than one swing of the axis on its train.</summary>
    public required double SafeAccelerationRadiansPerSecondSquared { get; init; }

    /// <summary>How the next greater acceleration ends; null when every one that was tried arrives.</summary>
    public MoveEnd? AccelerationFailure { get; init; }

    /// <summary>Slew rate of the moves that tried accelerations, rad/s.</summary>
    public required double AccelerationTriedAtRadiansPerSecond { get; init; }

    /// <summary>Torque at the axis at the scenario's slew rate, from the simulated pull-out torque, N m.</summary>
    public required double TorqueAtSlewNewtonMetres { get; init; }

    /// <summary>Torques at the motor's shaft at the hardest moment of the scenario's own move, N m, by the closed form.</summary>
    public required TorqueShares OwnShares { get; init; }

    /// <summary>How the scenario's own move ends; null when it was not simulated.</summary>
    public MoveEnd? OwnMove { get; init; }

    /// <summary>Least torque margin of the scenario's own move, as a share; NaN when it was not simulated.</summary>
    public double OwnMargin { get; init; } = double.NaN;

    /// <summary>Load factor of the scenario's own move; null when it does not arrive.</summary>
    public LoadFactor? OwnLoadFactor { get; init; }

    /// <summary>Time to settle after the scenario's own slew, s; NaN when it does not.</summary>
    public double OwnSettleSeconds { get; init; } = double.NaN;
}

/// <summary>How the total reduction changes what one axis can do.</summary>
public sealed record ReductionResult
{
    /// <summary>The reductions, ascending.</summary>
    public required IReadOnlyList<ReductionPoint> Points { get; init; }

    /// <summary>The scenario's own reduction among them.</summary>
    public required ReductionPoint Own { get; init; }

    /// <summary>The inertia match.</summary>
    public required ReductionMatch Match { get; init; }

    /// <summary>The closed forms at the reduction of greatest acceleration; null when the motor has no torque.</summary>
    public required ReductionFacts? AtOptimum { get; init; }

    /// <summary>Which reductions do for the scenario's own move, in closed form.</summary>
    public required ReductionWindow Window { get; init; }

    /// <summary>Margin that was asked for: 0.3 stands for a load factor of 1.3.</summary>
    public required double MarginShare { get; init; }

    /// <summary>How many moves were run.</summary>
    public required int MovesRun { get; init; }
}
