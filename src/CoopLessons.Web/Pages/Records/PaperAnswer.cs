using CoopLessons.Data.Files;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Files;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Records;

/// <summary>Answers with a paper that has pictures, or leads back to the page that asked with a sentence why not.</summary>
internal static class PaperAnswer
{
    public const string Unreadable = "A photo or file of these samples cannot be read any more. Look through the samples for one that does not show, and take it out.";
    public const string TooLong = "Making this paper took too long, so it was stopped. Show fewer samples.";
    public const string Busy = "Another paper or file is being worked on just now. Try again in a minute.";

    /// <param name="back">The page that asked.</param>
    /// <param name="given">Told the file before it is given.</param>
    public static async Task<IActionResult> OfAsync(
        FamilyPage page, PicturePaper maker, Guid family, IEnumerable<StoredFile> files, Action<PaperFiles, CancellationToken> write, HoursFile name, string back, Action<string> say, Func<Stream, Task> given, CancellationToken ct)
    {
        try
        {
            if (await maker.MakeAsync(family, files, write, ct) is { } made)
            {
                await given(made);
                page.Response.Headers.ContentDisposition = name.Disposition.ToString();
                return page.File(made, name.ContentType);
            }
        }
        catch (SourceUnreadableException)
        {
            say(Unreadable);
            return page.LocalRedirect(back);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            say(TooLong);
            return page.LocalRedirect(back);
        }

        page.Response.Headers.RetryAfter = "60";
        say(Busy);
        return page.LocalRedirect(back);
    }
}
