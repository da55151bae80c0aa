using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.Log;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.People;

namespace CoopLessons.Web.Pages.Mine;

/// <summary>What a child sends with "I did it".</summary>
public sealed class SayInput
{
    /// <summary>What it was, where it is nothing that was planned.</summary>
    [StringLength(LogRevision.LongestWhat, ErrorMessage = "A shorter line, please.")]
    public string? What { get; set; }

    [StringLength(ChildSaid.LongestWords, ErrorMessage = "A shorter line, please.")]
    public string? Words { get; set; }

    /// <summary>Which grown-up was there.</summary>
    [StringLength(Person.LongestName, ErrorMessage = "A shorter name, please.")]
    public string? With { get; set; }
}
