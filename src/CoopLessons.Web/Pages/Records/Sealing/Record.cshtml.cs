using System.Text;
using CoopLessons.Data;
using CoopLessons.Data.Sealing;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Records.Sealing;

/// <summary>A kept record of a learner's sealed year as a file: exactly the bytes of which the fingerprint is.</summary>
public sealed class RecordModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <param name="code">0 for the sealing's own, else the amendment's number.</param>
    public async Task<IActionResult> OnGetAsync(Guid yearId, Guid learnerId, int code)
    {
        var records = await Db.RecordsAsync(yearId, learnerId, Ct);
        if (code < 0 || code >= records.Count)
            return NotFound();
        return File(Encoding.UTF8.GetBytes(records[code].Text), "application/json", SealWords.FileName(code));
    }
}
