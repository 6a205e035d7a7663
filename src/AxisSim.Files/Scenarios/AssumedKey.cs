namespace AxisSim.Files.Scenarios;

/// <summary>A key that a scenario leaves out although hardware differs in it, and the range that is usual.</summary>
/// <param name="Path">Dotted path of the key.</param>
/// <param name="Taken">What was taken for it, for people.</param>
/// <param name="Variants">Settings at the ends of the usual range, each as it would be typed; one or two of them.</param>
public sealed record AssumedKey(string Path, string Taken, IReadOnlyList<IReadOnlyList<string>> Variants);
