namespace AxisSim.Report.Pages;

/// <summary>What the prediction does not know of: docs/model.md, sections 10 and 11, in short.</summary>
internal static class LimitText
{
    /// <summary>The section.</summary>
    public static Section Section { get; } = new(
        "Limits of this prediction",
        [
            new ListItem(false, "It is no better than its figures. Friction from datasheets is good to about 30 %; measure yours: the current at which the axis just moves."),
            new ListItem(false, "Torque is linear in current. That holds up to about the rated current; beyond it a real motor gives less."),
            new ListItem(false, "Tube, pier and axes do not bend, but for one swing of the payload when the scenario gives it. Then settling reads too short."),
            new ListItem(false, "Each axis has a supply to itself, and drives lose nothing: a shared or weak supply sags more, and draws more."),
            new ListItem(false, "Winding and body of the motor warm as one. In the first minute the winding leads by some kelvins."),
            new ListItem(false, "No encoder closes a loop, and no guiding corrects: a controller that does either may do better or worse."),
            new ListItem(false, "Hard stops, cables, misalignment and wear are not there."),
        ]);
}
