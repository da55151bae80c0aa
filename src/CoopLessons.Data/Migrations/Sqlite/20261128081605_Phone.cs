using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Phone : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "Answers",
                table: "LogRevisions",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "Aside",
                table: "LogRevisions",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<DateTime>(
                name: "OnPhoneAt",
                table: "LogRevisions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "SentAs",
                table: "LogRevisions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LastAside",
                table: "LogEntries",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "Pieces",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    OriginalHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    TakenAt = table.Column<int>(type: "INTEGER", nullable: true),
                    Learners = table.Column<string>(type: "TEXT", nullable: false),
                    SubjectId = table.Column<Guid>(type: "TEXT", nullable: true),
                    EntryId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Caption = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    FacesOut = table.Column<bool>(type: "INTEGER", nullable: false),
                    SetAside = table.Column<bool>(type: "INTEGER", nullable: false),
                    BroughtById = table.Column<Guid>(type: "TEXT", nullable: false),
                    BroughtBy = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    BroughtAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Pieces", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Pieces_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Pieces_LogEntries_FamilyId_EntryId",
                        columns: x => new { x.FamilyId, x.EntryId },
                        principalTable: "LogEntries",
                        principalColumns: new[] { "FamilyId", "Id" });
                    table.ForeignKey(
                        name: "FK_Pieces_StoredFiles_FamilyId_Hash",
                        columns: x => new { x.FamilyId, x.Hash },
                        principalTable: "StoredFiles",
                        principalColumns: new[] { "FamilyId", "Hash" });
                    table.ForeignKey(
                        name: "FK_Pieces_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_FamilyId_Date",
                table: "Pieces",
                columns: new[] { "FamilyId", "Date" });

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_FamilyId_EntryId",
                table: "Pieces",
                columns: new[] { "FamilyId", "EntryId" });

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_FamilyId_Hash",
                table: "Pieces",
                columns: new[] { "FamilyId", "Hash" });

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_FamilyId_SubjectId",
                table: "Pieces",
                columns: new[] { "FamilyId", "SubjectId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Pieces");

            migrationBuilder.DropColumn(
                name: "Answers",
                table: "LogRevisions");

            migrationBuilder.DropColumn(
                name: "Aside",
                table: "LogRevisions");

            migrationBuilder.DropColumn(
                name: "OnPhoneAt",
                table: "LogRevisions");

            migrationBuilder.DropColumn(
                name: "SentAs",
                table: "LogRevisions");

            migrationBuilder.DropColumn(
                name: "LastAside",
                table: "LogEntries");
        }
    }
}
