using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using AxisSim.Core.Stepping.Jobs;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>The phase currents of a drive, A, one for each <see cref="LaneLevel"/>.</summary>
[InlineArray((int)LaneLevel.Unity + 1)]
internal struct LaneLevels
{
    [SuppressMessage("Style", "IDE0044:Add readonly modifier", Justification = "It stands for all elements of the inline array.")]
    private V _first;

    /// <summary>One of them. A step's kind is packed from a <see cref="LaneLevel"/>, so no bound is checked.</summary>
    [UnscopedRef]
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref V Of(LaneLevel level) => ref Unsafe.Add(ref _first, (int)level);
}
