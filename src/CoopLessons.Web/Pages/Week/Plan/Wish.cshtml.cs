using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>What a parent would like of each week.</summary>
public sealed class WishInput
{
    /// <summary>A subject's id, or the name of a kind of work.</summary>
    [Required(ErrorMessage = "Choose a subject or a kind of work.")]
    public string? About { get; set; }

    [EnumDataType(typeof(DayOfWeek), ErrorMessage = "Choose a day from the list.")]
    public DayOfWeek? Day { get; set; }

    public bool Morning { get; set; }

    internal Guid? SubjectId => Guid.TryParse(About, out var id) ? id : null;

    internal ActivityKind? Kind => Enum.TryParse<ActivityKind>(About, out var kind) && Enum.GetName(kind) == About ? kind : null;
}

/// <summary>A wish of the week, such as science on Wednesdays.</summary>
public sealed class WishModel(AppDb db, TimeProvider clock) : PlanThingPage<WeeklyWish, WishInput>(db, clock)
{
    protected override IQueryable<WeeklyWish> Rows(Guid id) => Db.Wishes.Where(w => w.Id == id);

    protected override WishInput FormOf(WeeklyWish row) => new() { About = row.SubjectId?.ToString() ?? row.Kind?.ToString(), Day = row.Day, Morning = row.Morning };

    protected override string TitleOf(WeeklyWish row) => PlanWords.Of(row, Choices);

    protected override bool NamesOwn() => Choices.HasSubject(Input.SubjectId);

    protected override void Check()
    {
        if (Input.About is not null && Input.SubjectId is null && Input.Kind is null)
            ModelState.AddModelError("Input.About", "Choose a subject or a kind of work from the list.");
        if (Input.Day is null && !Input.Morning)
            ModelState.AddModelError("Input.Day", "Choose a day, or the morning, or both.");
    }

    protected override Task<WeeklyWish> MakeAsync(Guid id) => Task.FromResult(new WeeklyWish(id, Input.SubjectId, Input.Kind, Input.Day, Input.Morning));

    protected override void Write(WeeklyWish row) => row.Wish(Input.SubjectId, Input.Kind, Input.Day, Input.Morning);

    protected override Task<IReadOnlyList<string>> BecomesAsync(WeeklyWish row) =>
        Task.FromResult<IReadOnlyList<string>>(["Sessions that are planned stay where they are; weeks that are laid out from now on do without the wish."]);
}
