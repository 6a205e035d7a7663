namespace AxisSim.Files.Scenarios;

/// <summary>Reads the repeatable <c>--set key=value</c> of the command line onto a document.</summary>
internal static class SettingsReader
{
    /// <summary>Name that stands for the file in messages about settings.</summary>
    public const string Source = "--set";

    private const string Allowed = "a dotted key, =, and a value";
    /// <summary>A setting as it should look.</summary>
    public const string Example = "--set polar.drive.slew_current=\"1.2 A\"";

    /// <summary>The settings as values, in order; malformed ones are reported.</summary>
    public static IReadOnlyList<Entry> Read(IReadOnlyList<string> settings, ProblemList problems)
    {
        var entries = new List<Entry>();
        for (int i = 0; i < settings.Count; i++)
        {
            string setting = settings[i];
            int equals = setting.IndexOf('=', StringComparison.Ordinal);
            string path = equals < 0 ? "" : setting[..equals].Trim();
            if (path.Length == 0)
            {
                var whole = new Entry("", EntryKind.Setting, setting, Source, i + 1, 0);
                problems.Error(whole, $"{whole.Shown} ({(equals < 0 ? "there is no = in it" : "there is no key before the =")})", Allowed, Example);
                continue;
            }

            // Whatever key it is for, the setting itself is printed and goes into reports and documents.
            if (PlainText.FirstStrange(setting) is { } strange)
            {
                var whole = new Entry(path, EntryKind.Setting, setting, Source, i + 1, 0);
                problems.Error(whole, $"{whole.Shown} ({strange})", "a setting without control characters", SettingFix(setting));
                continue;
            }

            if (Keys.AxisAliases.Path(path) is { } real)
            {
                var named = new Entry(path, EntryKind.Setting, Unquoted(setting[(equals + 1)..].Trim()), Source, i + 1, 0);
                problems.Error(named, Keys.AxisAliases.Found(path.Split('.')[0]), "polar and declination as names of the axes", $"{Source} {real}={named.Shown}");
                path = real;
            }

            entries.Add(new Entry(path, EntryKind.Setting, Unquoted(setting[(equals + 1)..].Trim()), Source, i + 1, 0));
        }

        return entries;
    }

    private static string SettingFix(string setting) => $"{Source} \"{PlainText.Without(setting).Replace("\"", "", StringComparison.Ordinal)}\"";

    private static string Unquoted(string text) =>
        text.Length >= 2 && text[0] is '"' or '\'' && text[^1] == text[0] ? text[1..^1] : text;
}
