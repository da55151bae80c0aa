using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Proof : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Portfolios",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    LearnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    SchoolYearId = table.Column<Guid>(type: "uuid", nullable: false),
                    Parts = table.Column<string>(type: "text", nullable: false),
                    Reader = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    Opening = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    Subjects = table.Column<string>(type: "text", nullable: false),
                    Pairs = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
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

            migrationBuilder.CreateIndex(
                name: "IX_Portfolios_FamilyId_SchoolYearId",
                table: "Portfolios",
                columns: new[] { "FamilyId", "SchoolYearId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Portfolios");
        }
    }
}
