using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>A session that is to be placed, in slots and indices. Lists of days hold one item a day of the problem.</summary>
internal sealed class GridSession(int index, WeekSession source, int[] learners)
{
    /// <summary>Among the sessions that are to be placed.</summary>
    public int Index { get; } = index;

    public WeekSession Source { get; } = source;
    public int[] Learners { get; } = learners;
    public int Length { get; } = Slots.Up(source.Minutes);
    public AdultNeed Need { get; } = source.Need;
    public int Worth { get; } = source.Weight switch { Weight.AboveAll => 25, Weight.Usual => 5, _ => 1 };

    /// <summary>Slots of rest after the session, for each of its learners in their order.</summary>
    public required int[] Rests { get; init; }

    public bool Looks { get; } = source.Wait is not null;

    /// <summary>From the start of the session to the earliest and to the latest start of the look.</summary>
    public int LookFrom { get; } = source.Wait is { } w ? Slots.Up(source.Minutes + w.Minutes) : 0;
    public int LookTo { get; } = source.Wait is { } w ? Slots.Up(source.Minutes + w.Minutes + w.Patience) : 0;
    public int LookLength { get; } = source.Wait is { } w ? Slots.Up(w.LookMinutes) : 0;

    /// <summary>What a day's load grows by.</summary>
    public int Load => Length + LookLength;

    /// <summary>What the load of the adults' hands grows by.</summary>
    public int HandsLoad => (Need == AdultNeed.HandsOn ? Length : 0) + LookLength;

    /// <summary>Index of the old day; -1 where it had none, or one outside the problem.</summary>
    public int OldDay { get; init; } = -1;

    /// <summary>Slot of the old start; -1 where it had none, or one beside the grid.</summary>
    public int OldStart { get; init; } = -1;
    public bool HasOld => Source.Was is not null;

    /// <summary>The days that the wish names; null where it names none.</summary>
    public bool[]? WishedDays { get; init; }
    public bool WishesMorning => Source.Wish is { Morning: true };

    /// <summary>Sessions to be placed that come before, and how many days.</summary>
    public List<(int Before, int Lag)> After { get; } = [];

    /// <summary>Sessions that come after, and how many days.</summary>
    public List<(int Next, int Lag)> Followers { get; } = [];

    /// <summary>The starts that windows, bounds, adults and fixed sessions allow.</summary>
    public int[][] Starts { get; set; } = [];

    /// <summary>For a session with a look, the starts of it that they allow.</summary>
    public bool[][] LookStarts { get; set; } = [];

    /// <summary>Whether it may have a place at all, alone in an empty week.</summary>
    public bool Possible { get; set; }

    /// <summary>The next one that may change places with it and comes later; -1 for none.</summary>
    public int NextAlike { get; set; } = -1;

    public bool IsMorning(int start) => start + Length <= Slots.Noon;
}
