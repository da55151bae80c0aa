using System.Globalization;
using System.Linq.Expressions;
using System.Reflection;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Units;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Data.Coops.News;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Data.Credits;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Families.Going;
using CoopLessons.Data.Files;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Log.Sheets;
using CoopLessons.Data.Notices;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.People;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Sealing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using Microsoft.EntityFrameworkCore.ValueGeneration;

namespace CoopLessons.Data;

/// <summary>
/// The repository and the unit of work. What it shows and saves is limited to the family in <see cref="Current"/>.
/// The same model serves both databases; each has a thin context of its own for its migrations.
/// </summary>
public abstract class AppDb(DbContextOptions options, CurrentFamily current) : IdentityUserContext<Person, Guid>(options)
{
    /// <summary>Name of the filter that shows one family's rows; ignored only where a comment says why.</summary>
    public const string FamilyFilter = "family";

    /// <summary>Name of the filter that shows the rows of a family's co-ops; ignored only where a comment says why.</summary>
    public const string CoopFilter = "coop";

    public CurrentFamily Current { get; } = current;

    /// <summary>Set where what is saved next may correct a sealed year; null everywhere else.</summary>
    public LateCorrection? Late { get; set; }

    /// <summary>A whole family is being taken in, its sealed years with their records among its rows: nothing of them is changed by that.</summary>
    internal bool TakesFamilyIn { get; set; }

    public DbSet<SignInSession> SignInSessions => Set<SignInSession>();
    public DbSet<Family> Families => Set<Family>();
    public DbSet<Membership> Memberships => Set<Membership>();
    public DbSet<Invitation> Invitations => Set<Invitation>();
    public DbSet<LeavingReceipt> LeavingReceipts => Set<LeavingReceipt>();
    public DbSet<Learner> Learners => Set<Learner>();
    public DbSet<FamilySubject> Subjects => Set<FamilySubject>();
    public DbSet<SchoolYear> SchoolYears => Set<SchoolYear>();
    public DbSet<Unit> Units => Set<Unit>();
    public DbSet<Activity> Activities => Set<Activity>();
    public DbSet<UnitOrigin> UnitOrigins => Set<UnitOrigin>();
    public DbSet<ArrivedPack> ArrivedPacks => Set<ArrivedPack>();
    public DbSet<PlannedSession> PlannedSessions => Set<PlannedSession>();
    public DbSet<IllSpell> IllSpells => Set<IllSpell>();
    public DbSet<PlanStep> PlanSteps => Set<PlanStep>();
    public DbSet<LogEntry> LogEntries => Set<LogEntry>();
    public DbSet<LogRevision> LogRevisions => Set<LogRevision>();
    public DbSet<BroughtSheet> BroughtSheets => Set<BroughtSheet>();
    public DbSet<LogImport> LogImports => Set<LogImport>();
    public DbSet<DayMark> DayMarks => Set<DayMark>();
    public DbSet<LearnerPathway> LearnerPathways => Set<LearnerPathway>();
    public DbSet<LearnerGrade> LearnerGrades => Set<LearnerGrade>();
    public DbSet<OwnPathway> OwnPathways => Set<OwnPathway>();
    public DbSet<SubjectReading> SubjectReadings => Set<SubjectReading>();
    public DbSet<RecordedLegalEvent> LegalEvents => Set<RecordedLegalEvent>();
    public DbSet<DutyMark> DutyMarks => Set<DutyMark>();
    public DbSet<CalendarAddress> CalendarAddresses => Set<CalendarAddress>();
    public DbSet<HighSchoolCourse> HighSchoolCourses => Set<HighSchoolCourse>();
    public DbSet<HighSchoolRule> HighSchoolRules => Set<HighSchoolRule>();
    public DbSet<CoursePick> CoursePicks => Set<CoursePick>();
    public DbSet<OtherStudy> OtherStudies => Set<OtherStudy>();
    public DbSet<GradingScale> GradingScales => Set<GradingScale>();
    public DbSet<TranscriptDetails> TranscriptDetails => Set<TranscriptDetails>();
    public DbSet<Assessment> Assessments => Set<Assessment>();

    public DbSet<Course> Courses => Set<Course>();
    public DbSet<LessonLoop> Loops => Set<LessonLoop>();
    public DbSet<Appointment> Appointments => Set<Appointment>();
    public DbSet<TeachingAdult> TeachingAdults => Set<TeachingAdult>();
    public DbSet<DayPattern> DayPatterns => Set<DayPattern>();
    public DbSet<LearnerSitting> Sittings => Set<LearnerSitting>();
    public DbSet<WeeklyWish> Wishes => Set<WeeklyWish>();

