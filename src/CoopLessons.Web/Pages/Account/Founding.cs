using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.People;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;

namespace CoopLessons.Web.Pages.Account;

/// <summary>What a new person gives.</summary>
public class AccountInput
{
    [Required(ErrorMessage = "Give your name, as your family calls you.")]
    [StringLength(Person.LongestName, ErrorMessage = "A name has at most {1} signs.")]
    [Visible]
    public string Name { get; set; } = "";

    [Required(ErrorMessage = "Give your e-mail address; you sign in with it.")]
    [StringLength(AccountRules.LongestEmail, ErrorMessage = "An e-mail address has at most {1} signs.")]
    [EmailAddress(ErrorMessage = "This is not an e-mail address.")]
    public string Email { get; set; } = "";

    [Required(ErrorMessage = "Choose a password.")]
    [StringLength(SignIns.LongestPassword, ErrorMessage = "A password has at most {1} signs.")]
    [DataType(DataType.Password)]
    public string Password { get; set; } = "";
}

/// <summary>What a new person gives who founds a family.</summary>
public sealed class FoundingInput : AccountInput
{
    [Required(ErrorMessage = "Give the family a name.")]
    [StringLength(Family.LongestName, ErrorMessage = "A family's name has at most {1} signs.")]
    [Visible]
    public string FamilyName { get; set; } = "";

    [Required(ErrorMessage = "Choose the time zone you live in.")]
    [StringLength(60, ErrorMessage = "Choose a time zone from the list.")]
    [KnownZone]
    public string TimeZone { get; set; } = Zones.Usual;
}

/// <summary>Makes people and families, each whole or not at all.</summary>
public sealed class Founding(AppDb db, UserManager<Person> people, TimeProvider clock)
{
    /// <summary>Makes a person, and whatever else must be saved with them.</summary>
    /// <param name="more">Adds to the unit of work; saved in one piece with the person.</param>
    public async Task<(Person Person, IdentityResult Result)> MakePersonAsync(AccountInput input, Action<Person> more, CancellationToken ct)
    {
        var person = Person.Named(input.Name, input.Email);
        var result = await CheckedAsync(person, input.Password);
        if (!result.Succeeded)
            return (person, result);
        // Hashing takes a while; the database is not held for it.
        person.PasswordHash = people.PasswordHasher.HashPassword(person, input.Password);
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        result = await people.CreateAsync(person);
        if (!result.Succeeded)
            return (person, result);
        more(person);
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return (person, result);
    }

    /// <summary>Makes a person who founds a family.</summary>
    public Task<(Person Person, IdentityResult Result)> FoundAsync(FoundingInput input, CancellationToken ct) =>
        MakePersonAsync(input, person => AddFamily(person.Id, input.Name, input.FamilyName, input.TimeZone), ct);

    /// <summary>Adds a family to the unit of work; the caller saves.</summary>
    public Family AddFamily(Guid personId, string personName, string name, string timeZone)
    {
        var now = clock.GetUtcNow();
        var zone = TimeZoneInfo.FindSystemTimeZoneById(timeZone);
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);
        return NewFamily.Found(db, Guid.CreateVersion7(), name, timeZone, personId, personName, today, now.UtcDateTime);
    }

    private async Task<IdentityResult> CheckedAsync(Person person, string password)
    {
        var errors = new List<IdentityError>();
        foreach (var validator in people.PasswordValidators)
            errors.AddRange((await validator.ValidateAsync(people, person, password)).Errors);
        return errors.Count == 0 ? IdentityResult.Success : IdentityResult.Failed([.. errors]);
    }
}
