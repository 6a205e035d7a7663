using System.Text;

namespace AxisSim.Files.Units;

/// <summary>Brings the many ways of writing a unit to one: <c>N m</c>, <c>N·m</c> and <c>N * m</c> become <c>N*m</c>, <c>cm²</c> becomes <c>cm^2</c>.</summary>
internal static class UnitSpelling
{
    /// <summary>The unit text in one plain spelling; spaces that remain separate words.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length + 4);
        string trimmed = text.Trim();
        for (int i = 0; i < trimmed.Length; i++)
        {
            char c = trimmed[i];
            _ = c switch
            {
                '\u00b7' or '\u22c5' or '\u2219' => plain.Append('*'),
                '×' => plain.Append(i == 0 ? 'x' : '*'),
                '²' => plain.Append("^2"),
                '³' => plain.Append("^3"),
                '\u00b5' or '\u03bc' => plain.Append('u'),
                '\u03a9' or '\u2126' => plain.Append("ohm"),
                '°' => plain.Append("deg"),
                '″' => plain.Append("arcsec"),
                '′' => plain.Append("arcmin"),
                '2' or '3' when i > 0 && char.IsAsciiLetter(trimmed[i - 1]) => plain.Append('^').Append(c),
                _ when char.IsWhiteSpace(c) => plain.Append(' '),
                _ => plain.Append(c),
            };
        }

        return Tighten(plain.ToString());
    }

    /// <summary>The same with words joined as a product: <c>N m</c> becomes <c>N*m</c>.</summary>
    public static string Joined(string plain) => plain.Replace(' ', '*');

    private static string Tighten(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var joined = new StringBuilder(text.Length);
        foreach (string word in words)
        {
            bool glue = joined.Length == 0 || joined[^1] is '*' or '/' or '^' || word[0] is '*' or '/' or '^';
            _ = (glue ? joined : joined.Append(' ')).Append(word);
        }

        return joined.ToString();
    }
}
