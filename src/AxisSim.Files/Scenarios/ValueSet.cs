using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>
/// The understood values of a document, with the defaults of the keys. A value that was refused or is missing reads as NaN, so that
/// a check across keys stays silent about what has been reported already.
/// </summary>
internal sealed class ValueSet(ScenarioDocument document)
{
    private readonly Dictionary<string, Value> values = new(StringComparer.Ordinal);

    // Parsed once: which keys are written does not change once the values are read.
    private readonly Dictionary<string, Value> defaults = new(StringComparer.Ordinal);

    /// <summary>The document.</summary>
    public ScenarioDocument Document => document;

    /// <summary>Problems of the document.</summary>
    public ProblemList Problems => document.Problems;

    /// <summary>Reads every value of the document and reports those that will not do.</summary>
    public void ReadAll()
    {
        foreach (Entry entry in document.Entries.Values)
        {
            if (ScenarioKeys.Find(entry.Path) is not { } key)
            {
                continue;
            }

            if (ValueReader.Read(key, entry.Kind, entry.Text, out Refusal refusal) is { } value)
            {
                values[entry.Path] = value;
            }
            else if (!entry.Copied)
            {
                Problems.Error(entry, $"{entry.Shown} ({refusal.Reason})", key.Allowed, refusal.Fix is null ? "for example " + Fix(entry, key, key.Example) : Fix(entry, key, refusal.Fix));
            }
        }
    }

    /// <summary>Puts another value at a path that is written already.</summary>
    public void Replace(Entry entry, Value value)
    {
        document.Entries[entry.Path] = entry;
        values[entry.Path] = value;
    }

    /// <summary>Whether the key was written, well or badly.</summary>
    public bool Written(string path) => document.Entries.ContainsKey(path);

    /// <summary>The value as written; null when it was not, or was refused.</summary>
    public Value? Given(string path) => values.TryGetValue(path, out Value value) ? value : null;

    /// <summary>The value as written or by default.</summary>
    public Value this[string path]
    {
        get
        {
            if (values.TryGetValue(path, out Value value))
            {
                return value;
            }

            if (!defaults.TryGetValue(path, out Value otherwise))
            {
                ScenarioKey? key = Written(path) ? null : ScenarioKeys.Find(path);
                otherwise = key?.Default is { } preset ? ReadDefault(key, preset) : new Value(double.NaN);
                defaults.Add(path, otherwise);
            }

            return otherwise;
        }
    }

    /// <summary>SI value or plain number.</summary>
    public double Number(string path) => this[path].Number;

    /// <summary>SI value or plain number; null when left out.</summary>
    public double? Maybe(string path) => Given(path)?.Number;

    /// <summary>Text or word.</summary>
    public string Text(string path) => this[path].Text;

    /// <summary>The entry of a path that was written.</summary>
    public Entry EntryOf(string path) => document.Entries[path];

    /// <summary>How a value is best corrected, in the form of its source.</summary>
    public static string Fix(Entry entry, ScenarioKey key, string value) =>
        entry.File == SettingsReader.Source ? $"--set {entry.Path}={value}" : $"{key.Name} = {value}";

    // Defaults are written in the table of keys just as in a file.
    private static Value ReadDefault(ScenarioKey key, string preset)
    {
        EntryKind kind = key.Kind is KeyKind.Quantity or KeyKind.Text or KeyKind.Choice ? EntryKind.Text : EntryKind.Setting;
        return ValueReader.Read(key, kind, preset, out Refusal refusal) ?? throw new InvalidOperationException($"the default of {key.Path} does not read: {refusal.Reason}");
    }
}
