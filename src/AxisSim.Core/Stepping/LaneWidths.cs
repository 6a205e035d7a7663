using System.Runtime.Intrinsics;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Stepping;

/// <summary>The engines for the widths of the machine's registers.</summary>
internal static class LaneWidths
{
    /// <summary>Lanes in a vector.</summary>
    public static int Of(BatchWidth width) => width switch
    {
        BatchWidth.One => 1,
        BatchWidth.Two => 2,
        BatchWidth.Four => 4,
        BatchWidth.Eight => 8,
        _ => Vector512.IsHardwareAccelerated ? 8 : Vector256.IsHardwareAccelerated ? 4 : Vector128.IsHardwareAccelerated ? 2 : 1,
    };

    /// <summary>An engine with room for a number of lanes.</summary>
    public static ILaneEngine Engine(BatchWidth width, int lanes)
    {
        int count = Of(width);
        int vectors = ((lanes - 1) / count) + 1;
        return count switch
        {
            8 => new Lanes.Eight.LaneEngine(vectors),
            4 => new Lanes.Four.LaneEngine(vectors),
            2 => new Lanes.Two.LaneEngine(vectors),
            _ => new LaneEngine(vectors),
        };
    }
}
