using AxisSim.Core.Stepping;

namespace AxisSim.Core.Questions;

/// <summary>How runs that answer a question are made.</summary>
public sealed record QuestionOptions
{
    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Threads; 0 takes as many as there are cores. The answers do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Called with the number of runs done so far; from several threads at once.</summary>
    public Action<long>? Counted { get; init; }

    /// <summary>Ends the work early with an exception.</summary>
    public CancellationToken Stop { get; init; }
}
