using System.Runtime.InteropServices;

namespace AxisSim.Core.Batches;

/// <summary>All that the steps of a lane follow from; equal bit for bit or not at all.</summary>
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

    public bool Equals(LaneIdentity? other) => other is not null && _hash == other._hash && _bits.AsSpan().SequenceEqual(other._bits);

    public override bool Equals(object? obj) => Equals(obj as LaneIdentity);

    public override int GetHashCode() => _hash;
}
