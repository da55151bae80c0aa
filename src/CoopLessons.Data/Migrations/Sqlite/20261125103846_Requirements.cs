using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Requirements : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "CalendarAddresses",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    WithNames = table.Column<bool>(type: "INTEGER", nullable: false),
                    EndedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CalendarAddresses", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_CalendarAddresses_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "DutyMarks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    DoneOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    SetDue = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Note = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DutyMarks", x => new { x.FamilyId, x.LearnerId, x.SchoolYearId, x.Key });
                    table.ForeignKey(
                        name: "FK_DutyMarks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_DutyMarks_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_DutyMarks_SchoolYears_FamilyId_SchoolYearId",
                        columns: x => new { x.FamilyId, x.SchoolYearId },
                        principalTable: "SchoolYears",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "LearnerGrades",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Grade = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LearnerGrades", x => new { x.FamilyId, x.LearnerId, x.SchoolYearId });
                    table.ForeignKey(
                        name: "FK_LearnerGrades_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_LearnerGrades_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_LearnerGrades_SchoolYears_FamilyId_SchoolYearId",
                        columns: x => new { x.FamilyId, x.SchoolYearId },
                        principalTable: "SchoolYears",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "LegalEvents",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Event = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LegalEvents", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_LegalEvents_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_LegalEvents_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "OwnPathways",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Json = table.Column<string>(type: "TEXT", maxLength: 60000, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OwnPathways", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_OwnPathways_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SubjectReadings",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Code = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    PathwayId = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    StatuteSubject = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    SubjectId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Counts = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SubjectReadings", x => new { x.FamilyId, x.Code, x.PathwayId, x.StatuteSubject, x.SubjectId });
                    table.ForeignKey(
                        name: "FK_SubjectReadings_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SubjectReadings_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "LearnerPathways",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Code = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    PathwayId = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    OwnPathwayId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Because = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    CountsFrom = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Goals = table.Column<string>(type: "TEXT", nullable: false),
                    Figures = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LearnerPathways", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_LearnerPathways_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_LearnerPathways_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_LearnerPathways_OwnPathways_FamilyId_OwnPathwayId",
                        columns: x => new { x.FamilyId, x.OwnPathwayId },
                        principalTable: "OwnPathways",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateIndex(
                name: "IX_CalendarAddresses_SecretHash",
                table: "CalendarAddresses",
                column: "SecretHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_DutyMarks_FamilyId_SchoolYearId",
                table: "DutyMarks",
                columns: new[] { "FamilyId", "SchoolYearId" });

            migrationBuilder.CreateIndex(
                name: "IX_LearnerGrades_FamilyId_SchoolYearId",
                table: "LearnerGrades",
                columns: new[] { "FamilyId", "SchoolYearId" });

            migrationBuilder.CreateIndex(
                name: "IX_LearnerPathways_FamilyId_LearnerId_From",
                table: "LearnerPathways",
                columns: new[] { "FamilyId", "LearnerId", "From" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_LearnerPathways_FamilyId_OwnPathwayId",
                table: "LearnerPathways",
                columns: new[] { "FamilyId", "OwnPathwayId" });

            migrationBuilder.CreateIndex(
                name: "IX_LegalEvents_FamilyId_LearnerId",
                table: "LegalEvents",
                columns: new[] { "FamilyId", "LearnerId" });

            migrationBuilder.CreateIndex(
                name: "IX_SubjectReadings_FamilyId_SubjectId",
                table: "SubjectReadings",
                columns: new[] { "FamilyId", "SubjectId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "CalendarAddresses");

            migrationBuilder.DropTable(
                name: "DutyMarks");

            migrationBuilder.DropTable(
                name: "LearnerGrades");

            migrationBuilder.DropTable(
                name: "LearnerPathways");

            migrationBuilder.DropTable(
                name: "LegalEvents");

            migrationBuilder.DropTable(
                name: "SubjectReadings");

            migrationBuilder.DropTable(
                name: "OwnPathways");
        }
    }
}
