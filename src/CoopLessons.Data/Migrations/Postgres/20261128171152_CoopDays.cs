using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class CoopDays : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "CoopNews",
                table: "NoticeChoices",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<bool>(
                name: "WithCoops",
                table: "CalendarAddresses",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "AdultsAway",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    MeetingId = table.Column<Guid>(type: "uuid", nullable: false),
                    AdultId = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    SaidBy = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AdultsAway", x => new { x.CoopId, x.MeetingId, x.AdultId });
                    table.ForeignKey(
                        name: "FK_AdultsAway_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ArrivedPacks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    UnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    Text = table.Column<string>(type: "text", nullable: false),
                    BaseText = table.Column<string>(type: "text", nullable: false),
                    From = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Prints = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ArrivedPacks", x => new { x.FamilyId, x.UnitId });
                    table.ForeignKey(
                        name: "FK_ArrivedPacks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ArrivedPacks_Units_FamilyId_UnitId",
                        columns: x => new { x.FamilyId, x.UnitId },
                        principalTable: "Units",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AttendancesTaken",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    MeetingId = table.Column<Guid>(type: "uuid", nullable: false),
                    ClassId = table.Column<Guid>(type: "uuid", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Title = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Minutes = table.Column<int>(type: "integer", nullable: false),
                    Subjects = table.Column<string>(type: "text", nullable: false),
                    There = table.Column<string>(type: "text", nullable: false),
                    Away = table.Column<string>(type: "text", nullable: false),
                    By = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    TakenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AttendancesTaken", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_AttendancesTaken_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "BeenWords",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    MeetingId = table.Column<Guid>(type: "uuid", nullable: false),
                    ClassId = table.Column<Guid>(type: "uuid", nullable: false),
                    LearnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    EntryId = table.Column<Guid>(type: "uuid", nullable: true),
                    SaidAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BeenWords", x => new { x.FamilyId, x.MeetingId, x.ClassId, x.LearnerId });
                    table.ForeignKey(
                        name: "FK_BeenWords_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_BeenWords_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopAdults",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    LivesWithFamily = table.Column<Guid>(type: "uuid", nullable: true),
                    Guest = table.Column<bool>(type: "boolean", nullable: false),
                    Gone = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopAdults", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopAdults_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopClasses",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Title = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Does = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    PeriodId = table.Column<Guid>(type: "uuid", nullable: false),
                    RoomId = table.Column<Guid>(type: "uuid", nullable: false),
                    FromAge = table.Column<int>(type: "integer", nullable: false),
                    ToAge = table.Column<int>(type: "integer", nullable: false),
                    Size = table.Column<int>(type: "integer", nullable: false),
                    First = table.Column<DateOnly>(type: "date", nullable: false),
                    Last = table.Column<DateOnly>(type: "date", nullable: false),
                    OffSite = table.Column<bool>(type: "boolean", nullable: false),
                    Details = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopClasses", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopClasses_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopExpenses",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    What = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Cents = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    PaidById = table.Column<Guid>(type: "uuid", nullable: false),
                    PaidBy = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    By = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Shares = table.Column<string>(type: "text", nullable: false),
                    WrittenById = table.Column<Guid>(type: "uuid", nullable: false),
                    WrittenBy = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    HasReceipt = table.Column<bool>(type: "boolean", nullable: false),
                    StruckAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    StruckBy = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    StruckFor = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopExpenses", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopExpenses_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopFees",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    First = table.Column<DateOnly>(type: "date", nullable: false),
                    Last = table.Column<DateOnly>(type: "date", nullable: false),
                    FamilyCents = table.Column<int>(type: "integer", nullable: false),
                    LearnerCents = table.Column<int>(type: "integer", nullable: false),
                    MostCents = table.Column<int>(type: "integer", nullable: true),
                    WholeBefore = table.Column<DateOnly>(type: "date", nullable: false),
                    KeeperId = table.Column<Guid>(type: "uuid", nullable: false),
                    Keeper = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Families = table.Column<string>(type: "text", nullable: false),
                    StruckAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    StruckFor = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopFees", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopFees_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopMeetings",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Where = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Note = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    CalledOffAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    CalledOffFor = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    InsteadOf = table.Column<Guid>(type: "uuid", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopMeetings", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopMeetings_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopNotices",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    FromId = table.Column<Guid>(type: "uuid", nullable: false),
                    From = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Title = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Text = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    About = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    MeetingId = table.Column<Guid>(type: "uuid", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopNotices", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopNotices_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopOutings",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Where = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    MeetAt = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    From = table.Column<int>(type: "integer", nullable: false),
                    Back = table.Column<int>(type: "integer", nullable: false),
                    Note = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: false),
                    CancelDays = table.Column<int>(type: "integer", nullable: false),
                    ChildCents = table.Column<int>(type: "integer", nullable: false),
                    AdultCents = table.Column<int>(type: "integer", nullable: false),
                    ChildrenPerFreeAdult = table.Column<int>(type: "integer", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopOutings", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopOutings_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopPayments",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    FromId = table.Column<Guid>(type: "uuid", nullable: false),
                    From = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    ToId = table.Column<Guid>(type: "uuid", nullable: false),
                    To = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Cents = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    CameAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    CameSaidBy = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    TakenBackAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopPayments", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopPayments_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopPeriods",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    From = table.Column<int>(type: "integer", nullable: false),
                    Until = table.Column<int>(type: "integer", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopPeriods", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopPeriods_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopRooms",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Holds = table.Column<int>(type: "integer", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopRooms", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopRooms_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopTurns",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    MeetingId = table.Column<Guid>(type: "uuid", nullable: false),
                    RoleId = table.Column<Guid>(type: "uuid", nullable: false),
                    AdultId = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    TermId = table.Column<Guid>(type: "uuid", nullable: false),
                    Role = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Weight = table.Column<int>(type: "integer", nullable: false),
                    Adult = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Family = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Why = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopTurns", x => new { x.CoopId, x.MeetingId, x.RoleId, x.AdultId });
                    table.ForeignKey(
                        name: "FK_CoopTurns_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoverFigures",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Rules = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoverFigures", x => x.CoopId);
                    table.ForeignKey(
                        name: "FK_CoverFigures_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "MailChoices",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Since = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_MailChoices", x => x.PersonId);
                    table.ForeignKey(
                        name: "FK_MailChoices_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "MailToSend",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Key = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: true),
                    CoopId = table.Column<Guid>(type: "uuid", nullable: true),
                    NoticeId = table.Column<Guid>(type: "uuid", nullable: true),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Tries = table.Column<int>(type: "integer", nullable: false),
                    NextAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    HeldUntil = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    DoneAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_MailToSend", x => x.Id);
                    table.ForeignKey(
                        name: "FK_MailToSend_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "NewsSeen",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    UpTo = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_NewsSeen", x => new { x.FamilyId, x.CoopId });
                    table.ForeignKey(
                        name: "FK_NewsSeen_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_NewsSeen_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "RoomChildren",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    RoomId = table.Column<Guid>(type: "uuid", nullable: false),
                    Young = table.Column<int>(type: "integer", nullable: false),
                    Older = table.Column<int>(type: "integer", nullable: false),
                    OffSite = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RoomChildren", x => new { x.CoopId, x.RoomId });
                    table.ForeignKey(
                        name: "FK_RoomChildren_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SharedUnits",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Title = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Author = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Newest = table.Column<int>(type: "integer", nullable: false),
                    PublishedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SharedUnits", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_SharedUnits_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "TurnRoles",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Order = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Weight = table.Column<int>(type: "integer", nullable: false),
                    Places = table.Column<int>(type: "integer", nullable: false),
                    RoomId = table.Column<Guid>(type: "uuid", nullable: true),
                    ForAll = table.Column<bool>(type: "boolean", nullable: false),
                    May = table.Column<string>(type: "text", nullable: false),
                    Ended = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TurnRoles", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_TurnRoles_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "TurnTerms",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    First = table.Column<DateOnly>(type: "date", nullable: false),
                    Last = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    TakenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Proof = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: false),
                    Families = table.Column<string>(type: "text", nullable: false),
                    OpenPlaces = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TurnTerms", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_TurnTerms_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "TurnWishes",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    AdultId = table.Column<Guid>(type: "uuid", nullable: false),
                    RoleId = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Liked = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TurnWishes", x => new { x.CoopId, x.AdultId, x.RoleId });
                    table.ForeignKey(
                        name: "FK_TurnWishes_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "UnitOrigins",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    UnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    SharedId = table.Column<Guid>(type: "uuid", nullable: false),
                    CoopId = table.Column<Guid>(type: "uuid", nullable: true),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    From = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    BaseText = table.Column<string>(type: "text", nullable: false),
                    Subjects = table.Column<string>(type: "text", nullable: false),
                    Open = table.Column<string>(type: "text", nullable: false),
                    Known = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_UnitOrigins", x => new { x.FamilyId, x.UnitId });
                    table.ForeignKey(
                        name: "FK_UnitOrigins_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_UnitOrigins_Units_FamilyId_UnitId",
                        columns: x => new { x.FamilyId, x.UnitId },
                        principalTable: "Units",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ClassListLines",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    ClassId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    What = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Child = table.Column<Guid>(type: "uuid", nullable: true),
                    Other = table.Column<Guid>(type: "uuid", nullable: true),
                    Size = table.Column<int>(type: "integer", nullable: true),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ClassListLines", x => new { x.CoopId, x.ClassId, x.Number });
                    table.ForeignKey(
                        name: "FK_ClassListLines_CoopClasses_CoopId_ClassId",
                        columns: x => new { x.CoopId, x.ClassId },
                        principalTable: "CoopClasses",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ClassListLines_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopReceipts",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    ExpenseId = table.Column<Guid>(type: "uuid", nullable: false),
                    Jpeg = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopReceipts", x => new { x.CoopId, x.ExpenseId });
                    table.ForeignKey(
                        name: "FK_CoopReceipts_CoopExpenses_CoopId_ExpenseId",
                        columns: x => new { x.CoopId, x.ExpenseId },
                        principalTable: "CoopExpenses",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_CoopReceipts_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "OutingAnswers",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    OutingId = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Children = table.Column<string>(type: "text", nullable: false),
                    Adults = table.Column<string>(type: "text", nullable: false),
                    CancelledOn = table.Column<DateOnly>(type: "date", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OutingAnswers", x => new { x.CoopId, x.OutingId, x.FamilyId });
                    table.ForeignKey(
                        name: "FK_OutingAnswers_CoopOutings_CoopId_OutingId",
                        columns: x => new { x.CoopId, x.OutingId },
                        principalTable: "CoopOutings",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_OutingAnswers_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "OfferedChanges",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    From = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Text = table.Column<string>(type: "text", nullable: false),
                    Why = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OfferedChanges", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_OfferedChanges_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_OfferedChanges_SharedUnits_CoopId_SharedUnitId",
                        columns: x => new { x.CoopId, x.SharedUnitId },
                        principalTable: "SharedUnits",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SharedRevisions",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Author = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Note = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: false),
                    Hash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    Text = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SharedRevisions", x => new { x.CoopId, x.SharedUnitId, x.Number });
                    table.ForeignKey(
                        name: "FK_SharedRevisions_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SharedRevisions_SharedUnits_CoopId_SharedUnitId",
                        columns: x => new { x.CoopId, x.SharedUnitId },
                        principalTable: "SharedUnits",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "UnitUses",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Since = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_UnitUses", x => new { x.CoopId, x.FamilyId, x.SharedUnitId });
                    table.ForeignKey(
                        name: "FK_UnitUses_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_UnitUses_SharedUnits_CoopId_SharedUnitId",
                        columns: x => new { x.CoopId, x.SharedUnitId },
                        principalTable: "SharedUnits",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "OfferAnswers",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    OfferId = table.Column<Guid>(type: "uuid", nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Taken = table.Column<int>(type: "integer", nullable: false),
                    Of = table.Column<int>(type: "integer", nullable: false),
                    Word = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OfferAnswers", x => new { x.CoopId, x.OfferId });
                    table.ForeignKey(
                        name: "FK_OfferAnswers_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_OfferAnswers_OfferedChanges_CoopId_OfferId",
                        columns: x => new { x.CoopId, x.OfferId },
                        principalTable: "OfferedChanges",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SharedPrints",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "uuid", nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Activity = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Printable = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    FileName = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Hash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    Kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Bytes = table.Column<long>(type: "bigint", nullable: false),
                    Pages = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SharedPrints", x => new { x.CoopId, x.SharedUnitId, x.Number, x.Activity, x.Printable });
                    table.ForeignKey(
                        name: "FK_SharedPrints_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SharedPrints_SharedRevisions_CoopId_SharedUnitId_Number",
                        columns: x => new { x.CoopId, x.SharedUnitId, x.Number },
                        principalTable: "SharedRevisions",
                        principalColumns: new[] { "CoopId", "SharedUnitId", "Number" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_AttendancesTaken_CoopId_MeetingId_ClassId",
                table: "AttendancesTaken",
                columns: new[] { "CoopId", "MeetingId", "ClassId" });

            migrationBuilder.CreateIndex(
                name: "IX_BeenWords_FamilyId_LearnerId",
                table: "BeenWords",
                columns: new[] { "FamilyId", "LearnerId" });

            migrationBuilder.CreateIndex(
                name: "IX_ClassListLines_CoopId_Id",
                table: "ClassListLines",
                columns: new[] { "CoopId", "Id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_CoopAdults_CoopId_FamilyId",
                table: "CoopAdults",
                columns: new[] { "CoopId", "FamilyId" });

            migrationBuilder.CreateIndex(
                name: "IX_CoopMeetings_CoopId_On",
                table: "CoopMeetings",
                columns: new[] { "CoopId", "On" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_CoopNotices_CoopId_At",
                table: "CoopNotices",
                columns: new[] { "CoopId", "At" });

            migrationBuilder.CreateIndex(
                name: "IX_CoopTurns_CoopId_TermId",
                table: "CoopTurns",
                columns: new[] { "CoopId", "TermId" });

            migrationBuilder.CreateIndex(
                name: "IX_MailToSend_DoneAt_NextAt",
                table: "MailToSend",
                columns: new[] { "DoneAt", "NextAt" });

            migrationBuilder.CreateIndex(
                name: "IX_MailToSend_PersonId_Key",
                table: "MailToSend",
                columns: new[] { "PersonId", "Key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_NewsSeen_CoopId",
                table: "NewsSeen",
                column: "CoopId");

            migrationBuilder.CreateIndex(
                name: "IX_OfferedChanges_CoopId_SharedUnitId",
                table: "OfferedChanges",
                columns: new[] { "CoopId", "SharedUnitId" });

            migrationBuilder.CreateIndex(
                name: "IX_UnitOrigins_FamilyId_SharedId",
                table: "UnitOrigins",
                columns: new[] { "FamilyId", "SharedId" });

            migrationBuilder.CreateIndex(
                name: "IX_UnitUses_CoopId_SharedUnitId",
                table: "UnitUses",
                columns: new[] { "CoopId", "SharedUnitId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AdultsAway");

            migrationBuilder.DropTable(
                name: "ArrivedPacks");

            migrationBuilder.DropTable(
                name: "AttendancesTaken");

            migrationBuilder.DropTable(
                name: "BeenWords");

            migrationBuilder.DropTable(
                name: "ClassListLines");

            migrationBuilder.DropTable(
                name: "CoopAdults");

            migrationBuilder.DropTable(
                name: "CoopFees");

            migrationBuilder.DropTable(
                name: "CoopMeetings");

            migrationBuilder.DropTable(
                name: "CoopNotices");

            migrationBuilder.DropTable(
                name: "CoopPayments");

            migrationBuilder.DropTable(
                name: "CoopPeriods");

            migrationBuilder.DropTable(
                name: "CoopReceipts");

            migrationBuilder.DropTable(
                name: "CoopRooms");

            migrationBuilder.DropTable(
                name: "CoopTurns");

            migrationBuilder.DropTable(
                name: "CoverFigures");

            migrationBuilder.DropTable(
                name: "MailChoices");

            migrationBuilder.DropTable(
                name: "MailToSend");

            migrationBuilder.DropTable(
                name: "NewsSeen");

            migrationBuilder.DropTable(
                name: "OfferAnswers");

            migrationBuilder.DropTable(
                name: "OutingAnswers");

            migrationBuilder.DropTable(
                name: "RoomChildren");

            migrationBuilder.DropTable(
                name: "SharedPrints");

            migrationBuilder.DropTable(
                name: "TurnRoles");

            migrationBuilder.DropTable(
                name: "TurnTerms");

            migrationBuilder.DropTable(
                name: "TurnWishes");

            migrationBuilder.DropTable(
                name: "UnitOrigins");

            migrationBuilder.DropTable(
                name: "UnitUses");

            migrationBuilder.DropTable(
                name: "CoopClasses");

            migrationBuilder.DropTable(
                name: "CoopExpenses");

            migrationBuilder.DropTable(
                name: "OfferedChanges");

            migrationBuilder.DropTable(
                name: "CoopOutings");

            migrationBuilder.DropTable(
                name: "SharedRevisions");

            migrationBuilder.DropTable(
                name: "SharedUnits");

            migrationBuilder.DropColumn(
                name: "CoopNews",
                table: "NoticeChoices");

            migrationBuilder.DropColumn(
                name: "WithCoops",
                table: "CalendarAddresses");
        }
    }
}
