using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Postgres
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
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "Aside",
                table: "LogRevisions",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<DateTime>(
                name: "OnPhoneAt",
                table: "LogRevisions",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "SentAs",
                table: "LogRevisions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LastAside",
                table: "LogEntries",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "Pieces",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "uuid", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Hash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    OriginalHash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: true),
                    Date = table.Column<DateOnly>(type: "date", nullable: false),
                    TakenAt = table.Column<int>(type: "integer", nullable: true),
                    Learners = table.Column<string>(type: "text", nullable: false),
                    SubjectId = table.Column<Guid>(type: "uuid", nullable: true),
                    EntryId = table.Column<Guid>(type: "uuid", nullable: true),
                    Caption = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    FacesOut = table.Column<bool>(type: "boolean", nullable: false),
                    SetAside = table.Column<bool>(type: "boolean", nullable: false),
                    BroughtById = table.Column<Guid>(type: "uuid", nullable: false),
                    BroughtBy = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    BroughtAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false)
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
