using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Coops : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Coops",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    SickRule = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    Agreement = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    FoundedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Coops", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "CoopFamilies",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Part = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Since = table.Column<DateTime>(type: "TEXT", nullable: false),
                    LeftAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopFamilies", x => new { x.CoopId, x.FamilyId });
                    table.ForeignKey(
                        name: "FK_CoopFamilies_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_CoopFamilies_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopInvitations",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    ForWhom = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    FromId = table.Column<Guid>(type: "TEXT", nullable: false),
                    From = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    EndsAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    TakenAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopInvitations", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopInvitations_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ShownContacts",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Telephone = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShownContacts", x => new { x.CoopId, x.FamilyId });
                    table.ForeignKey(
                        name: "FK_ShownContacts_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ShownLearners",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Age = table.Column<int>(type: "INTEGER", nullable: true),
                    ShowsAllergies = table.Column<bool>(type: "INTEGER", nullable: false),
                    Allergies = table.Column<string>(type: "TEXT", nullable: false),
                    AllergyNote = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShownLearners", x => new { x.CoopId, x.FamilyId, x.LearnerId });
                    table.ForeignKey(
                        name: "FK_ShownLearners_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ShownLearners_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_CoopFamilies_FamilyId",
                table: "CoopFamilies",
                column: "FamilyId");

            migrationBuilder.CreateIndex(
                name: "IX_CoopInvitations_SecretHash",
                table: "CoopInvitations",
                column: "SecretHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ShownLearners_FamilyId_LearnerId",
                table: "ShownLearners",
                columns: new[] { "FamilyId", "LearnerId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "CoopFamilies");

            migrationBuilder.DropTable(
                name: "CoopInvitations");

            migrationBuilder.DropTable(
                name: "ShownContacts");

            migrationBuilder.DropTable(
                name: "ShownLearners");

            migrationBuilder.DropTable(
                name: "Coops");
        }
    }
}
