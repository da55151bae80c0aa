using System.Buffers.Text;
using CoopLessons.Data;
using CoopLessons.Data.Notices;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.People;

/// <summary>A device that takes notices, as its person sees it.</summary>
public sealed record NoticeRow(Guid Id, string Name, string Since);

/// <summary>Of what a person wants to be told, and on which devices.</summary>
public sealed class NoticesModel(AppDb db, CurrentFamily current, ServerSettings settings, NoticeAddresses addresses, NoticeKeys keys, TimeProvider clock) : PageModel
{
    public const int MostDevices = 20;

    public bool IsOn => settings.NoticesAreOn;

    public string ServerKey => keys.Public;

    public bool Waits { get; private set; }

    public bool LawDates { get; private set; }

    public bool CoopNews { get; private set; }

    /// <summary>Whether the host has set a mail server.</summary>
    public bool HasMail => settings.Mail is not null;

    public bool ByMail { get; private set; }

    public string Address { get; private set; } = "";

    /// <summary>Whether the address has proven to be the person's.</summary>
    public bool IsProven { get; private set; }

    public IReadOnlyList<NoticeRow> Devices { get; private set; } = [];

    private CancellationToken Ct => HttpContext.RequestAborted;

    private Guid Me => current.PersonId!.Value;

    private DateTime Now => clock.GetUtcNow().UtcDateTime;

    public Task OnGetAsync() => ShowAsync();

    /// <param name="endpoint">From the browser at hand, where it takes notices from now on; empty where it does not.</param>
    /// <param name="key">Its public key in base64url.</param>
    /// <param name="secret">Its authentication secret in base64url.</param>
    public async Task<IActionResult> OnPostChooseAsync(bool waits, bool lawDates, bool coopNews, string? endpoint, string? key, string? secret)
    {
        if (!IsOn)
            return NotFound();
        if (!ModelState.IsValid)
            return BadRequest();
        if (endpoint is { Length: > 0 } && await FaultAsync(endpoint, key ?? "", secret ?? "") is { } fault)
        {
            ModelState.AddModelError("Endpoint", fault);
            await ShowAsync();
            (Waits, LawDates, CoopNews) = (waits, lawDates, coopNews);
            return this.Again();
        }

        var choice = await db.NoticeChoices.SingleOrDefaultAsync(c => c.PersonId == Me, Ct) ?? db.NoticeChoices.Add(new NoticeChoice(Me)).Entity;
        choice.Choose(waits, lawDates, coopNews);
        if (endpoint is { Length: > 0 })
            await TakeAsync(endpoint, Read(key!)!, Read(secret!)!);
        try
        {
            await db.SaveChangesAsync(Ct);
        }
        catch (DbUpdateException)
        {
            // Sent twice in one moment; the other sending said the same.
            db.ChangeTracker.Clear();
        }

        var some = await db.NoticeDevices.AnyAsync(d => d.PersonId == Me, Ct);
        this.Say(!choice.IsAny ? "You get no notices." : some ? "It is saved." : "It is saved. No device takes notices yet: turn a notice on with the one that is to show it.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostMailAsync(bool byMail)
    {
        if (!HasMail)
            return NotFound();
        var choice = await db.MailChoices.SingleOrDefaultAsync(c => c.PersonId == Me, Ct);
        if (!byMail)
        {
            await db.MailChoices.Where(c => c.PersonId == Me).ExecuteDeleteAsync(Ct);
            await db.MailToSend.Where(m => m.PersonId == Me && m.DoneAt == null).ExecuteDeleteAsync(Ct);
            this.Say("No notices come by mail.");
            return RedirectToPage();
        }

        if (choice is null)
            db.MailChoices.Add(new MailChoice(Me, Now));
        var proven = await db.Users.AnyAsync(p => p.Id == Me && p.EmailConfirmed, Ct);
        var proof = new MailToSend(Guid.CreateVersion7(), Me, Now);
        if (!proven && !await db.MailToSend.AnyAsync(m => m.PersonId == Me && m.Key == proof.Key, Ct))
            db.MailToSend.Add(proof);
        try
        {
            await db.SaveChangesAsync(Ct);
        }
        catch (DbUpdateException)
        {
            // Sent twice in one moment; the other sending said the same.
            db.ChangeTracker.Clear();
        }

        this.Say(proven ? "Notices of your co-op come by mail." : "A mail goes to your address. Open its link, so that notices come.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRemoveAsync(Guid deviceId)
    {
        if (await db.NoticeDevices.Where(d => d.Id == deviceId && d.PersonId == Me).ExecuteDeleteAsync(Ct) == 0)
            return NotFound();
        this.Say("That device takes no notices any more.");
        return RedirectToPage();
    }

    private async Task<string?> FaultAsync(string endpoint, string key, string secret)
    {
        if (!addresses.Allows(endpoint, out _))
            return "This server does not send to your browser’s push service. Its host can add it to the list.";
        if (Read(key) is not { } point || !SealedMessage.IsKey(point) || Read(secret) is not { Length: NoticeDevice.SecretBytes })
            return "Your browser’s keys were not understood. Turn the notice off and on once more.";
        var hash = NoticeDevice.Hash(endpoint);
        return await db.NoticeDevices.CountAsync(d => d.PersonId == Me && d.EndpointHash != hash, Ct) >= MostDevices ? $"{MostDevices} devices take notices already. Take one out first." : null;
    }

    /// <summary>A browser shows one person's notices: those of whoever asked last.</summary>
    private async Task TakeAsync(string endpoint, byte[] key, byte[] secret)
    {
        var hash = NoticeDevice.Hash(endpoint);
        await db.NoticeDevices.Where(d => d.EndpointHash == hash).ExecuteDeleteAsync(Ct);
        var agent = Request.Headers.UserAgent.ToString();
        db.NoticeDevices.Add(new NoticeDevice(Guid.CreateVersion7(), Me, endpoint, key, secret, agent.Length > 120 ? agent[..120] : agent, Now));
    }

    private static byte[]? Read(string text) => text.Length <= 200 && Base64Url.IsValid(text) ? Base64Url.DecodeFromChars(text) : null;

    private async Task ShowAsync()
    {
        var family = await db.Families.AsNoTracking().SingleOrDefaultAsync(Ct);
        ViewData["Family"] = family?.Name;
        var zone = family?.Zone ?? TimeZoneInfo.Utc;
        var choice = await db.NoticeChoices.AsNoTracking().SingleOrDefaultAsync(c => c.PersonId == Me, Ct);
        (Waits, LawDates, CoopNews) = (choice?.Waits == true, choice?.LawDates == true, choice?.CoopNews == true);
        var person = await db.Users.AsNoTracking().SingleAsync(p => p.Id == Me, Ct);
        (Address, IsProven, ByMail) = (person.Email ?? "", person.EmailConfirmed, await db.MailChoices.AnyAsync(c => c.PersonId == Me, Ct));
        Devices = [.. (await db.NoticeDevices.AsNoTracking().Where(d => d.PersonId == Me).OrderByDescending(d => d.Since).ToListAsync(Ct))
            .Select(d => new NoticeRow(d.Id, Device.NameOf(d.Device), TimeZoneInfo.ConvertTimeFromUtc(d.Since, zone).ToString("d MMMM yyyy, H:mm", System.Globalization.CultureInfo.InvariantCulture)))];
    }
}
