using System.Globalization;
using System.Runtime.CompilerServices;

namespace AxisSim.Core.Bounds;

/// <summary>Collects the problems of a record and of what hangs on it. Nothing is built before something is wrong, so that a check of thousands of setups costs nothing.</summary>
internal sealed class ProblemCollector
{
    private List<SetupProblem>? _problems;
    private string _owner = "";
    private string _part = "";
    private int _item = -1;

    public IReadOnlyList<SetupProblem> Problems => _problems ?? (IReadOnlyList<SetupProblem>)[];

    /// <summary>Says what the following checks are about.</summary>
    public void At(string owner, string part = "", int item = -1) => (_owner, _part, _item) = (owner, part, item);

    /// <summary>Holds a figure to its bound; the name of the property is that of the argument.</summary>
    public void Check(double value, Bound bound, [CallerArgumentExpression(nameof(value))] string property = "")
    {
        if (!bound.Holds(value))
        {
            Add(property, Text(value), bound.Allowed);
        }
    }

    /// <summary>Holds a figure that may be left out to its bound.</summary>
    public void CheckGiven(double? value, Bound bound, [CallerArgumentExpression(nameof(value))] string property = "")
    {
        if (value is { } given)
        {
            Check(given, bound, property);
        }
    }

    /// <summary>Refuses a word that its list does not have.</summary>
    public void CheckWord<T>(T value, [CallerArgumentExpression(nameof(value))] string property = "")
        where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
        {
            Add(property, string.Create(CultureInfo.InvariantCulture, $"{value}"), string.Join(" or ", Enum.GetNames<T>()));
        }
    }

    /// <summary>Refuses a part that is not there.</summary>
    /// <returns>Whether it is there.</returns>
    public bool Has(object? part, [CallerArgumentExpression(nameof(part))] string property = "")
    {
        if (part is null)
        {
            Add(property, "null", "a value");
        }

        return part is not null;
    }

    /// <summary>Takes up a problem of the present part.</summary>
    public void Add(string property, string found, string allowed)
    {
        string name = property[(property.LastIndexOf('.') + 1)..].TrimEnd('!');
        string part = _item < 0 ? _part : string.Create(CultureInfo.InvariantCulture, $"{_part}[{_item}]");
        _problems ??= [];
        _problems.Add(new SetupProblem(string.Join('.', new[] { _owner, part, name }.Where(piece => piece.Length > 0)), found, allowed));
    }

    /// <summary>A number as it is shown.</summary>
    public static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
