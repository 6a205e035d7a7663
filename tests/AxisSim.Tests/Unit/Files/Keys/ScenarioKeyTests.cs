using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Keys;

/// <summary>The table of keys against itself and against the defaults of Core.</summary>
public sealed class ScenarioKeyTests
{
    [Fact]
    public void Paths_differ_and_every_key_says_what_it_is()
    {
        Assert.Equal(ScenarioKeys.All.Count, ScenarioKeys.All.Select(key => key.Path).Distinct(StringComparer.Ordinal).Count());
        Assert.All(ScenarioKeys.All, key =>
        {
            Assert.Matches("^[a-z_.<>]+$", key.Path);
            Assert.EndsWith(".", key.Doc, StringComparison.Ordinal);
            Assert.NotEmpty(key.Allowed);
            Assert.NotEmpty(key.UnitKind);
            // What is not required says what holds without it.
            Assert.True(key.Required == (key.Default is null && key.DefaultInWords is null), key.Path);
        });
    }

    [Fact]
    public void Every_example_and_default_is_a_value_that_the_key_takes()
    {
        foreach (ScenarioKey key in ScenarioKeys.All)
        {
            bool quoted = key.Example.StartsWith('"');
            Assert.True(ValueReader.Read(key, quoted ? EntryKind.Text : key.Kind == KeyKind.Flag ? EntryKind.Flag : EntryKind.Number, key.Example.Trim('"'), out Refusal refusal) is not null, $"{key.Path}: {key.Example} {refusal.Reason}");
            if (key.Default is { Length: > 0 } preset)
            {
                Assert.True(ValueReader.Read(key, EntryKind.Setting, preset, out refusal) is not null, $"{key.Path}: {preset} {refusal.Reason}");
            }
        }
    }

    [Fact]
    public void Defaults_are_those_of_the_records_of_the_model()
    {
        Scenario scenario = ScenarioReader.ReadText(Bare, "bare.toml", []).Scenario!;
        AxisSim.Core.Mount.AxisModel axis = scenario.Setup.Polar!;
        Assert.Equal(new Disturbances(), scenario.Setup.Disturbances);
        ChopperDrive drive = new() { SupplyVolts = 24, SlewCurrentAmperes = 1, TrackingCurrentAmperes = 1, HoldingCurrentAmperes = 1, MicrostepsPerFullStep = 64 };
        Assert.Equal(drive, axis.Drive);
        WormStage worm = new() { WheelTeeth = 144, GivenDrivingEfficiency = 0.45 };
        Assert.Equal(worm, axis.Train.Worm);
        GearTrain train = new() { Worm = worm, StiffnessNewtonMetresPerRadian = 2e4, BacklashRadians = axis.Train.BacklashRadians, Stages = axis.Train.Stages };
        Assert.Equal(train, axis.Train);
        GearStage stage = new() { Name = "belt", DrivenTeeth = 5, DrivingTeeth = 1, Efficiency = 0.97 };
        Assert.Equal(stage, Assert.Single(axis.Train.Stages));
        AxisMotion motion = new() { SlewRateRadiansPerSecond = axis.Motion.SlewRateRadiansPerSecond, Ramp = Ramp.OfSeconds(2) };
        Assert.Equal(motion, axis.Motion);
        FlexiblePayload flexible = new() { FrequencyHertz = 8 };
        Assert.Equal(flexible, axis.Flexible);
        MoveSettings move = new() { Start = scenario.Setup.Move.Start, End = scenario.Setup.Move.End, SettleToleranceRadians = scenario.Setup.Move.SettleToleranceRadians };
        Assert.Equal(move, scenario.Setup.Move);
        Assert.Equal((1500.0, AxisSim.Core.Motors.InsulationClass.B, 0.0, 0.0), (axis.Motor.ThermalTimeConstantSeconds, axis.Motor.Insulation, axis.Motor.ViscousNewtonMetreSecondsPerRadian, axis.Motor.CoulombTorqueNewtonMetres));
        Assert.Equal((0.8, 0.8), (axis.Bearings.CoulombNewtonMetres, axis.Bearings.BreakawayNewtonMetres));
    }

    // Only what is required, so that every default shows.
    private const string Bare = """
        format = 1
        name = "bare"
        site.latitude = "50 deg"
        settling.tolerance = "2 arcsec"
        move = { start_polar = "0 deg", end_polar = "90 deg" }
        [polar]
        motor = { holding_torque = "0.4 N*m", rated_current = "1.5 A", resistance = "1.5 ohm", inductance = "3 mH", rotor_inertia = "60 g*cm^2", detent_torque = "0 N*m", steps_per_revolution = 200 }
        drive = { supply_voltage = "24 V", slew_current = "1 A", tracking_current = "1 A", holding_current = "1 A", microsteps = 64 }
        stages = [{ name = "belt", ratio = 5, efficiency = 0.97 }]
        worm = { teeth = 144, efficiency = 0.45 }
        axis = { stiffness = "2e4 N*m/rad", backlash = "0 arcsec", friction = "0.8 N*m" }
        flexible = { frequency = "8 Hz" }
        motion = { slew_rate = "3 deg/s", ramp_time = "2 s" }
        load = { inertia = "6 kg*m^2", imbalance = "0 N*m" }
        """;
}
