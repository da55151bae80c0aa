using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Sqlite
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
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    ActivityId = table.Column<Guid>(type: "TEXT", nullable: false),
                    What = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    BegunOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    MeantFor = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    TendedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    NotNeeded = table.Column<bool>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
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
