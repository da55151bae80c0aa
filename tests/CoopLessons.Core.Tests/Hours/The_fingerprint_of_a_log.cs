using CoopLessons.Core.Hours;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Hours;

public class The_fingerprint_of_a_log
{
    private static readonly LoggedEntry[] Log =
    [
        Entry(0xa, Tuesday.AddDays(1), 1, start: At(13, 5), place: Place.AnotherHome, split: [1.Of(Arithmetic), 1.Of(Art)]),
        Entry(1, Tuesday.AddDays(1), 95, Science, place: Place.Coop, revision: 3),
        Entry(2, Tuesday, 50, start: At(9), split: [1.Of(Science), 2.Of(Arithmetic)], touches: [Writing.Id]),
    ];

    // Computed by sha256sum (GNU coreutils 9.1) over the three lines as the type's summary describes them:
    // E=00000000-0000-0000-0000-00000000
    // printf '%s\n%s\n%s\n' "${E}0002|1|2026-11-03|09:00|Home|50|Arithmetic=2,Science=1,Writing=0" \
    //   "${E}0001|3|2026-11-04||Coop|95|Science=1" \
    //   "${E}000a|1|2026-11-04|13:05|AnotherHome|1|Arithmetic=1,Art=1" | sha256sum
    // 288116c5be86f7e879eda7492485c17c69f7a4d4e7fef9f9e5d0945f794ef493
    [Fact]
    public void Is_what_a_general_program_computes_from_the_described_lines() =>
        Assert.Equal("2881-16c5-be86", LogFingerprint.Of(WrensLedger(Log)));

    // sha256sum </dev/null
    // e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855
    [Fact]
    public void Of_an_empty_log_is_the_digest_of_nothing() => Assert.Equal("e3b0-c442-98fc", LogFingerprint.Of(WrensLedger()));

    [Fact]
    public void Changes_with_everything_that_is_counted_or_shown_of_an_entry()
    {
        var entry = Log[2];
        LoggedEntry[] changed =
        [
            entry with { Id = Id(3) },
            entry with { Revision = 2 },
            entry with { Date = Tuesday.AddDays(-1) },
            entry with { Start = At(9, 1) },
            entry with { Start = null },
            entry with { Place = Place.Elsewhere },
            entry with { Learners = [new LearnerTime(Wren, new Minutes(51))] },
            entry with { Split = [2.Of(Science), 1.Of(Arithmetic)] },
            entry with { Split = [1.Of(Science)] },
            entry with { Touches = [] },
            entry with { Touches = [Art.Id] },
        ];

        var marks = changed.Prepend(entry).Select(e => LogFingerprint.Of(WrensLedger(Log[0], Log[1], e))).ToList();

        Assert.Equal(changed.Length + 1, marks.Distinct().Count());
    }

    [Fact]
    public void Is_the_same_for_a_log_that_also_holds_another_learners_entries() =>
        Assert.Equal(
            LogFingerprint.Of(WrensLedger(Log)),
            LogFingerprint.Of(WrensLedger([.. Log, Entry(9, Tuesday, 0, learners: [new(Finch, new Minutes(30))])])));
}
