using CoopLessons.Data.People;
using Microsoft.AspNetCore.Identity;

namespace CoopLessons.Web.Security;

/// <summary>What is done to a person's second step, by themselves or by the host.</summary>
public static class PeopleVerbs
{
    // Under these names Identity keeps a person's key and codes.
    private const string IdentityKeeper = "[AspNetUserStore]";
    private const string Key = "AuthenticatorKey";
    private const string Codes = "RecoveryCodes";

    /// <summary>Turns the second step off and forgets key, codes and the last code's time.</summary>
    public static async Task ForgetAuthenticatorAsync(this UserManager<Person> people, Person person)
    {
        await people.SetTwoFactorEnabledAsync(person, false);
        await people.RemoveAuthenticationTokenAsync(person, IdentityKeeper, Key);
        await people.RemoveAuthenticationTokenAsync(person, IdentityKeeper, Codes);
        await people.RemoveAuthenticationTokenAsync(person, AuthenticatorCodes.Keeper, AuthenticatorCodes.LastStep);
    }
}
