using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AxisSim.Files.Keys;
using AxisSim.Files.Units;
using AxisSim.Tests.Unit.Files.Scenarios;
using Xunit.Abstractions;

namespace AxisSim.Tests.Unit.Files.Units;

/// <summary>A scenario written in other units is the same scenario.</summary>
public sealed partial class UnitInvarianceTests(ITestOutputHelper output)
{
    // A conversion there and back rounds a handful of times, and sums of bodies amplify that by about ten.
    private const double Relative = 1e-12;
    private const int Rewritings = 40;
    private const int Seed = 4711;

    public static TheoryData<string> Names => ShippedScenarioTests.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Other_units_give_the_same_si_values(string name)
    {
        string text = File.ReadAllText(Repository.PathOf("scenarios", name));
        JsonElement original = Json(text);
        int changed = 0;
        output.WriteLine($"seed {Seed}");
        for (int i = 0; i < Rewritings; i++)
        {
            var random = new Random(Seed + i);
            string rewritten = Rewrite(text, random, ref changed);
            Compare(original, Json(rewritten), "", Scale(original));
        }

        Assert.True(changed > 20 * Rewritings, $"only {changed} values were rewritten");
    }

    private static JsonElement Json(string text) => JsonDocument.Parse(SettingTests.Read(text, [])).RootElement;

    // Every "number unit" of a quantity gets another unit of its dimension, with 17 digits.
    private static string Rewrite(string text, Random random, ref int changed)
    {
        int count = 0;
        string section = "";
        var lines = new List<string>();
        foreach (string line in text.Split('\n'))
        {
            Match header = Header().Match(line);
            if (header.Success)
            {
                bool list = line.StartsWith("[[", StringComparison.Ordinal);
                section = header.Groups[1].Value + (list ? ".x" : "");
            }

            Match pair = Pair().Match(line);
            ScenarioKey? key = pair.Success ? ScenarioKeys.Find(section.Length == 0 ? pair.Groups[1].Value : $"{section}.{pair.Groups[1].Value}") : null;
            string? other = key is { Kind: KeyKind.Quantity } && key.AlsoAllowed is null ? Other(pair.Groups[2].Value, key.Dimension, random) : null;
            count += other is null ? 0 : 1;
            lines.Add(other is null ? line : $"{pair.Groups[1].Value} = \"{other}\"");
        }

        changed += count;
        return string.Join('\n', lines);
    }

    private static string? Other(string value, Dimension dimension, Random random)
    {
        string plain = value.Trim('"');
        QuantityReading reading = QuantityText.Read(plain, dimension);
        if (reading.Failure is not null || reading.Rms)
        {
            return null;
        }

        UnitDefinition[] units = [.. UnitTable.Of(dimension).Where(unit => unit.Place == reading.Place && unit.Offset == 0.0)];
        UnitDefinition unit = units[random.Next(units.Length)];
        return unit.FromSi(reading.Si).ToString("R", CultureInfo.InvariantCulture) + " " + unit.Spelling;
    }

    // Moments that nearly cancel are compared with the greatest of their kind, so the scale is the array's.
    private static double Scale(JsonElement element) =>
        element.ValueKind == JsonValueKind.Array ? element.EnumerateArray().Where(item => item.ValueKind == JsonValueKind.Number).Select(item => Math.Abs(item.GetDouble())).DefaultIfEmpty(0.0).Max() : 0.0;

    private static void Compare(JsonElement first, JsonElement second, string path, double scale)
    {
        Assert.Equal(first.ValueKind, second.ValueKind);
        switch (first.ValueKind)
        {
            case JsonValueKind.Object:
                foreach ((JsonProperty a, JsonProperty b) in first.EnumerateObject().Zip(second.EnumerateObject()))
                {
                    Compare(a.Value, b.Value, $"{path}.{a.Name}", Scale(a.Value));
                }

                break;
            case JsonValueKind.Array:
                foreach ((JsonElement a, JsonElement b) in first.EnumerateArray().Zip(second.EnumerateArray()))
                {
                    Compare(a, b, path, scale);
                }

                break;
            case JsonValueKind.Number:
                double x = first.GetDouble(), y = second.GetDouble(), size = Math.Max(Math.Max(Math.Abs(x), Math.Abs(y)), scale);
                Assert.True(Math.Abs(x - y) <= Relative * size, $"{path}: {x:R} became {y:R}");
                break;
            default:
                Assert.Equal(first.ToString(), second.ToString());
                break;
        }
    }

    [GeneratedRegex(@"^\[+([a-z._]+)\]+")]
    private static partial Regex Header();

    [GeneratedRegex("""^([a-z_]+) = ("[^"]*"|[0-9.e-]+)""")]
    private static partial Regex Pair();
}