    public DbSet<AheadMark> AheadMarks => Set<AheadMark>();
    public DbSet<BookTitle> Books => Set<BookTitle>();
    public DbSet<LibraryCard> LibraryCards => Set<LibraryCard>();
    public DbSet<BookMeeting> BookMeetings => Set<BookMeeting>();
    public DbSet<ReadingSitting> ReadingSittings => Set<ReadingSitting>();
    public DbSet<ReadAloudPlan> ReadAloudPlans => Set<ReadAloudPlan>();
    public DbSet<Good> Goods => Set<Good>();
    public DbSet<Swap> Swaps => Set<Swap>();
    public DbSet<ShelfCount> ShelfCounts => Set<ShelfCount>();
    public DbSet<Purchase> Purchases => Set<Purchase>();
    public DbSet<ShopTick> ShopTicks => Set<ShopTick>();
    public DbSet<ListedByHand> ListedByHand => Set<ListedByHand>();
    public DbSet<StoredFile> StoredFiles => Set<StoredFile>();
    public DbSet<Piece> Pieces => Set<Piece>();
    public DbSet<Portfolio> Portfolios => Set<Portfolio>();
    public DbSet<TermReport> TermReports => Set<TermReport>();
    public DbSet<ReaderLink> ReaderLinks => Set<ReaderLink>();
    public DbSet<ReaderLook> ReaderLooks => Set<ReaderLook>();
    public DbSet<PrintSource> PrintSources => Set<PrintSource>();
    public DbSet<PrintHabits> PrintHabits => Set<PrintHabits>();
    public DbSet<PrintedPacket> PrintedPackets => Set<PrintedPacket>();

    public DbSet<OwnList> OwnLists => Set<OwnList>();
    public DbSet<FamilyTablet> FamilyTablets => Set<FamilyTablet>();
    public DbSet<ChildSaid> ChildrenSaid => Set<ChildSaid>();
    public DbSet<NoticeDevice> NoticeDevices => Set<NoticeDevice>();
    public DbSet<NoticeChoice> NoticeChoices => Set<NoticeChoice>();
    public DbSet<SentNotice> SentNotices => Set<SentNotice>();
    public DbSet<MailChoice> MailChoices => Set<MailChoice>();
    public DbSet<MailToSend> MailToSend => Set<MailToSend>();

    public DbSet<Coop> Coops => Set<Coop>();
    public DbSet<CoopFamily> CoopFamilies => Set<CoopFamily>();
    public DbSet<CoopInvitation> CoopInvitations => Set<CoopInvitation>();
    public DbSet<ShownLearner> ShownLearners => Set<ShownLearner>();
    public DbSet<ShownContact> ShownContacts => Set<ShownContact>();
    public DbSet<SharedUnit> SharedUnits => Set<SharedUnit>();
    public DbSet<SharedRevision> SharedRevisions => Set<SharedRevision>();
    public DbSet<SharedPrint> SharedPrints => Set<SharedPrint>();
    public DbSet<UnitUse> UnitUses => Set<UnitUse>();
    public DbSet<OfferedChange> OfferedChanges => Set<OfferedChange>();
    public DbSet<OfferAnswer> OfferAnswers => Set<OfferAnswer>();
    public DbSet<CoopMeeting> CoopMeetings => Set<CoopMeeting>();
    public DbSet<CoopPeriod> CoopPeriods => Set<CoopPeriod>();
    public DbSet<CoopRoom> CoopRooms => Set<CoopRoom>();
    public DbSet<CoopAdult> CoopAdults => Set<CoopAdult>();
    public DbSet<CoopClass> CoopClasses => Set<CoopClass>();
    public DbSet<ClassListLine> ClassListLines => Set<ClassListLine>();
    public DbSet<AttendanceTaken> AttendancesTaken => Set<AttendanceTaken>();
    public DbSet<BeenWord> BeenWords => Set<BeenWord>();
    public DbSet<CoopOuting> CoopOutings => Set<CoopOuting>();
    public DbSet<OutingAnswer> OutingAnswers => Set<OutingAnswer>();

    public DbSet<TurnRole> TurnRoles => Set<TurnRole>();
    public DbSet<CoverFigures> CoverFigures => Set<CoverFigures>();
    public DbSet<RoomChildren> RoomChildren => Set<RoomChildren>();
    public DbSet<TurnTerm> TurnTerms => Set<TurnTerm>();
    public DbSet<CoopTurn> CoopTurns => Set<CoopTurn>();
    public DbSet<TurnWish> TurnWishes => Set<TurnWish>();
    public DbSet<AdultAway> AdultsAway => Set<AdultAway>();
    public DbSet<CoopExpense> CoopExpenses => Set<CoopExpense>();
    public DbSet<CoopReceipt> CoopReceipts => Set<CoopReceipt>();
    public DbSet<CoopPayment> CoopPayments => Set<CoopPayment>();
    public DbSet<CoopFee> CoopFees => Set<CoopFee>();
    public DbSet<CoopNotice> CoopNotices => Set<CoopNotice>();
    public DbSet<NewsSeen> NewsSeen => Set<NewsSeen>();

    public DbSet<SealedYear> SealedYears => Set<SealedYear>();
    public DbSet<SealedRecord> SealedRecords => Set<SealedRecord>();
    public DbSet<Amendment> Amendments => Set<Amendment>();
    public DbSet<PaperMade> PapersMade => Set<PaperMade>();
    public DbSet<KnownMark> KnownMarks => Set<KnownMark>();

