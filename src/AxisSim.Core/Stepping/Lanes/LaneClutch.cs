using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>The clutch passes its slip torque; the twist beyond what that torque holds flows into the slip.</summary>
internal static class LaneClutch
{
    /// <summary>Lets the clutch slip in the lanes where the mesh asks for more than it passes, and returns what it passes, N m.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static V Slip(ref LaneState s, ref LaneParameters p, V twist, V twistRate, V mesh)
    {
        V zero = Op.Create(0.0);
        V limited = Op.CopySign(p.Clutch, mesh);
        V spring = p.MeshStiffness * (twist - Op.MaxNative(-p.HalfBacklash, Op.MinNative(p.HalfBacklash, twist)));
        V elastic = Op.ConditionalSelect(Op.GreaterThan(p.MeshDamping, zero), (limited - spring) / p.MeshDamping, zero);
        V slip = Op.MaxNative(zero, Op.CopySign(Op.Create(1.0), limited) * (twistRate - elastic));
        V beyond = Op.MaxNative(zero, (Op.Abs(spring) - p.Clutch) / p.MeshStiffness);
        V change = Op.CopySign(Op.MaxNative(slip, beyond), limited);
        var slips = Op.GreaterThan(Op.Abs(mesh), p.Clutch);
        change = Op.ConditionalSelect(slips, change, zero);
        s.Slip += change;
        s.Lead -= change;
        return Op.ConditionalSelect(slips, limited, mesh);
    }
}
