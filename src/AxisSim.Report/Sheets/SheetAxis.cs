using AxisSim.Core.Controllers;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Report.Sheets;

/// <summary>One axis as the sheet needs it.</summary>
/// <param name="Model">The axis.</param>
/// <param name="Result">What came of its move.</param>
/// <param name="Slews">Its move at a quarter, half and all of the slew rate.</param>
internal sealed record SheetAxis(AxisModel Model, AxisResult Result, IReadOnlyList<SlewStage> Slews)
{
    /// <summary>What follows from its settings.</summary>
    public DerivedFacts Facts => Result.Outcome.Facts;

    /// <summary>What controllers ask for.</summary>
    public ControllerFigures Figures { get; } = new(Model);
}
