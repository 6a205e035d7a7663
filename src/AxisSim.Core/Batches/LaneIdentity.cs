using System.Runtime.InteropServices;

namespace AxisSim.Core.Batches;

/// <summary>Numbers that steps follow from: those of a team, or all of a lane; equal bit for bit or not at all.</summary>
internal sealed class LaneIdentity : IEquatable<LaneIdentity>
{
    private readonly long[] _bits;
    private readonly int _hash;

    public LaneIdentity(long[] bits)
    {
        _bits = bits;
        var hash = default(HashCode);
        hash.AddBytes(MemoryMarshal.AsBytes(bits.AsSpan()));
        _hash = hash.ToHashCode();
    }

    public ReadOnlySpan<long> Bits => _bits;

    public bool Equals(LaneIdentity? other) => other is not null && _hash == other._hash && _bits.AsSpan().SequenceEqual(other._bits);

    public override bool Equals(object? obj) => Equals(obj as LaneIdentity);

    public override int GetHashCode() => _hash;
}
