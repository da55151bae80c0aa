using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages;
using CoopLessons.Web.Phone;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace CoopLessons.Web.Security;

/// <summary>How people sign in: password, authenticator app, recovery codes; sessions kept on the server.</summary>
public static class SignIns
{
    public const int ShortestPassword = 12;
    public const int LongestPassword = 200;

    /// <summary>OWASP's figure for PBKDF2 with HMAC-SHA-512 (Password Storage Cheat Sheet).</summary>
    public const int HashRounds = 210_000;

    public static void Rules(IdentityOptions o)
    {
        o.User.RequireUniqueEmail = true;
        // Names are e-mail addresses, whose signs are their provider's affair.
        o.User.AllowedUserNameCharacters = "";
        // Length and guessability decide, not the kinds of signs.
        o.Password.RequiredLength = ShortestPassword;
        o.Password.RequireDigit = o.Password.RequireLowercase = o.Password.RequireUppercase = o.Password.RequireNonAlphanumeric = false;
        o.Password.RequiredUniqueChars = 1;
        o.Lockout.MaxFailedAccessAttempts = 20;
        o.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
    }

    public static void AddSignIns(this IServiceCollection services, ServerSettings settings)
    {
        services.AddIdentityCore<Person>(Rules)
            .AddEntityFrameworkStores<AppDb>()
            .AddUserStore<PeopleStore>()
            .AddSignInManager()
            .AddDefaultTokenProviders()
            .AddTokenProvider<AuthenticatorCodes>(TokenOptions.DefaultAuthenticatorProvider)
            .AddPasswordValidator<HardToGuess>();
        services.Configure<PasswordHasherOptions>(o => o.IterationCount = HashRounds);
        services.Configure<SecurityStampValidatorOptions>(o => o.ValidationInterval = TimeSpan.FromMinutes(5));
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.AddSingleton<SessionStore>();
        services.AddSingleton<ChildPins>();
        services.AddScoped<TabletDoor>();
        services.AddOptions<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme).Configure<SessionStore>((o, store) =>
        {
            Secure(o.Cookie, settings, "session");
            o.SessionStore = store;
            o.ExpireTimeSpan = TimeSpan.FromDays(14);
            o.SlidingExpiration = true;
            o.LoginPath = "/sign-in";
            o.ReturnUrlParameter = "back";
            o.Events.OnRedirectToAccessDenied = context =>
            {
                context.Response.StatusCode = StatusCodes.Status403Forbidden;
                return Task.CompletedTask;
            };
            var toSignIn = o.Events.OnRedirectToLogin;
            o.Events.OnRedirectToLogin = context =>
            {
                // A script is told so: a page to sign in on would be read as an answer.
                if (context.Request.Path.StartsWithSegments(PhoneAddresses.Prefix) || KeptItem.Of(context.Request) is not null)
                {
                    context.Response.StatusCode = StatusCodes.Status401Unauthorized;
                    return context.Response.WriteAsJsonAsync(new { signIn = true });
                }

                if (!context.Request.IsHtmx())
                    return toSignIn(context);
                context.Response.StatusCode = StatusCodes.Status401Unauthorized;
                context.Response.Headers["HX-Redirect"] = context.RedirectUri;
                return Task.CompletedTask;
            };
        });
        foreach (var scheme in new[] { IdentityConstants.TwoFactorUserIdScheme, IdentityConstants.TwoFactorRememberMeScheme, IdentityConstants.ExternalScheme })
            services.Configure<CookieAuthenticationOptions>(scheme, o => Secure(o.Cookie, settings, scheme.Replace("Identity.", "", StringComparison.Ordinal).ToLowerInvariant()));
        services.AddAntiforgery(o => Secure(o.Cookie, settings, "form", SameSiteMode.Strict));
    }

    /// <summary>Under HTTPS every cookie is bound to this host; on the loopback, where there is none, the prefix would be refused.</summary>
    internal static void Secure(CookieBuilder cookie, ServerSettings settings, string name, SameSiteMode sameSite = SameSiteMode.Lax)
    {
        cookie.Name = (settings.PublicIsHttps ? "__Host-" : "") + "cooplessons-" + name;
        cookie.SecurePolicy = settings.PublicIsHttps ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest;
        cookie.SameSite = sameSite;
        cookie.HttpOnly = true;
        cookie.Path = "/";
    }
}

/// <summary>Refuses passwords that stand in lists of common ones or hold the names of the person or the product.</summary>
public sealed class HardToGuess : IPasswordValidator<Person>
{
    private static readonly string[] OwnWords = ["cooplessons", "coop", "lessons", "homeschool", "family", "millrace"];

    public Task<IdentityResult> ValidateAsync(UserManager<Person> manager, Person user, string? password)
    {
        var said = password ?? "";
        if (said.Length > SignIns.LongestPassword)
            return Task.FromResult(Refused($"A password may have at most {SignIns.LongestPassword} signs."));
        string[] near = [.. OwnWords, user.Name, user.Email ?? "", .. (user.Email ?? "").Split('@', '.'), .. user.Name.Split(' ')];
        // Scoring grows steeply with length; what is beyond a hundred signs is not guessed.
        var score = Zxcvbn.Zxcvbn.MatchPassword(said[..Math.Min(said.Length, 100)], near.Where(w => w.Length > 2)).Score;
        return Task.FromResult(score >= 3 ? IdentityResult.Success : Refused("That is easily guessed. Four or five unrelated words make a good password."));
    }

    private static IdentityResult Refused(string why) => IdentityResult.Failed(new IdentityError { Code = nameof(HardToGuess), Description = why });
}
