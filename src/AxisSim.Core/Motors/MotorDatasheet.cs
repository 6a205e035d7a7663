namespace AxisSim.Core.Motors;

/// <summary>Converts the figures of one half coil per phase to those of the motor as it is wired.</summary>
/// <remarks>
/// <para>A motor with two half coils per phase is often specified with one half coil of each phase in use: resistance R,
/// inductance L, rated current I, holding torque T. Both half coils sit on the same poles, so they are taken as perfectly
/// coupled (mutual inductance = L), and the rated current as limited by heat: the same copper loss I^2 R in each phase.</para>
/// <para>Series: turns double, so R x 2, L x 4 (inductance goes with turns squared), Km x 2; equal loss
/// Is^2 2R = I^2 R gives I / sqrt(2); T = sqrt(2) Km I becomes T x sqrt(2).</para>
/// <para>Parallel: each half carries i/2, so R / 2; flux linkage of a half (L + M) i/2 = L i, so L x 1; ampere turns as before,
/// so Km x 1; equal loss Ip^2 R/2 = I^2 R gives I x sqrt(2); T x sqrt(2).</para>
/// <para>Valid while the iron is not saturated; with both half coils in use at rated current a real motor gains somewhat less
/// than sqrt(2). Source: these relations are textbook (ampere turns and equal copper loss), written from memory.</para>
/// </remarks>
public static class MotorDatasheet
{
    /// <summary>The motor as wired, from figures for one half coil of each phase.</summary>
    public static StepperMotor Wire(StepperMotor halfCoil, MotorWiring wiring)
    {
        ArgumentNullException.ThrowIfNull(halfCoil);
        double root = Math.Sqrt(2.0);
        return wiring switch
        {
            MotorWiring.BipolarSeries => halfCoil with
            {
                ResistanceOhms = halfCoil.ResistanceOhms * 2.0,
                InductanceHenries = halfCoil.InductanceHenries * 4.0,
                RatedCurrentAmperes = halfCoil.RatedCurrentAmperes / root,
                HoldingTorqueNewtonMetres = halfCoil.HoldingTorqueNewtonMetres * root,
            },
            MotorWiring.BipolarParallel => halfCoil with
            {
                ResistanceOhms = halfCoil.ResistanceOhms / 2.0,
                RatedCurrentAmperes = halfCoil.RatedCurrentAmperes * root,
                HoldingTorqueNewtonMetres = halfCoil.HoldingTorqueNewtonMetres * root,
            },
            _ => halfCoil,
        };
    }
}
