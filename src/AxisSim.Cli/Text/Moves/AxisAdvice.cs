using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Moves;

/// <summary>What is told to try on one axis; every settings line in it was run as it stands and keeps its promise.</summary>
internal sealed record AxisAdvice
{
    /// <summary>The axis.</summary>
    public required MountAxis Axis { get; init; }

    /// <summary>Changes that cure a failure with 10 % to spare, each by itself, the smallest first.</summary>
    public IReadOnlyList<CureAdvice> Cures { get; init; } = [];

    /// <summary>Pairs of changes that do, where no single one does.</summary>
    public IReadOnlyList<CureAdvice> Pairs { get; init; } = [];

    /// <summary>Changes that lift a thin load factor to the usual one.</summary>
    public IReadOnlyList<CureAdvice> Lifts { get; init; } = [];

    /// <summary>Changes that let an axis settle.</summary>
    public IReadOnlyList<CureAdvice> Settles { get; init; } = [];

    /// <summary>A longer watch, with which an axis that came to rest only at the end of it settles as well.</summary>
    public IReadOnlyList<CureAdvice> Watches { get; init; } = [];

    /// <summary>Less current or more speed that a motor with far too much torque bears, with the usual load factor.</summary>
    public IReadOnlyList<CureAdvice> Savings { get; init; } = [];
}
