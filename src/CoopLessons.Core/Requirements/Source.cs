using System.Text.Json.Serialization;

namespace CoopLessons.Core.Requirements;

/// <summary>Where a figure was read.</summary>
public enum Basis
{
    /// <summary>The text of the statute or rule, or a copy of it.</summary>
    Statute,

    /// <summary>A page or form of a state or federal office.</summary>
    StateOffice,

    /// <summary>A summary by others, school districts included.</summary>
    Summary,

    /// <summary>Nowhere: it stands from memory, and the page asks for it to be confirmed.</summary>
    Memory,

    /// <summary>The family's own pathway: its word.</summary>
    Family,
}

/// <summary>Whether a figure binds this pathway. Only a required one is a requirement; every other is offered as a goal.</summary>
public enum FigureStatus
{
    /// <summary>The law, rule or office asks for it.</summary>
    Required,

    /// <summary>It follows from a general phrase by arithmetic or analogy.</summary>
    Derived,

    /// <summary>Somebody asserts it and others deny it.</summary>
    Disputed,

    /// <summary>It binds somebody else, such as public schools.</summary>
    Comparison,
}

/// <summary>What a figure rests on.</summary>
/// <param name="Cite">The statute, rule or office's document; never empty.</param>
/// <param name="Checked">When it was read or, from memory, written down.</param>
/// <param name="Url">An address of a legislature, an office or a law library; null where none may be linked.</param>
/// <param name="Confirm">Nobody found it in official text, or readings disagree.</param>
public sealed record Source(string Cite, Basis Basis, DateOnly Checked, string? Url = null, bool Confirm = false)
{
    /// <summary>Whether a reader should confirm it before resting anything on it.</summary>
    [JsonIgnore]
    public bool NeedsConfirming => Confirm || Basis is Basis.Memory;

    /// <summary>The basis in the words that every page uses.</summary>
    [JsonIgnore]
    public string BasisWords => Basis switch
    {
        Basis.Statute => "statute text",
        Basis.StateOffice => "state office",
        Basis.Summary => "summary by others",
        Basis.Memory => "from memory, please confirm",
        _ => "your own",
    };
}
