using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Proof : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_CoopFamilies_Families_FamilyId",
                table: "CoopFamilies");

            migrationBuilder.AddColumn<DateTime>(
                name: "LeavesAt",
                table: "Families",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "LeavingAskedBy",
                table: "Families",
                type: "TEXT",
                maxLength: 60,
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "Assessments",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    What = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    By = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Qualification = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Outcome = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    Results = table.Column<string>(type: "TEXT", nullable: false),
                    PieceId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Assessments", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Assessments_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Assessments_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Assessments_Pieces_FamilyId_PieceId",
                        columns: x => new { x.FamilyId, x.PieceId },
                        principalTable: "Pieces",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "BroughtSheets",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    FileName = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Content = table.Column<byte[]>(type: "BLOB", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Choices = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BroughtSheets", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_BroughtSheets_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "GradingScales",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Steps = table.Column<string>(type: "TEXT", nullable: false),
                    HonorsAdds = table.Column<int>(type: "INTEGER", nullable: false),
                    CollegeAdds = table.Column<int>(type: "INTEGER", nullable: false),
                    PerCredit = table.Column<int>(type: "INTEGER", nullable: false),
                    CollegePerCredit = table.Column<int>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_GradingScales", x => x.FamilyId);
                    table.ForeignKey(
                        name: "FK_GradingScales_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "HighSchoolCourses",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Order = table.Column<int>(type: "INTEGER", nullable: false),
                    Title = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Area = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Level = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    First = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Last = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Basis = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Aim = table.Column<int>(type: "INTEGER", nullable: false),
                    CollegeCredits = table.Column<int>(type: "INTEGER", nullable: true),
                    College = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Marked = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Mark = table.Column<string>(type: "TEXT", maxLength: 6, nullable: false),
                    Awarded = table.Column<int>(type: "INTEGER", nullable: true),
                    Description = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    Lacking = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_HighSchoolCourses", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_HighSchoolCourses_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_HighSchoolCourses_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "KnownMarks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Mark = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Opening = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_KnownMarks", x => new { x.FamilyId, x.SchoolYearId, x.LearnerId, x.Mark });
                    table.ForeignKey(
                        name: "FK_KnownMarks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "LeavingReceipts",
                columns: table => new
                {
                    SecretHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: true),
                    AskedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    DueAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    StoppedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    DoneAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Rows = table.Column<int>(type: "INTEGER", nullable: false),
                    Files = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LeavingReceipts", x => x.SecretHash);
                });

            migrationBuilder.CreateTable(
                name: "LogImports",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    FileName = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    By = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Lines = table.Column<string>(type: "TEXT", nullable: false),
                    Bad = table.Column<int>(type: "INTEGER", nullable: false),
                    There = table.Column<int>(type: "INTEGER", nullable: false),
                    UndoneAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LogImports", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_LogImports_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Portfolios",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Parts = table.Column<string>(type: "TEXT", nullable: false),
                    Reader = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Opening = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    Subjects = table.Column<string>(type: "TEXT", nullable: false),
                    Pairs = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Portfolios", x => new { x.FamilyId, x.LearnerId, x.SchoolYearId });
                    table.ForeignKey(
                        name: "FK_Portfolios_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Portfolios_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Portfolios_SchoolYears_FamilyId_SchoolYearId",
                        columns: x => new { x.FamilyId, x.SchoolYearId },
                        principalTable: "SchoolYears",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ReaderLinks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reader = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Parts = table.Column<string>(type: "TEXT", nullable: false),
                    EndsOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ReaderLinks", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_ReaderLinks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ReaderLinks_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ReaderLinks_SchoolYears_FamilyId_SchoolYearId",
                        columns: x => new { x.FamilyId, x.SchoolYearId },
                        principalTable: "SchoolYears",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SealedYears",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    YearName = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    First = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Last = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    FamilyName = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    CountingPolicy = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false),
                    MinimumDay = table.Column<int>(type: "INTEGER", nullable: false),
                    SealedOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    SealedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    SealedById = table.Column<Guid>(type: "TEXT", nullable: false),
                    SealedBy = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SealedYears", x => new { x.FamilyId, x.SchoolYearId });
                    table.ForeignKey(
                        name: "FK_SealedYears_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SealedYears_SchoolYears_FamilyId_SchoolYearId",
                        columns: x => new { x.FamilyId, x.SchoolYearId },
                        principalTable: "SchoolYears",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "TermReports",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    DutyKey = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Title = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    First = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Last = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Parts = table.Column<string>(type: "TEXT", nullable: false),
                    ExplainUnder = table.Column<int>(type: "INTEGER", nullable: true),
                    Cite = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Opening = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    Subjects = table.Column<string>(type: "TEXT", nullable: false),
                    Totals = table.Column<string>(type: "TEXT", nullable: true),
                    FinishedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    FinishedBy = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TermReports", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_TermReports_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_TermReports_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_TermReports_SchoolYears_FamilyId_SchoolYearId",
                        columns: x => new { x.FamilyId, x.SchoolYearId },
                        principalTable: "SchoolYears",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "TranscriptDetails",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    School = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Address = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    FullName = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    TellsBirthDate = table.Column<bool>(type: "INTEGER", nullable: false),
                    Graduated = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Signer = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Paper = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TranscriptDetails", x => new { x.FamilyId, x.LearnerId });
                    table.ForeignKey(
                        name: "FK_TranscriptDetails_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_TranscriptDetails_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoursePicks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CourseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    EntryId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SubjectId = table.Column<Guid>(type: "TEXT", nullable: false),
                    IsIn = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoursePicks", x => new { x.FamilyId, x.CourseId, x.EntryId, x.SubjectId });
                    table.ForeignKey(
                        name: "FK_CoursePicks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_CoursePicks_HighSchoolCourses_FamilyId_CourseId",
                        columns: x => new { x.FamilyId, x.CourseId },
                        principalTable: "HighSchoolCourses",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_CoursePicks_LogEntries_FamilyId_EntryId",
                        columns: x => new { x.FamilyId, x.EntryId },
                        principalTable: "LogEntries",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_CoursePicks_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "HighSchoolRules",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    CourseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SubjectId = table.Column<Guid>(type: "TEXT", nullable: false),
                    First = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Last = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    UnitId = table.Column<Guid>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_HighSchoolRules", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_HighSchoolRules_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_HighSchoolRules_HighSchoolCourses_FamilyId_CourseId",
                        columns: x => new { x.FamilyId, x.CourseId },
                        principalTable: "HighSchoolCourses",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_HighSchoolRules_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "OtherStudies",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    CourseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    First = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Last = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Minutes = table.Column<int>(type: "INTEGER", nullable: false),
                    What = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    With = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OtherStudies", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_OtherStudies_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_OtherStudies_HighSchoolCourses_FamilyId_CourseId",
                        columns: x => new { x.FamilyId, x.CourseId },
                        principalTable: "HighSchoolCourses",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ReaderLooks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LinkId = table.Column<Guid>(type: "TEXT", nullable: false),
                    What = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ReaderLooks", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_ReaderLooks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ReaderLooks_ReaderLinks_FamilyId_LinkId",
                        columns: x => new { x.FamilyId, x.LinkId },
                        principalTable: "ReaderLinks",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SealedRecords",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerName = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    Fingerprint = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SealedRecords", x => new { x.FamilyId, x.SchoolYearId, x.LearnerId });
                    table.ForeignKey(
                        name: "FK_SealedRecords_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SealedRecords_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" });
                    table.ForeignKey(
                        name: "FK_SealedRecords_SealedYears_FamilyId_SchoolYearId",
                        columns: x => new { x.FamilyId, x.SchoolYearId },
                        principalTable: "SealedYears",
                        principalColumns: new[] { "FamilyId", "SchoolYearId" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Amendments",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    EntryId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Why = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Changes = table.Column<string>(type: "TEXT", nullable: false),
                    AmendedOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ById = table.Column<Guid>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    Fingerprint = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Amendments", x => new { x.FamilyId, x.SchoolYearId, x.LearnerId, x.Number });
                    table.ForeignKey(
                        name: "FK_Amendments_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Amendments_SealedRecords_FamilyId_SchoolYearId_LearnerId",
                        columns: x => new { x.FamilyId, x.SchoolYearId, x.LearnerId },
                        principalTable: "SealedRecords",
                        principalColumns: new[] { "FamilyId", "SchoolYearId", "LearnerId" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "PapersMade",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FileMark = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Fingerprint = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    MadeOn = table.Column<DateOnly>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PapersMade", x => new { x.FamilyId, x.SchoolYearId, x.LearnerId, x.FileMark });
                    table.ForeignKey(
                        name: "FK_PapersMade_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_PapersMade_SealedRecords_FamilyId_SchoolYearId_LearnerId",
                        columns: x => new { x.FamilyId, x.SchoolYearId, x.LearnerId },
                        principalTable: "SealedRecords",
                        principalColumns: new[] { "FamilyId", "SchoolYearId", "LearnerId" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Assessments_FamilyId_LearnerId",
                table: "Assessments",
                columns: new[] { "FamilyId", "LearnerId" });

            migrationBuilder.CreateIndex(
                name: "IX_Assessments_FamilyId_PieceId",
                table: "Assessments",
                columns: new[] { "FamilyId", "PieceId" });

            migrationBuilder.CreateIndex(
                name: "IX_CoursePicks_FamilyId_EntryId",
                table: "CoursePicks",
                columns: new[] { "FamilyId", "EntryId" });

            migrationBuilder.CreateIndex(
                name: "IX_CoursePicks_FamilyId_SubjectId",
                table: "CoursePicks",
                columns: new[] { "FamilyId", "SubjectId" });

            migrationBuilder.CreateIndex(
                name: "IX_HighSchoolCourses_FamilyId_LearnerId",
                table: "HighSchoolCourses",
                columns: new[] { "FamilyId", "LearnerId" });

            migrationBuilder.CreateIndex(
                name: "IX_HighSchoolRules_FamilyId_CourseId",
                table: "HighSchoolRules",
                columns: new[] { "FamilyId", "CourseId" });

            migrationBuilder.CreateIndex(
                name: "IX_HighSchoolRules_FamilyId_SubjectId",
                table: "HighSchoolRules",
                columns: new[] { "FamilyId", "SubjectId" });

            migrationBuilder.CreateIndex(
                name: "IX_KnownMarks_Opening",
                table: "KnownMarks",
                column: "Opening");

            migrationBuilder.CreateIndex(
                name: "IX_LeavingReceipts_DueAt",
                table: "LeavingReceipts",
                column: "DueAt");

            migrationBuilder.CreateIndex(
                name: "IX_LeavingReceipts_FamilyId",
                table: "LeavingReceipts",
                column: "FamilyId");

            migrationBuilder.CreateIndex(
                name: "IX_OtherStudies_FamilyId_CourseId",
                table: "OtherStudies",
                columns: new[] { "FamilyId", "CourseId" });

            migrationBuilder.CreateIndex(
                name: "IX_Portfolios_FamilyId_SchoolYearId",
                table: "Portfolios",
                columns: new[] { "FamilyId", "SchoolYearId" });

            migrationBuilder.CreateIndex(
                name: "IX_ReaderLinks_FamilyId_LearnerId",
                table: "ReaderLinks",
                columns: new[] { "FamilyId", "LearnerId" });

            migrationBuilder.CreateIndex(
                name: "IX_ReaderLinks_FamilyId_SchoolYearId",
                table: "ReaderLinks",
                columns: new[] { "FamilyId", "SchoolYearId" });

            migrationBuilder.CreateIndex(
                name: "IX_ReaderLinks_SecretHash",
                table: "ReaderLinks",
                column: "SecretHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ReaderLooks_FamilyId_LinkId_At",
                table: "ReaderLooks",
                columns: new[] { "FamilyId", "LinkId", "At" });

            migrationBuilder.CreateIndex(
                name: "IX_SealedRecords_FamilyId_LearnerId",
                table: "SealedRecords",
                columns: new[] { "FamilyId", "LearnerId" });

            migrationBuilder.CreateIndex(
                name: "IX_TermReports_FamilyId_LearnerId_SchoolYearId",
                table: "TermReports",
                columns: new[] { "FamilyId", "LearnerId", "SchoolYearId" });

            migrationBuilder.CreateIndex(
                name: "IX_TermReports_FamilyId_SchoolYearId",
                table: "TermReports",
                columns: new[] { "FamilyId", "SchoolYearId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Amendments");

            migrationBuilder.DropTable(
                name: "Assessments");

            migrationBuilder.DropTable(
                name: "BroughtSheets");

            migrationBuilder.DropTable(
                name: "CoursePicks");

            migrationBuilder.DropTable(
                name: "GradingScales");

            migrationBuilder.DropTable(
                name: "HighSchoolRules");

            migrationBuilder.DropTable(
                name: "KnownMarks");

            migrationBuilder.DropTable(
                name: "LeavingReceipts");

            migrationBuilder.DropTable(
                name: "LogImports");

            migrationBuilder.DropTable(
                name: "OtherStudies");

            migrationBuilder.DropTable(
                name: "PapersMade");

            migrationBuilder.DropTable(
                name: "Portfolios");

            migrationBuilder.DropTable(
                name: "ReaderLooks");

            migrationBuilder.DropTable(
                name: "TermReports");

            migrationBuilder.DropTable(
                name: "TranscriptDetails");

            migrationBuilder.DropTable(
                name: "HighSchoolCourses");

            migrationBuilder.DropTable(
                name: "SealedRecords");

            migrationBuilder.DropTable(
                name: "ReaderLinks");

            migrationBuilder.DropTable(
                name: "SealedYears");

            migrationBuilder.DropColumn(
                name: "LeavesAt",
                table: "Families");

            migrationBuilder.DropColumn(
                name: "LeavingAskedBy",
                table: "Families");

            migrationBuilder.AddForeignKey(
                name: "FK_CoopFamilies_Families_FamilyId",
                table: "CoopFamilies",
                column: "FamilyId",
                principalTable: "Families",
                principalColumn: "Id",
                onDelete: ReferentialAction.Cascade);
        }
    }
}
