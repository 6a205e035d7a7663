using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core;

namespace AxisSim.Tests.Assemblies;

/// <summary>Moves of one axis under a torque that opposes it: the wind is given so that it is that torque, and gravity is left out.</summary>
internal static class SteadyMoves
{
    private const double GustShare = 0.25;

    /// <summary>Share of its greatest that a torque which comes at the rate has for some seconds or longer.</summary>
    /// <param name="holdSeconds">Time at the rate, s.</param>
    /// <param name="seconds">For how long, s.</param>
    public static double HeldShare(double holdSeconds, double seconds)
    {
        double cosine = Math.Cos(0.5 * Math.PI * seconds / holdSeconds);
        double speed = Math.Sqrt(1.0 - GustShare);
        return Math.Pow(speed + ((1.0 - speed) * cosine * cosine), 2.0);
    }

    /// <summary>The mount without gravity on a move that reaches a rate and holds it for a while.</summary>
    /// <param name="mount">The mount.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="opposing">Torque about the axis against the motion, N m.</param>
    /// <param name="motion">Rate and ramp.</param>
    /// <param name="changeover">Changeover, rad/s.</param>
    /// <param name="holdSeconds">Time at the rate, s.</param>
    /// <param name="atRate">
    /// A quarter of the torque comes once the rate is reached, up and down as a cosine over that time, so that the whole is within a hundredth of its peak for an eighth of it, and no periodic error
    /// shakes the axis; else it is there throughout.
    /// </param>
    /// <param name="waitSeconds">Time at the rate before that, s: what the run-up left swinging dies out.</param>
    public static MountSetup Of(MountSetup mount, MountAxis axis, double opposing, AxisMotion motion, double changeover, double holdSeconds, bool atRate = false, double waitSeconds = 0.0)
    {
        AxisModel model = mount.Axis(axis);
        double distance = motion.SlewRateRadiansPerSecond * (motion.RampInUseSeconds + waitSeconds + holdSeconds);
        MountPose start = axis == MountAxis.Polar ? mount.Move.Start with { PolarRadians = 0.0 } : mount.Move.Start with { DeclinationRadians = 0.0 };
        MountPose end = axis == MountAxis.Polar ? start with { PolarRadians = distance } : start with { DeclinationRadians = distance };
        AxisModel moved = model with
        {
            Drive = model.Drive with { ChangeoverRadiansPerSecond = changeover },
            Train = model.Train with
            {
                ClutchNewtonMetres = double.PositiveInfinity,
                Worm = atRate ? model.Train.Worm with { PeriodicError = PeriodicError.None } : model.Train.Worm,
            },
            Motion = motion,
        };
        MountSetup setup = mount with
        {
            Load = mount.Load.Scaled(1.0, 0.0),
            Move = mount.Move with { Start = start, End = end, FollowUp = FollowUp.Rest },

            // rho V |V|/2 Cd A r = 2 x 1 / 2 x r.
            Disturbances = mount.Disturbances with
            {
                // Its square counts.
                WindMetresPerSecond = -(atRate ? Math.Sqrt(1.0 - GustShare) : 1.0),
                GustMetresPerSecond = atRate ? -(1.0 - Math.Sqrt(1.0 - GustShare)) : 0.0,
                GustStartSeconds = motion.RampInUseSeconds + waitSeconds,
                GustSeconds = holdSeconds,
                AirDensityKilogramsPerCubicMetre = 2.0,
                DragCoefficient = 1.0,
                AreaSquareMetres = 1.0,
                LeverMetres = opposing,
                TurbulenceIntensity = 0.0,
                SyncProbe = true,
            },
        };
        return axis == MountAxis.Polar ? setup with { Polar = moved, Declination = null } : setup with { Polar = null, Declination = moved };
    }
}
