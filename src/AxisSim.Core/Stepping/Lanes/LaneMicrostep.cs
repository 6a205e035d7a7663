using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>The planned angle at one moment of a block as the commands want it.</summary>
internal struct LaneMicrostep
{
    /// <summary>Electrical angle of the plan, rad.</summary>
    public V Angle;

    /// <summary>The same in microsteps, and half of one: its whole part is the microstep that the command takes.</summary>
    public V Cell;

    /// <summary>Row of the table in the low bits.</summary>
    public V Row;

    /// <summary>Rows of the table (<see cref="Drives.MicrostepRow"/>), lane after lane.</summary>
    public V Rows0;
    public V Rows1;
    public V Rows2;
    public V Rows3;
}
