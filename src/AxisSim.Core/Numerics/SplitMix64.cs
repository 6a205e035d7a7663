namespace AxisSim.Core.Numerics;

/// <summary>Small pseudo-random generator whose numbers never change with the runtime.</summary>
/// <remarks>SplitMix64 of Steele, Lea and Flood, "Fast splittable pseudorandom number generators" (2014).</remarks>
internal sealed class SplitMix64(ulong seed)
{
    private ulong state = seed;

    /// <summary>Next 64 bits.</summary>
    public ulong Next()
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>Next number from 0 up to, not including, 1; all of its 53 bits are random.</summary>
    public double NextUnit() => (Next() >> 11) * (1.0 / (1UL << 53));
}
