using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Lanes;

/// <summary>The other axis' motion and the wind at the ends of a block.</summary>
internal sealed class LaneSkies(MountSetup setup, MountAxis axis, MovePlan plan)
{
    private readonly MotorPlan _other = plan.At(axis == MountAxis.Polar ? MountAxis.Declination : MountAxis.Polar);
    private readonly WindTorque _wind = new(setup.Disturbances);

    /// <summary>Whether nothing changes from a time on.</summary>
    public bool IsSteady(double seconds) => _other.RestsFrom(seconds) && _wind.IsSteady;

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveOptimization)]
    public LaneSky Between(double fromSeconds, double toSeconds)
    {
        LaneSky sky = default;
        LaneMath.SinCos(_other.Position(fromSeconds), out sky.FromSin, out sky.FromCos);
        LaneMath.SinCos(_other.Position(toSeconds), out sky.ToSin, out sky.ToCos);
        double from = _other.Velocity(fromSeconds);
        double to = _other.Velocity(toSeconds);
        (sky.FromRateSquare, sky.ToRateSquare) = (from * from, to * to);
        (sky.FromWind, sky.ToWind) = (_wind.At(fromSeconds), _wind.At(toSeconds));
        return sky;
    }
}
