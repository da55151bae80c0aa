using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A family founds a co-op and leads it.</summary>
public sealed class FoundModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public void OnGet() => Input = new() { NewId = Guid.CreateVersion7(), GoBy = Family.Name };

    public async Task<IActionResult> OnPostAsync()
    {
        if (Db.Current.Coops.Contains(Input.NewId))
            return LocalRedirect($"/coop/{Input.NewId}");
        if (!ModelState.IsValid)
            return Again();
        var coop = new Coop(Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId, Input.Name, Now);
        Db.Current.Enter(coop.Id);
        Db.Coops.Add(coop);
        Db.CoopFamilies.Add(new CoopFamily(coop.Id, Family.Id, Input.GoBy, CoopPart.Leader, Now));
        if (!await SaveNewAsync())
        {
            // The same form came twice in one moment: then it is founded. Else the id is somebody else's.
            if (!await Db.CoopFamilies.AnyAsync(f => f.CoopId == coop.Id && f.FamilyId == Family.Id, Ct))
                return NotFound();
            return LocalRedirect($"/coop/{coop.Id}");
        }

        Say($"“{coop.Name}” is founded. Invite the other families with a link for each.");
        return LocalRedirect($"/coop/{coop.Id}");
    }

    public sealed class InputModel
    {
        /// <summary>Made with the form, so that a form sent twice founds one co-op.</summary>
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Give the co-op a name.")]
        [StringLength(Coop.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Say how the others call your family.")]
        [StringLength(Data.Families.Family.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string GoBy { get; set; } = "";
    }
}
