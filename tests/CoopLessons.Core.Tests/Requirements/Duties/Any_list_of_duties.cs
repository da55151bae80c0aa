using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using CsCheck;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

/// <summary>What holds of every list, whatever the law asks and whatever the family told.</summary>
public class Any_list_of_duties
{
    private static readonly Gen<DateOnly> Days = Gen.Int[0, 800].Select(n => Day("2025-06-01").AddDays(n));
    private static readonly Gen<LegalEvent> Kinds = Gen.Enum<LegalEvent>();

    private static readonly Gen<DueRule> Simple = Gen.OneOf<DueRule>(
        Gen.Select(Days, Gen.Bool, Gen.Bool, Gen.Bool, (d, after, before, friday) => (DueRule)On($"{d:MM-dd}", after, before, friday ? WeekendRule.FridayBefore : null)),
        Gen.Select(Kinds, Gen.Int[1, 60], Gen.Enum<DueUnit>(), (e, n, u) => (DueRule)After(e, n, u)),
        Gen.Select(Kinds, Gen.Int[1, 60], Gen.Enum<DueUnit>(), (e, n, u) => (DueRule)Before(e, n, u)),
        Kinds.Select(e => (DueRule)new AtEvent(e)),
        Gen.Int[2, 12].Select(n => (DueRule)new InTerms(n)),
        Gen.Int[5, 18].Select(n => (DueRule)new OnBirthday(n)),
        Gen.Int[0, 4].Select(n => (DueRule)new WithDuty($"duty-{n}")),
        Gen.Const<DueRule>(new InYear()),
        Gen.Const<DueRule>(new OnRequest()));

    private static readonly Gen<DueRule> Rules = Gen.OneOf(
        Simple,
        Simple.Array[2, 4].Select(of => (DueRule)new LaterOf(of)),
        Simple.Array[2, 4].Select(of => (DueRule)new EarlierOf(of)));

    private static readonly Gen<Duty> Duties = Gen.Select(Rules, Gen.Enum<Repeats>(), Gen.Int[-1, 90], Gen.Bool, (rule, repeats, lead, first) =>
        Paper(rule, repeats) with { Lead = lead < 0 ? null : lead, NotFirstYear = first });

    private static readonly Gen<IReadOnlyList<DatedDuty>> Lists = Gen.Select(
        Duties.Array[0, 5], Days, Gen.Int[20, 400], Gen.Select(Kinds, Days, (e, d) => new RecordedEvent(e, d)).Array[0, 6], Gen.Int[0, 2],
        (duties, from, length, told, reason) =>
        {
            var pathway = Pathway([.. duties.Select((d, i) => d with { Id = $"duty-{i}" })]);
            var first = Under(pathway, $"{from:yyyy-MM-dd}", $"{from.AddDays(length):yyyy-MM-dd}", (SpanReason)reason);
            var second = Under(pathway, $"{from.AddDays(length + 1):yyyy-MM-dd}", because: SpanReason.Moves);
            return DutyList.Of(Wren, [first, second], Year, Events(told));
        });

    [Fact]
    public void Is_in_order_with_the_dateless_last() =>
        Lists.Sample(list => list.Zip(list.Skip(1)).All(pair => (pair.First.Due ?? DateOnly.MaxValue) <= (pair.Second.Due ?? DateOnly.MaxValue)));

    [Fact]
    public void Has_no_key_twice() =>
        Lists.Sample(list => list.Select(d => d.Key).Distinct().Count() == list.Count);

    [Fact]
    public void Begins_nothing_after_it_is_due() =>
        Lists.Sample(list => list.All(d => d.BeginBy is null == (d.Due is null || d.Duty.Lead is null) && !(d.BeginBy > d.Due)));

    [Fact]
    public void Has_an_origin_for_every_date_and_never_a_date_beside_a_missing_event() =>
        Lists.Sample(list => list.All(d => d.Due is null == (d.Origin == DueOrigin.None) && !(d.Due is not null && d.Missing is not null)));

    [Fact]
    public void Says_why_in_one_sentence() =>
        Lists.Sample(list => list.All(d => d.Why.EndsWith('.') && !char.IsLower(d.Why[0]) && d.Why.Count(c => c == '.') == 1));

    [Fact]
    public void Keeps_the_familys_date_whatever_the_rule() =>
        Gen.Select(Rules, Days.Where(d => d >= Day("2026-08-31") && d <= Day("2027-06-04"))).Sample((rule, own) =>
            List(Under(Pathway(Paper(rule)))).All(row =>
                List(Under(Pathway(Paper(rule))), dates: Own(row.Key, $"{own:yyyy-MM-dd}")).Single(r => r.Key == row.Key) is { Origin: DueOrigin.SetByFamily } kept
                && kept.Due == own));
}
