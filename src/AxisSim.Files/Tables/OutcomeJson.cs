using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AxisSim.Files.Tables;

/// <summary>
/// Writes outcomes as JSON: SI units with the unit in each name, as the records of Core have it, in snake_case; enumerations as
/// words; numbers that are not finite as null.
/// </summary>
public static class OutcomeJson
{
    /// <summary>Version of the form of the JSON; it grows when a name changes or goes, not when one is added.</summary>
    public const int SchemaVersion = 1;

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DictionaryKeyPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        // Units and names of people's mounts may hold any letter; the text is a file, not a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new FiniteNumber(), new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    /// <summary>Writes <c>{"schema": 1, "kind": kind, ...}</c> with the parts given, in their order; null parts are written as null.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="kind">What the document is: <c>simulation</c>, <c>balance</c> and so on.</param>
    /// <param name="parts">Named records of Core or of the caller.</param>
    public static void Write(Stream stream, string kind, params (string Name, object? Value)[] parts)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(parts);
        using var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = Options.Encoder });
        writer.WriteStartObject();
        writer.WriteNumber("schema", SchemaVersion);
        writer.WriteString("kind", kind);
        foreach ((string name, object? value) in parts)
        {
            writer.WritePropertyName(JsonNamingPolicy.SnakeCaseLower.ConvertName(name));
            JsonSerializer.Serialize(writer, value, value?.GetType() ?? typeof(object), Options);
        }

        writer.WriteEndObject();
        writer.Flush();
        stream.WriteByte((byte)'\n');
    }

    /// <summary>The same as text.</summary>
    public static string ToText(string kind, params (string Name, object? Value)[] parts)
    {
        using var stream = new MemoryStream();
        Write(stream, kind, parts);
        return System.Text.Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    // JSON has no NaN and no infinity; null says "no number here" in every reader.
    private sealed class FiniteNumber : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.Null ? double.NaN : reader.GetDouble();

        public override bool HandleNull => true;

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value))
            {
                writer.WriteNumberValue(value);
            }
            else
            {
                writer.WriteNullValue();
            }
        }
    }
}
