using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Text;

namespace CoopLessons.Web.Pages.Account;

/// <summary>A name that is only spaces and signs without ink would be a link that nobody sees.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class VisibleAttribute : ValidationAttribute
{
    public VisibleAttribute()
        : base("This name has no sign that can be seen.")
    {
    }

    public override bool IsValid(object? value) => value is not string { Length: > 0 } text || text.EnumerateRunes().Any(HasInk);

    private static bool HasInk(Rune rune) => Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.SpaceSeparator or UnicodeCategory.LineSeparator
        or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.OtherNotAssigned
        or UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.PrivateUse or UnicodeCategory.Surrogate);
}
