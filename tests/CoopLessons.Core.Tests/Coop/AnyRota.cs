using CoopLessons.Core.Coop;
using CsCheck;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>Invented rotas into which everything odd is put: absences, roles for few, wishes, past balances, rooms and households.</summary>
internal static class AnyRota
{
    public static Gen<RotaProblem> Of(int meetings, int families, int adults, int roles, int places) =>
        from family in Gen.Int[0, families - 1].Array[adults]
        from role in Gen.Select(Gen.Int[1, 3], Gen.Int[0, places], Gen.Int[0, 3], Gen.Int[1, (1 << adults) - 1]).Array[roles]
        from away in Gen.Int[0, 5].Array[adults * meetings]
        from wishes in Gen.Select(Gen.Int[0, adults - 1], Gen.Int[-3, 3], Gen.Int[-1, roles - 1], Gen.Int[-1, meetings - 1]).Array[0, 4]
        from share in Gen.Select(Gen.Int[1, 2], Gen.Int[-150, 150], Gen.Bool).Array[families]
        from home in Gen.Int[0, 5].Array[adults]
        from room in Gen.Select(Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, 2])
        select new RotaProblem(
            Thursdays(meetings),
            [.. role.Select((r, i) => new RotaRole(Id(4, i), $"Role {i}", r.Item1, r.Item2) { Only = r.Item3 == 0 ? [.. Enumerable.Range(0, adults).Where(a => (r.Item4 >> a & 1) == 1).Select(a => Id(5, a))] : null })],
            [.. share.Select((s, i) => new RotaFamily(Id(6, i), Millrace.Families[i]) { Share = s.Item1, PastHundredths = s.Item3 ? s.Item2 : 0 })],
            [.. family.Select((f, i) => new RotaAdult(Id(5, i), $"Adult {i}", Id(6, f)) { Household = home[i] == 0 ? Id("mill house") : null })])
        {
            Absences = [.. away.Select((a, i) => (a, i)).Where(p => p.a == 0).Select(p => new RotaAbsence(Id(5, p.i / meetings), Thursdays(meetings)[p.i % meetings]))],
            Wishes = [.. wishes.Where(w => w.Item2 != 0).Select(w => new RotaWish(Id(5, w.Item1), w.Item2, w.Item3 < 0 ? null : Id(4, w.Item3), w.Item4 < 0 ? null : Thursdays(meetings)[w.Item4]))],
            Rooms = room.Item1 == 0 ? [] : [new RotaRoom(Id("barn"), "the barn", [.. Enumerable.Range(0, Math.Min(roles, room.Item1)).Select(r => Id(4, r))]) { LeastUnrelated = room.Item2, LeastAdults = room.Item3 }],
        };
}
