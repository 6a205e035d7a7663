using AxisSim.Core.Motors;

namespace AxisSim.Tests.Unit.Core.Motors;

public sealed class PhaseDecayTests
{
    /// <summary>Two parts of a step taken from the whole and the first equal the two computed by themselves, also where the decay underflows (a winding without inductance, nearly).</summary>
    [Theory]
    [InlineData(100e-6, 2e-3)]
    [InlineData(1e-6, 2e-3)]
    [InlineData(100e-6, 1e-9)]
    public void TheRestOfAStepIsThatOfItsOwnExponential(double regulator, double winding)
    {
        const double Step = 50e-6;
        PhaseDecay whole = PhaseDecay.Over(Step, regulator, winding);
        foreach (double split in new[] { 1e-9, 0.1, 0.5, 0.9, 0.99999, 1.0 - 1e-9 })
        {
            double rest = (1.0 - split) * Step;
            PhaseDecay expected = PhaseDecay.Over(rest, regulator, winding);
            PhaseDecay taken = whole.After(PhaseDecay.Over(split * Step, regulator, winding), rest, regulator, winding);
            Assert.Equal(expected.Regulator, taken.Regulator, 1e-13);
            Assert.Equal(expected.RegulatorMean, taken.RegulatorMean, 1e-10); // (1 - end)/x amplifies the last digits of a short part by 1/x
            Assert.Equal(expected.Winding, taken.Winding, 1e-13);
            Assert.Equal(expected.WindingMean, taken.WindingMean, 1e-10);
        }
    }
}
