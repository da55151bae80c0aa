using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Ahead : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "AheadMarks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    ActivityId = table.Column<Guid>(type: "uuid", nullable: false),
                    What = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    BegunOn = table.Column<DateOnly>(type: "date", nullable: true),
                    MeantFor = table.Column<DateOnly>(type: "date", nullable: true),
                    TendedOn = table.Column<DateOnly>(type: "date", nullable: true),
                    NotNeeded = table.Column<bool>(type: "boolean", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AheadMarks", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_AheadMarks_Activities_FamilyId_ActivityId",
                        columns: x => new { x.FamilyId, x.ActivityId },
                        principalTable: "Activities",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_AheadMarks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_AheadMarks_FamilyId_ActivityId_What",
                table: "AheadMarks",
                columns: new[] { "FamilyId", "ActivityId", "What" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AheadMarks");
        }
    }
}
