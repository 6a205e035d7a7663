using System.Runtime.CompilerServices;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Picks the compiled form of the step that has just the parts that are asked for.</summary>
internal static class LaneDispatch
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run(in LaneFeatures features, ref LaneState states, ref LaneParameters parameters, ref LaneCommand commands, ref LaneStepKind kinds, int stride, ref LaneSplitDecays decays, int decaysStride, int vectors, int first, int end)
    {
        if (features.Shaft)
        {
            OnShaft<With>(features, ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
        else
        {
            OnShaft<Without>(features, ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void OnShaft<TShaft>(in LaneFeatures features, ref LaneState states, ref LaneParameters parameters, ref LaneCommand commands, ref LaneStepKind kinds, int stride, ref LaneSplitDecays decays, int decaysStride, int vectors, int first, int end)
        where TShaft : struct, ISwitch
    {
        if (features.Payload)
        {
            OnPayload<TShaft, With>(features, ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
        else
        {
            OnPayload<TShaft, Without>(features, ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void OnPayload<TShaft, TPayload>(in LaneFeatures features, ref LaneState states, ref LaneParameters parameters, ref LaneCommand commands, ref LaneStepKind kinds, int stride, ref LaneSplitDecays decays, int decaysStride, int vectors, int first, int end)
        where TShaft : struct, ISwitch
        where TPayload : struct, ISwitch
    {
        if (features.Power)
        {
            OnPower<TShaft, TPayload, With>(features, ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
        else
        {
            OnPower<TShaft, TPayload, Without>(features, ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void OnPower<TShaft, TPayload, TPower>(in LaneFeatures features, ref LaneState states, ref LaneParameters parameters, ref LaneCommand commands, ref LaneStepKind kinds, int stride, ref LaneSplitDecays decays, int decaysStride, int vectors, int first, int end)
        where TShaft : struct, ISwitch
        where TPayload : struct, ISwitch
        where TPower : struct, ISwitch
    {
        if (features.Pose)
        {
            LaneStep<TShaft, TPayload, TPower, With>.Run(ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
        else
        {
            LaneStep<TShaft, TPayload, TPower, Without>.Run(ref states, ref parameters, ref commands, ref kinds, stride, ref decays, decaysStride, vectors, first, end);
        }
    }
}
