using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Planning : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<Guid>(
                name: "ActivityId",
                table: "PlannedSessions",
                type: "uuid",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "uuid");

            migrationBuilder.AddColumn<Guid>(
                name: "AdultId",
                table: "PlannedSessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "CourseId",
                table: "PlannedSessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LessonNumber",
                table: "PlannedSessions",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LooksAt",
                table: "PlannedSessions",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "LoopId",
                table: "PlannedSessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Minutes",
                table: "PlannedSessions",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "Pinned",
                table: "PlannedSessions",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<Guid>(
                name: "StepId",
                table: "PlannedSessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "Appointments",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Title = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Learners = table.Column<string>(type: "text", nullable: false),
                    Adults = table.Column<string>(type: "text", nullable: false),
                    First = table.Column<DateOnly>(type: "date", nullable: false),
                    StartsAt = table.Column<int>(type: "integer", nullable: false),
                    Minutes = table.Column<int>(type: "integer", nullable: false),
                    Repeats = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Except = table.Column<string>(type: "text", nullable: false),
                    SubjectId = table.Column<Guid>(type: "uuid", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Appointments", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Appointments_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Appointments_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "Courses",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Title = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    SubjectId = table.Column<Guid>(type: "uuid", nullable: false),
                    Learners = table.Column<string>(type: "text", nullable: false),
                    Minutes = table.Column<int>(type: "integer", nullable: false),
                    PerWeek = table.Column<int>(type: "integer", nullable: false),
                    Need = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Lessons = table.Column<int>(type: "integer", nullable: true),
                    NextLesson = table.Column<int>(type: "integer", nullable: false),
                    Morning = table.Column<bool>(type: "boolean", nullable: false),
                    SetAside = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Courses", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Courses_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Courses_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "DayPatterns",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    OwnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    Stretches = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DayPatterns", x => new { x.FamilyId, x.OwnerId });
                    table.ForeignKey(
                        name: "FK_DayPatterns_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Loops",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Title = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Steps = table.Column<string>(type: "text", nullable: false),
                    Next = table.Column<int>(type: "integer", nullable: false),
                    Minutes = table.Column<int>(type: "integer", nullable: false),
                    PerWeek = table.Column<int>(type: "integer", nullable: false),
                    Learners = table.Column<string>(type: "text", nullable: false),
                    Need = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Morning = table.Column<bool>(type: "boolean", nullable: false),
                    SetAside = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Loops", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Loops_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Sittings",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    LearnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    Minutes = table.Column<int>(type: "integer", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sittings", x => new { x.FamilyId, x.LearnerId });
                    table.ForeignKey(
                        name: "FK_Sittings_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Sittings_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "TeachingAdults",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: true),
                    Phone = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    SetAside = table.Column<bool>(type: "boolean", nullable: false),
                    Order = table.Column<int>(type: "integer", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TeachingAdults", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_TeachingAdults_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_TeachingAdults_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.SetNull);
                });

            migrationBuilder.CreateTable(
                name: "Wishes",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SubjectId = table.Column<Guid>(type: "uuid", nullable: true),
                    Kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    Day = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    Morning = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Wishes", x => new { x.FamilyId, x.Id });
                    table.CheckConstraint("CK_Wishes_OneOf", "(\"SubjectId\" IS NULL) <> (\"Kind\" IS NULL)");
                    table.ForeignKey(
                        name: "FK_Wishes_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Wishes_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateIndex(
                name: "IX_PlannedSessions_FamilyId_AdultId",
                table: "PlannedSessions",
                columns: new[] { "FamilyId", "AdultId" });

            migrationBuilder.CreateIndex(
                name: "IX_PlannedSessions_FamilyId_CourseId",
                table: "PlannedSessions",
                columns: new[] { "FamilyId", "CourseId" });

            migrationBuilder.CreateIndex(
                name: "IX_PlannedSessions_FamilyId_LoopId",
                table: "PlannedSessions",
                columns: new[] { "FamilyId", "LoopId" });

            migrationBuilder.AddCheckConstraint(
                name: "CK_PlannedSessions_OneOf",
                table: "PlannedSessions",
                sql: "(CASE WHEN \"ActivityId\" IS NULL THEN 0 ELSE 1 END) + (CASE WHEN \"CourseId\" IS NULL THEN 0 ELSE 1 END) + (CASE WHEN \"LoopId\" IS NULL THEN 0 ELSE 1 END) = 1");

            migrationBuilder.CreateIndex(
                name: "IX_Appointments_FamilyId_SubjectId",
                table: "Appointments",
                columns: new[] { "FamilyId", "SubjectId" });

            migrationBuilder.CreateIndex(
                name: "IX_Courses_FamilyId_SubjectId",
                table: "Courses",
                columns: new[] { "FamilyId", "SubjectId" });

            migrationBuilder.CreateIndex(
                name: "IX_TeachingAdults_PersonId",
                table: "TeachingAdults",
                column: "PersonId");

            migrationBuilder.CreateIndex(
                name: "IX_Wishes_FamilyId_SubjectId",
                table: "Wishes",
                columns: new[] { "FamilyId", "SubjectId" });

            migrationBuilder.AddForeignKey(
                name: "FK_PlannedSessions_Courses_FamilyId_CourseId",
                table: "PlannedSessions",
                columns: new[] { "FamilyId", "CourseId" },
                principalTable: "Courses",
                principalColumns: new[] { "FamilyId", "Id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "FK_PlannedSessions_Loops_FamilyId_LoopId",
                table: "PlannedSessions",
                columns: new[] { "FamilyId", "LoopId" },
                principalTable: "Loops",
                principalColumns: new[] { "FamilyId", "Id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "FK_PlannedSessions_TeachingAdults_FamilyId_AdultId",
                table: "PlannedSessions",
                columns: new[] { "FamilyId", "AdultId" },
                principalTable: "TeachingAdults",
                principalColumns: new[] { "FamilyId", "Id" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_PlannedSessions_Courses_FamilyId_CourseId",
                table: "PlannedSessions");

            migrationBuilder.DropForeignKey(
                name: "FK_PlannedSessions_Loops_FamilyId_LoopId",
                table: "PlannedSessions");

            migrationBuilder.DropForeignKey(
                name: "FK_PlannedSessions_TeachingAdults_FamilyId_AdultId",
                table: "PlannedSessions");

            migrationBuilder.DropTable(
                name: "Appointments");

            migrationBuilder.DropTable(
                name: "Courses");

            migrationBuilder.DropTable(
                name: "DayPatterns");

            migrationBuilder.DropTable(
                name: "Loops");

            migrationBuilder.DropTable(
                name: "Sittings");

            migrationBuilder.DropTable(
                name: "TeachingAdults");

            migrationBuilder.DropTable(
                name: "Wishes");

            migrationBuilder.DropIndex(
                name: "IX_PlannedSessions_FamilyId_AdultId",
                table: "PlannedSessions");

            migrationBuilder.DropIndex(
                name: "IX_PlannedSessions_FamilyId_CourseId",
                table: "PlannedSessions");

            migrationBuilder.DropIndex(
                name: "IX_PlannedSessions_FamilyId_LoopId",
                table: "PlannedSessions");

            migrationBuilder.DropCheckConstraint(
                name: "CK_PlannedSessions_OneOf",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "AdultId",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "CourseId",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "LessonNumber",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "LooksAt",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "LoopId",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "Minutes",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "Pinned",
                table: "PlannedSessions");

            migrationBuilder.DropColumn(
                name: "StepId",
                table: "PlannedSessions");

            migrationBuilder.AlterColumn<Guid>(
                name: "ActivityId",
                table: "PlannedSessions",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "uuid",
                oldNullable: true);
        }
    }
}
