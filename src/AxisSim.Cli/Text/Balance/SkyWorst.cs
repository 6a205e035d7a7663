using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Balance;

/// <summary>The pose above the horizon in which an axis is most out of balance.</summary>
/// <param name="Pose">Mechanical angles, rad.</param>
/// <param name="NewtonMetres">Size of the torque, N m.</param>
internal readonly record struct SkyWorst(MountPose Pose, double NewtonMetres)
{
    // A torque that changes as a sine of each angle is met within 0.1 % at steps of 2.5 deg (cos 1.25 deg twice).
    private const int Steps = 144;

    /// <summary>Searches a fine grid of poses; among equals the highest in the sky is taken.</summary>
    public static SkyWorst Find(PayloadModel payload, double latitude, MountAxis axis)
    {
        const double Equal = 1e-6;
        MountLoad load = MountLoadBuilder.FromBodies(payload, latitude);
        SkyWorst best = new(default, -1.0);
        double height = 0.0;
        for (int i = 0; i < Steps; i++)
        {
            for (int j = 0; j < Steps; j++)
            {
                MountPose pose = new((2.0 * Math.PI * i / Steps) - Math.PI, (2.0 * Math.PI * j / Steps) - Math.PI);
                double here = SineOfAltitude(pose, latitude), torque = Math.Abs(load.GravityTorque(axis, pose));
                if (here > 0.0 && (torque > best.NewtonMetres + Equal || (torque > best.NewtonMetres - Equal && here > height)))
                {
                    (best, height) = (new(pose, torque), here);
                }
            }
        }

        return best;
    }

    /// <summary>Whether a pose points at the sky and not at the ground.</summary>
    public static bool Up(MountPose pose, double latitude) => SineOfAltitude(pose, latitude) > 0.0;

    // sin a = sin(latitude) sin(dec) + cos(latitude) cos(dec) cos(hour angle), the altitude of spherical astronomy.
    private static double SineOfAltitude(MountPose pose, double latitude)
    {
        SkyPoint sky = SkyPose.ToSky(pose, latitude);
        return (Math.Sin(latitude) * Math.Sin(sky.DeclinationRadians)) + (Math.Cos(latitude) * Math.Cos(sky.DeclinationRadians) * Math.Cos(sky.HourAngleRadians));
    }
}
