using System.ComponentModel.DataAnnotations;
using System.Security.Cryptography;
using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using QRCoder;

namespace CoopLessons.Web.Pages.People;

/// <summary>Setting up an authenticator app as the second step of signing in, and turning it off.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class AuthenticatorModel(AppDb db, UserManager<Person> people, IUserStore<Person> store, SignInManager<Person> signIns) : PageModel
{
    public const int RecoveryCodes = 10;

    // No letters or digits that are easily mistaken for each other.
    private const string Signs = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    [BindProperty]
    [StringLength(SignIns.LongestPassword, ErrorMessage = "A password has at most {1} signs.")]
    [DataType(DataType.Password)]
    public string? Password { get; set; }

    [BindProperty]
    [StringLength(12, ErrorMessage = "A code has six digits.")]
    public string? Code { get; set; }

    public bool IsOn { get; private set; }

    /// <summary>The key that waits for its first code, in groups of four; null while none does.</summary>
    public string? Key { get; private set; }

    /// <summary>The key for a camera: SVG as an address, so that the page needs no picture from elsewhere.</summary>
    public string Picture { get; private set; } = "";

    /// <summary>Shown once.</summary>
    public IReadOnlyList<string> Codes { get; private set; } = [];

    public async Task OnGetAsync() => await ShowAsync(await MeAsync());

    /// <summary>Makes a key, which is not asked for before its first code has come.</summary>
    public async Task<IActionResult> OnPostBeginAsync()
    {
        var person = await MeAsync();
        if (person.TwoFactorEnabled)
            return RedirectToPage();
        if (!await ProvenAsync(person))
            return await AgainAsync(person);
        await people.ResetAuthenticatorKeyAsync(person);
        await signIns.RefreshSignInAsync(person);
        return RedirectToPage();
    }

    /// <summary>The first code proves that the app holds the key.</summary>
    public async Task<IActionResult> OnPostConfirmAsync()
    {
        var person = await MeAsync();
        if (person.TwoFactorEnabled)
            return RedirectToPage();
        var code = (Code ?? "").Replace(" ", "", StringComparison.Ordinal);
        if (ModelState.IsValid && !await people.VerifyTwoFactorTokenAsync(person, people.Options.Tokens.AuthenticatorTokenProvider, code))
            ModelState.AddModelError(nameof(Code), "This is not the code that the app shows now. Check that the phone’s clock is right.");
        if (!ModelState.IsValid)
            return await AgainAsync(person);
        await people.SetTwoFactorEnabledAsync(person, true);
        return await WithNewCodesAsync(person);
    }

    public async Task<IActionResult> OnPostCodesAsync()
    {
        var person = await MeAsync();
        if (!person.TwoFactorEnabled)
            return RedirectToPage();
        return await ProvenAsync(person) ? await WithNewCodesAsync(person) : await AgainAsync(person);
    }

    public async Task<IActionResult> OnPostOffAsync()
    {
        var person = await MeAsync();
        if (!await ProvenAsync(person))
            return await AgainAsync(person);
        await people.ForgetAuthenticatorAsync(person);
        await OnlyHereAsync(person);
        this.Say("The authenticator app is turned off; your password alone signs you in. All other devices are signed out.");
        return RedirectToPage("/Person/Index");
    }

    private async Task<Person> MeAsync() => (await people.GetUserAsync(User))!;

    // Nobody who finds an open browser changes the second step.
    private async Task<bool> ProvenAsync(Person person)
    {
        if (ModelState.IsValid && !await people.CheckPasswordAsync(person, Password ?? ""))
            ModelState.AddModelError(nameof(Password), "This is not your password.");
        return ModelState.IsValid;
    }

    private async Task<IActionResult> WithNewCodesAsync(Person person)
    {
        Codes = [.. Enumerable.Range(0, RecoveryCodes).Select(_ => string.Join('-', Enumerable.Range(0, 3).Select(_ => RandomNumberGenerator.GetString(Signs, 4))))];
        await ((IUserTwoFactorRecoveryCodeStore<Person>)store).ReplaceCodesAsync(person, Codes, HttpContext.RequestAborted);
        await people.UpdateAsync(person);
        await OnlyHereAsync(person);
        return Page();
    }

    private async Task OnlyHereAsync(Person person)
    {
        await db.EndSessionsAsync(person.Id, SessionStore.HashHere(HttpContext), HttpContext.RequestAborted);
        await signIns.RefreshSignInAsync(person);
    }

    private async Task<IActionResult> AgainAsync(Person person)
    {
        await ShowAsync(person);
        return this.Again();
    }

    private async Task ShowAsync(Person person)
    {
        IsOn = person.TwoFactorEnabled;
        if (IsOn || await people.GetAuthenticatorKeyAsync(person) is not { Length: > 0 } key)
            return;
        Key = string.Join(' ', key.Chunk(4).Select(four => new string(four)));
        // The form of address that apps read from a picture.
        var address = $"otpauth://totp/CoopLessons:{Uri.EscapeDataString(person.Email!)}?secret={key}&issuer=CoopLessons&digits={AuthenticatorCodes.Digits}&period={AuthenticatorCodes.StepSeconds}";
        using var data = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        using var drawing = new SvgQRCode(data);
        var svg = drawing.GetGraphic(6, "#000000", "#ffffff");
        Picture = "data:image/svg+xml;base64," + Convert.ToBase64String(System.Text.Encoding.UTF8.GetBytes(svg));
    }
}
