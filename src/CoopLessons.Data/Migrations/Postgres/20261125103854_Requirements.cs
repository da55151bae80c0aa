using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Postgres
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
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SecretHash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    WithNames = table.Column<bool>(type: "boolean", nullable: false),
                    EndedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<int>(type: "integer", nullable: false)
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
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    LearnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "uuid", nullable: false),
                    Key = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    DoneOn = table.Column<DateOnly>(type: "date", nullable: true),
                    SetDue = table.Column<DateOnly>(type: "date", nullable: true),
                    Note = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: false)
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
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    LearnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "uuid", nullable: false),
                    Grade = table.Column<int>(type: "integer", nullable: false)
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
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    LearnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    Event = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false)
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
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Json = table.Column<string>(type: "character varying(60000)", maxLength: 60000, nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
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
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Code = table.Column<string>(type: "character varying(8)", maxLength: 8, nullable: false),
                    PathwayId = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    StatuteSubject = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    SubjectId = table.Column<Guid>(type: "uuid", nullable: false),
                    Counts = table.Column<bool>(type: "boolean", nullable: false)
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
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    LearnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    From = table.Column<DateOnly>(type: "date", nullable: false),
                    Code = table.Column<string>(type: "character varying(8)", maxLength: 8, nullable: false),
                    PathwayId = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    OwnPathwayId = table.Column<Guid>(type: "uuid", nullable: true),
                    Because = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    CountsFrom = table.Column<DateOnly>(type: "date", nullable: true),
                    Goals = table.Column<string>(type: "text", nullable: false),
                    Figures = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
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
