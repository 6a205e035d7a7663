using AxisSim.Core;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Assemblies;

/// <summary>Moves of one axis under a steady torque: the wind is given so that it is that torque, and gravity is left out.</summary>
internal static class SteadyMoves
{
    /// <summary>The mount without gravity, under a steady torque that opposes the motion (a negative one helps), on a move that reaches a rate and holds it for a while.</summary>
    /// <param name="mount">The mount.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="opposing">Torque about the axis against the motion, N m.</param>
    /// <param name="motion">Rate and ramp.</param>
    /// <param name="changeover">Changeover, rad/s.</param>
    /// <param name="holdSeconds">Time at the rate, s.</param>
    public static MountSetup Of(MountSetup mount, MountAxis axis, double opposing, AxisMotion motion, double changeover, double holdSeconds)
    {
        AxisModel model = mount.Axis(axis);
        double distance = motion.SlewRateRadiansPerSecond * (motion.RampInUseSeconds + holdSeconds);
        MountPose start = axis == MountAxis.Polar ? mount.Move.Start with { PolarRadians = 0.0 } : mount.Move.Start with { DeclinationRadians = 0.0 };
        MountPose end = axis == MountAxis.Polar ? start with { PolarRadians = distance } : start with { DeclinationRadians = distance };
        AxisModel moved = model with
        {
            Drive = model.Drive with { ChangeoverRadiansPerSecond = changeover },
            Train = model.Train with { ClutchNewtonMetres = double.PositiveInfinity },
            Motion = motion,
        };
        MountSetup setup = mount with
        {
            Load = mount.Load.Scaled(1.0, 0.0),
            Move = mount.Move with { Start = start, End = end, FollowUp = FollowUp.Rest },

            // rho V |V|/2 Cd A r = 2 x 1 / 2 x r.
            Disturbances = mount.Disturbances with
            {
                WindMetresPerSecond = opposing > 0.0 ? -1.0 : 1.0,
                AirDensityKilogramsPerCubicMetre = 2.0,
                DragCoefficient = 1.0,
                AreaSquareMetres = 1.0,
                LeverMetres = Math.Abs(opposing),
                GustMetresPerSecond = 0.0,
                TurbulenceIntensity = 0.0,
                SyncProbe = true,
            },
        };
        return axis == MountAxis.Polar ? setup with { Polar = moved, Declination = null } : setup with { Polar = null, Declination = moved };
    }
}
