namespace CoopLessons.Core.Coop;

/// <summary>An outing of the co-op: what it costs, and until when one may stay away for nothing.</summary>
/// <param name="CancelDays">So many days before it is the last day to say no without paying, inclusive; 0 and more. Three days are common practice, no source.</param>
/// <param name="ChildCents">For each child, 0 and more.</param>
/// <param name="AdultCents">For each adult, 0 and more.</param>
/// <param name="ChildrenPerFreeAdult">The place lets one adult in free for each so many children; null where it does not. 5 to 10 are common practice, no source.</param>
public sealed record Outing(Guid Id, string Name, DateOnly On, int CancelDays, int ChildCents, int AdultCents, int? ChildrenPerFreeAdult = null)
{
    /// <summary>The last day to say no without paying, inclusive.</summary>
    public DateOnly CancelBy => On.AddDays(-CancelDays);
}

/// <summary>A family that said that it comes.</summary>
/// <param name="CancelledOn">When it said no after all; null where it comes.</param>
public sealed record OutingParty(Guid Family, IReadOnlyList<RoomAdult> Adults, IReadOnlyList<RoomChild> Children, DateOnly? CancelledOn = null);

/// <summary>What a family pays for an outing.</summary>
/// <param name="Comes">False where it said no too late and pays all the same.</param>
public sealed record OutingDue(Guid Family, int Cents, bool Comes);

/// <summary>An outing, counted.</summary>
/// <param name="Children">Who come.</param>
/// <param name="Adults">Who come, guests among them.</param>
/// <param name="AdultsNeeded">By the ratios, and at least as many as are to be unrelated; 0 without children.</param>
/// <param name="FreeAdults">So many the place lets in free, no more than are counted.</param>
/// <param name="Due">Families that pay something or come, in the order of the parties.</param>
/// <param name="Faults">What the rules of cover say, as of a room elsewhere; size and span of a class are not asked of an outing.</param>
public sealed record OutingCount(
    int Children, int Adults, int AdultsNeeded, int FreeAdults, DateOnly CancelBy, IReadOnlyList<OutingDue> Due, IReadOnlyList<CoverFault> Faults)
{
    public int TotalCents => Due.Sum(d => d.Cents);

    /// <summary>
    /// Who said no by <see cref="Outing.CancelBy"/> pays nothing; who said it later pays as if it came. What free adults save
    /// is shared by those who pay for adults, each adult alike, by largest remainders; equal ones go to the lower id.
    /// </summary>
    /// <exception cref="ArgumentException">A family twice or a negative figure; the message is a sentence.</exception>
    public static OutingCount Of(Outing outing, IReadOnlyList<OutingParty> parties, CoverRules rules)
    {
        if (outing.ChildCents < 0 || outing.AdultCents < 0 || outing.CancelDays < 0 || outing.ChildrenPerFreeAdult < 1)
            throw new ArgumentException("Prices and days are 0 or more, and a free adult comes with at least one child.", nameof(outing));
        if (parties.DistinctBy(p => p.Family).Count() < parties.Count)
            throw new ArgumentException("A family stands twice on the list of the outing.", nameof(parties));
        var coming = parties.Where(p => p.CancelledOn is null).ToList();
        var room = new CoverRoom(outing.Id, outing.Name, outing.On.ToString("O", System.Globalization.CultureInfo.InvariantCulture),
            [.. coming.SelectMany(p => p.Adults)], [.. coming.SelectMany(p => p.Children)])
        { OffSite = true };
        var asked = rules with { MostChildren = null, MostYearsApart = null };
        var needed = room.Children.Count == 0 ? 0 : Math.Max(rules.LeastUnrelated, Cover.AdultsNeeded([.. room.Children.Select(c => c.Age)], offSite: true, rules));

        var paying = parties.Where(p => p.CancelledOn is not { } no || no > outing.CancelBy).ToList();
        var adults = paying.Sum(p => p.Adults.Count);
        var free = outing.ChildrenPerFreeAdult is { } per ? Math.Min(adults, paying.Sum(p => p.Children.Count) / per) : 0;
        return new OutingCount(room.Children.Count, room.Adults.Count, needed, free, outing.CancelBy, Dues(outing, paying, adults - free), Cover.Faults(room, asked));
    }

    private static List<OutingDue> Dues(Outing outing, List<OutingParty> paying, int paidAdults)
    {
        var forAdults = paying.Any(p => p.Adults.Count > 0)
            ? SharedCost.Divide(checked(paidAdults * outing.AdultCents), SharedBy.Family, [.. paying.Select(p => new CostBearer(p.Family, 0, p.Adults.Count))]).Select(s => s.Cents).ToList()
            : [.. paying.Select(_ => 0)];
        return [.. paying.Select((p, i) => new OutingDue(p.Family, checked(forAdults[i] + p.Children.Count * outing.ChildCents), p.CancelledOn is null))];
    }
}
