using AxisSim.Core.Dynamics;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Outcomes;

/// <summary>Where things are, on average, in the last part of a run: a tracking axis rides on a ripple, so one instant says little.</summary>
internal sealed class RestMeans
{
    private long _count;
    private double _payload;
    private double _worm;
    private double _periodic;
    private double _twist;
    private double _elastic;
    private double _bend;
    private double _slip;

    /// <summary>Payload less plan, rad.</summary>
    public double Payload => _payload / Count;

    /// <summary>Worm (at the axis) less plan, rad.</summary>
    public double Worm => _worm / Count;

    /// <summary>Periodic error, rad.</summary>
    public double Periodic => _periodic / Count;

    /// <summary>Twist of the mesh, rad.</summary>
    public double Twist => _twist / Count;

    /// <summary>Its elastic part, rad.</summary>
    public double Elastic => _elastic / Count;

    /// <summary>Payload less axis, rad.</summary>
    public double Bend => _bend / Count;

    /// <summary>Clutch slip, rad.</summary>
    public double Slip => _slip / Count;

    private double Count => Math.Max(1, _count);

    public void Add(MoveRun run, double plan)
    {
        AxisState state = run.State;
        double worm = run.WormAxisRadians;
        double twist = run.TwistRadians;
        double payload = run.PayloadRadians;
        _count++;
        _payload += payload - plan;
        _worm += worm - plan;
        _periodic += run.PeriodicErrorRadians;
        _twist += twist;
        _elastic += run.Parameters.Mesh.DeadZone(twist);
        _bend += payload - state.Axis;
        _slip += state.Slip;
    }
}