    private Guid? FamilyId => Current.FamilyId;

    private IReadOnlyList<Guid> CoopIds => Current.Coops;

    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default) => SealGuard.Minds(this)
        ? SealGuard.SaveAsync(this, () => base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken), cancellationToken)
        : base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(AppDb).Assembly);
        builder.Entity<Person>().Property(p => p.Name).HasMaxLength(Person.LongestName);
        builder.Entity<Person>().Ignore(p => p.IsNameOnly).ToTable("People");
        builder.Entity<IdentityUserClaim<Guid>>().ToTable("PersonClaims");
        builder.Entity<IdentityUserLogin<Guid>>().ToTable("PersonLogins");
        builder.Entity<IdentityUserToken<Guid>>().ToTable("PersonTokens");
        builder.Entity<Family>().HasQueryFilter(FamilyFilter, f => f.Id == FamilyId);

        var own = typeof(AppDb).GetMethod(nameof(OwnByFamily), BindingFlags.Instance | BindingFlags.NonPublic)!;
        foreach (var type in builder.Model.GetEntityTypes().Select(t => t.ClrType).Where(t => t != typeof(Family) && t.IsAssignableTo(typeof(IFamilyOwned))).ToList())
            own.MakeGenericMethod(type).Invoke(this, [builder]);
        builder.Entity<Coop>().HasQueryFilter(CoopFilter, c => CoopIds.Contains(c.Id));
        var shared = typeof(AppDb).GetMethod(nameof(OwnByCoop), BindingFlags.Instance | BindingFlags.NonPublic)!;
        foreach (var type in builder.Model.GetEntityTypes().Select(t => t.ClrType).Where(t => t != typeof(Coop) && t.IsAssignableTo(typeof(ICoopOwned))).ToList())
            shared.MakeGenericMethod(type).Invoke(this, [builder]);
        foreach (var type in builder.Model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(IVersioned))))
            type.FindProperty(nameof(IVersioned.Version))!.IsConcurrencyToken = true;
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<DateTime>().HaveConversion<UtcConverter>();
        configurationBuilder.Properties<decimal>().HaveConversion<PlainNumber>().HaveMaxLength(40);
        configurationBuilder.Properties<TimeOnly>().HaveConversion<MinuteOfDay>();
        configurationBuilder.Properties<Role>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<Place>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<ActivityKind>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<AdultNeed>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<SpanReason>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<LegalEvent>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<SessionState>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<AppointmentKind>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<StoredKind>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<PaperSize>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<DayOfWeek>().HaveConversion<string>().HaveMaxLength(20);
    }

    private void OwnByFamily<T>(ModelBuilder builder)
        where T : class, IFamilyOwned
    {
        Expression<Func<T, bool>> mine = row => row.FamilyId == FamilyId;
        var entity = builder.Entity<T>();
        entity.HasQueryFilter(FamilyFilter, mine);
        entity.Property(row => row.FamilyId).ValueGeneratedOnAdd().HasValueGenerator<FamilyStamp>();
        entity.HasOne<Family>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Cascade);
    }

    private void OwnByCoop<T>(ModelBuilder builder)
        where T : class, ICoopOwned
    {
        Expression<Func<T, bool>> ours = row => CoopIds.Contains(row.CoopId);
        var entity = builder.Entity<T>();
        entity.HasQueryFilter(CoopFilter, ours);
        entity.HasOne<Coop>().WithMany().HasForeignKey(row => row.CoopId).OnDelete(DeleteBehavior.Cascade);
    }

    private sealed class FamilyStamp : ValueGenerator<Guid>
    {
        public override bool GeneratesTemporaryValues => false;

        public override Guid Next(EntityEntry entry) => ((AppDb)entry.Context).Current.FamilyId
            ?? throw new ForeignFamilyException($"A {entry.Metadata.ClrType.Name} was added with no family at hand.");
    }

    /// <summary>Quantities are kept as they are written: neither database has a column that holds every decimal exactly as the other does.</summary>
    private sealed class PlainNumber()
        : ValueConverter<decimal, string>(v => v.ToString(CultureInfo.InvariantCulture), v => decimal.Parse(v, CultureInfo.InvariantCulture));

    /// <summary>A time of day as whole minutes since midnight: SQLite has no type for it.</summary>
    private sealed class MinuteOfDay()
        : ValueConverter<TimeOnly, int>(v => v.Hour * 60 + v.Minute, v => new TimeOnly(v / 60, v % 60));

    private sealed class UtcConverter()
        : ValueConverter<DateTime, DateTime>(v => v.ToUniversalTime(), v => DateTime.SpecifyKind(v, DateTimeKind.Utc));
}

/// <summary>The embedded database: one file.</summary>
public sealed class SqliteAppDb(DbContextOptions<SqliteAppDb> options, CurrentFamily current) : AppDb(options, current);

/// <summary>The database of servers with many families. One program serves it: keys and files lie in that program's data folder.</summary>
public sealed class PostgresAppDb(DbContextOptions<PostgresAppDb> options, CurrentFamily current) : AppDb(options, current);
