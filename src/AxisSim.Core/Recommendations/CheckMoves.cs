using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>Chooses the moves that stand for all of the usable sky.</summary>
/// <remarks>
/// Usable is every pose whose telescope points above the horizon with the counterweight down (polar angle from -180 to 0 degrees), on either side of the pier.
/// On a grid of 5 degrees, for each side and each direction: the move that starts where gravity (with the inertia times the scenario's acceleration) opposes it
/// most, and the one that ends where gravity helps it most; each as long as the sky allows, up to 90 degrees, the other axis at rest. The move of the
/// scenario is added as it is. Two axes moving at once are looked at in that one only.
/// </remarks>
public static class CheckMoves
{
    /// <summary>Greatest length, rad.</summary>
    public const double LongestRadians = 90.0 * Degree;

    private const double Degree = Math.PI / 180.0;
    private const int GridDegrees = 5;

    // A place with less room than this in the direction of the move is passed over where there is a better one.
    private const double RoomRadians = 30.0 * Degree;

    /// <summary>The moves of an axis; the scenario's own first, if the axis turns in it.</summary>
    public static IReadOnlyList<CheckMove> Of(MountSetup setup, MountAxis axis, double latitudeRadians)
    {
        ArgumentNullException.ThrowIfNull(setup);
        var moves = new List<CheckMove>();
        var own = new CheckMove(CheckMoveKind.Own, axis, SkyPose.ToSky(setup.Move.Start, latitudeRadians).Side, setup.Move.Start, setup.Move.End);
        if (own.TurnRadians != 0.0)
        {
            moves.Add(own);
        }

        double acceleration = setup.Axis(axis).Motion.PeakAcceleration;
        foreach (PierSide side in new[] { PierSide.West, PierSide.East })
        {
            Stretch[] stretches = [.. Stretches(side, axis, latitudeRadians)];
            foreach (int direction in new[] { 1, -1 })
            {
                Add(moves, Hardest(setup, axis, side, stretches, direction, acceleration, CheckMoveKind.OpposedAtStart));
                Add(moves, Hardest(setup, axis, side, stretches, direction, acceleration, CheckMoveKind.HelpedAtEnd));
            }
        }

        return moves;
    }

    private static void Add(List<CheckMove> moves, CheckMove? move)
    {
        if (move is not null && !moves.Any(one => one.Start == move.Start && one.End == move.End))
        {
            moves.Add(move);
        }
    }

    private static CheckMove? Hardest(MountSetup setup, MountAxis axis, PierSide side, Stretch[] stretches, int direction, double acceleration, CheckMoveKind kind)
    {
        bool opposed = kind == CheckMoveKind.OpposedAtStart;
        CheckMove? best = null;
        (bool Room, double Hard) most = (false, double.NegativeInfinity);
        foreach (Stretch stretch in stretches)
        {
            for (double at = stretch.From; at <= stretch.To + 1e-9; at += GridDegrees * Degree)
            {
                // An opposed move goes on from here, a helped one has come from behind.
                double room = (direction > 0) == opposed ? stretch.To - at : at - stretch.From;
                MountPose pose = Pose(axis, at, stretch.Other);
                double help = direction * setup.Load.GravityTorque(axis, pose);
                double hard = (opposed ? -help : help) + (setup.Load.Inertia(axis, pose.DeclinationRadians) * acceleration);
                (bool, double) rank = (room >= RoomRadians - 1e-9, hard);
                if (room > 1e-9 && rank.CompareTo(most) > 0)
                {
                    most = rank;
                    MountPose far = Pose(axis, at + ((opposed ? direction : -direction) * Math.Min(room, LongestRadians)), stretch.Other);
                    best = new CheckMove(kind, axis, side, opposed ? pose : far, opposed ? far : pose);
                }
            }
        }

        return best;
    }

    private static MountPose Pose(MountAxis axis, double own, double other) => axis == MountAxis.Polar ? new(own, other) : new(other, own);

    /// <summary>For each place of the other axis the stretch of this one that points at the sky.</summary>
    private static IEnumerable<Stretch> Stretches(PierSide side, MountAxis axis, double latitude)
    {
        int[] polar = [.. Grid(-180, 0)], declination = side == PierSide.West ? [.. Grid(-90, 90)] : [.. Grid(90, 270)];
        (int[] others, int[] owns) = axis == MountAxis.Polar ? (declination, polar) : (polar, declination);
        foreach (int other in others)
        {
            double[] up = [.. owns.Select(own => own * Degree).Where(own => SkyPose.SineOfAltitude(Pose(axis, own, other * Degree), latitude) > 1e-9)];
            if (up.Length > 1)
            {
                yield return new Stretch(up[0], up[^1], other * Degree);
            }
        }
    }

    private static IEnumerable<int> Grid(int from, int to) => Enumerable.Range(0, ((to - from) / GridDegrees) + 1).Select(i => from + (i * GridDegrees));

    private readonly record struct Stretch(double From, double To, double Other);
}
