using System.Runtime.CompilerServices;

namespace AxisSim.Core.Gearing;

/// <summary>Loss of a gear mesh: separate efficiencies for driving and for being driven back, with a stuck state between.</summary>
/// <remarks>
/// <para>Law (the form of Pelchen, Schweiger, Otter: Modeling and Simulating the Efficiency of Gearboxes and of Planetary Gearboxes, 2nd International
/// Modelica Conference 2002): to pass the load t (N m, referred to the input) against it takes the input <c>t/eta_d</c>; with it, the input must
/// hold <c>t eta_b</c>; at rest anything between holds. So the loss acts at the input shaft like dry friction whose level depends on the load
/// and on the direction: <c>|t| (1/eta_d - 1)</c> when the motion goes against the load, <c>|t| (1 - eta_b)</c> when it goes with it.
/// With eta_b of zero or less the mesh locks itself.</para>
/// </remarks>
/// <param name="Driving">1/eta_d - 1.</param>
/// <param name="BackDriving">1 - eta_b.</param>
internal readonly record struct MeshLoss(double Driving, double BackDriving)
{
    public static MeshLoss None => default;

    public static MeshLoss FromEfficiencies(double driving, double backDriving) => new((1.0 / driving) - 1.0, 1.0 - backDriving);

    /// <summary>The same with its friction times a factor (cold grease).</summary>
    public MeshLoss Times(double factor) => new(Driving * factor, BackDriving * factor);

    /// <summary>Friction that resists motion to the positive side under a load (positive when it resists that motion too).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double ResistingPositive(double load) => Math.Abs(load) * (load > 0.0 ? Driving : BackDriving);

    /// <summary>Friction that resists motion to the negative side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double ResistingNegative(double load) => Math.Abs(load) * (load > 0.0 ? BackDriving : Driving);

    /// <summary>Input torque that a load asks for in a direction of motion (+1 or -1).</summary>
    public double InputTorque(double load, double direction) =>
        load + (direction > 0.0 ? ResistingPositive(load) : -ResistingNegative(load));
}
