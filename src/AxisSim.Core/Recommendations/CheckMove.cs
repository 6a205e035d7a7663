using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>Why a move is among those that settings must survive.</summary>
public enum CheckMoveKind
{
    /// <summary>The move of the scenario, with both axes.</summary>
    Own,

    /// <summary>It starts where gravity opposes it most.</summary>
    OpposedAtStart,

    /// <summary>It brakes where gravity helps it most: the load overhauls. An abort from full speed is this braking, wherever it comes.</summary>
    HelpedAtEnd,
}

/// <summary>A move that settings must survive.</summary>
/// <param name="Kind">Why it is there.</param>
/// <param name="Axis">The axis that it is about.</param>
/// <param name="Side">Side of the pier on which the telescope is.</param>
/// <param name="Start">Pose at the start.</param>
/// <param name="End">Pose at the end; but for the scenario's own move the other axis rests.</param>
public sealed record CheckMove(CheckMoveKind Kind, MountAxis Axis, PierSide Side, MountPose Start, MountPose End)
{
    /// <summary>The angle that the axis turns, rad, with its sign.</summary>
    public double TurnRadians => Axis == MountAxis.Polar ? End.PolarRadians - Start.PolarRadians : End.DeclinationRadians - Start.DeclinationRadians;

    /// <summary>The setup with this move.</summary>
    public MountSetup Apply(MountSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return setup with { Move = setup.Move with { Start = Start, End = End } };
    }

    /// <summary>The same with the other axis at rest where it ends.</summary>
    public CheckMove Alone() => this with
    {
        Start = Axis == MountAxis.Polar ? Start with { DeclinationRadians = End.DeclinationRadians } : Start with { PolarRadians = End.PolarRadians },
    };

    /// <summary>The part of it that matters, of at most this length (rad): the beginning, or the end where that is what counts; the other axis at rest.</summary>
    public CheckMove Shortened(double most)
    {
        double turn = TurnRadians;
        if (Math.Abs(turn) <= most)
        {
            return this;
        }

        double part = Math.CopySign(most, turn);
        CheckMove alone = Alone();
        return Kind == CheckMoveKind.HelpedAtEnd ? alone with { Start = Turned(End, -part) } : alone with { End = alone.Turned(alone.Start, part) };
    }

    private MountPose Turned(MountPose pose, double radians) => Axis == MountAxis.Polar
        ? pose with { PolarRadians = pose.PolarRadians + radians }
        : pose with { DeclinationRadians = pose.DeclinationRadians + radians };
}
