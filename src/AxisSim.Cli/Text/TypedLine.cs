using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text;

/// <summary>Settings that were read and run as they would be typed: the axes named arrive and settle with them, and no other axis fails that did not fail before.</summary>
/// <param name="Axes">The axes that arrive and settle.</param>
/// <param name="Settings">The settings, each <c>key=value</c>.</param>
internal sealed record TypedLine(IReadOnlyList<MountAxis> Axes, IReadOnlyList<string> Settings)
{
    /// <summary>What was found, in a clause: "the polar axis and the declination axis arrive and settle".</summary>
    public string Promise => $"{Say.List([.. Axes.Select(axis => "the " + axis.Words())])} {(Axes.Count == 1 ? "arrives and settles" : "arrive and settle")}";

    /// <summary>The same where they were run with more load too: "..., and bear a load factor of 1.3".</summary>
    public string PromiseUnder(double loadFactor) => $"{Promise}, and {(Axes.Count == 1 ? "bears" : "bear")} a load factor of {Say.Number(loadFactor)}";
}
