using AxisSim.Core.Controllers;
using AxisSim.Core.Studies;

namespace AxisSim.Report.Sheets;

/// <summary>What is to be typed into a user's own controller, and what the move does with it.</summary>
/// <param name="Controller">The controller's name.</param>
/// <param name="Axes">The numbers, axis by axis as on the sheet.</param>
/// <param name="Results">The move with both axes as typed, axis by axis; empty when that is no mount that can be simulated.</param>
/// <param name="Verdict">What comes of it in a sentence, or why it cannot be simulated.</param>
internal sealed record TypedInput(string Controller, IReadOnlyList<TypedAxis> Axes, IReadOnlyList<AxisResult> Results, string Verdict)
{
    /// <summary>Whether the move arrives and settles on every axis as typed.</summary>
    public bool Arrives => Results.Count > 0 && Results.All(result => result.Outcome.Verdict == Core.Outcomes.MoveEnd.Arrives);
}
