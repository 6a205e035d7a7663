using AxisSim.Core.Recommendations;

namespace AxisSim.Files.Scenarios;

/// <summary>The tolerances from values.</summary>
internal static class ToleranceBinding
{
    /// <summary>As written or by default.</summary>
    public static Tolerances Bind(ValueSet values)
    {
        double Share(string name) => values.Number("tolerances." + name);
        return new Tolerances
        {
            ImbalanceShare = Share("imbalance"),
            FrictionShare = Share("friction"),
            ColdShare = Share("cold"),
            SupplyShare = Share("supply"),
            MotorTorqueShare = Share("motor_torque"),
            InertiaShare = Share("inertia"),
            DampingShare = Share("damping"),
            Distribution = values.Text("tolerances.distribution") == "normal" ? ToleranceDistribution.Normal : ToleranceDistribution.Uniform,
        };
    }
}
