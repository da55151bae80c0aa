using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class SharedUnits : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "ArrivedPacks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    UnitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    BaseText = table.Column<string>(type: "TEXT", nullable: false),
                    From = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Prints = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ArrivedPacks", x => new { x.FamilyId, x.UnitId });
                    table.ForeignKey(
                        name: "FK_ArrivedPacks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ArrivedPacks_Units_FamilyId_UnitId",
                        columns: x => new { x.FamilyId, x.UnitId },
                        principalTable: "Units",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopAdults",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    LivesWithFamily = table.Column<Guid>(type: "TEXT", nullable: true),
                    Guest = table.Column<bool>(type: "INTEGER", nullable: false),
                    Gone = table.Column<bool>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopAdults", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopAdults_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopClasses",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Title = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Does = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    PeriodId = table.Column<Guid>(type: "TEXT", nullable: false),
                    RoomId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FromAge = table.Column<int>(type: "INTEGER", nullable: false),
                    ToAge = table.Column<int>(type: "INTEGER", nullable: false),
                    Size = table.Column<int>(type: "INTEGER", nullable: false),
                    First = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Last = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    OffSite = table.Column<bool>(type: "INTEGER", nullable: false),
                    Details = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopClasses", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopClasses_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopMeetings",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Where = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Note = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    CalledOffAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    CalledOffFor = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    InsteadOf = table.Column<Guid>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopMeetings", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopMeetings_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopPeriods",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    From = table.Column<TimeOnly>(type: "TEXT", nullable: false),
                    Until = table.Column<TimeOnly>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopPeriods", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopPeriods_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CoopRooms",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Holds = table.Column<int>(type: "INTEGER", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CoopRooms", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_CoopRooms_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SharedUnits",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Title = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Author = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Newest = table.Column<int>(type: "INTEGER", nullable: false),
                    PublishedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SharedUnits", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_SharedUnits_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "UnitOrigins",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    UnitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SharedId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    From = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    BaseText = table.Column<string>(type: "TEXT", nullable: false),
                    Subjects = table.Column<string>(type: "TEXT", nullable: false),
                    Open = table.Column<string>(type: "TEXT", nullable: false),
                    Known = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_UnitOrigins", x => new { x.FamilyId, x.UnitId });
                    table.ForeignKey(
                        name: "FK_UnitOrigins_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_UnitOrigins_Units_FamilyId_UnitId",
                        columns: x => new { x.FamilyId, x.UnitId },
                        principalTable: "Units",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "OfferedChanges",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    From = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    Why = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OfferedChanges", x => new { x.CoopId, x.Id });
                    table.ForeignKey(
                        name: "FK_OfferedChanges_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_OfferedChanges_SharedUnits_CoopId_SharedUnitId",
                        columns: x => new { x.CoopId, x.SharedUnitId },
                        principalTable: "SharedUnits",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SharedRevisions",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Author = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Note = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SharedRevisions", x => new { x.CoopId, x.SharedUnitId, x.Number });
                    table.ForeignKey(
                        name: "FK_SharedRevisions_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SharedRevisions_SharedUnits_CoopId_SharedUnitId",
                        columns: x => new { x.CoopId, x.SharedUnitId },
                        principalTable: "SharedUnits",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "UnitUses",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Since = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_UnitUses", x => new { x.CoopId, x.FamilyId, x.SharedUnitId });
                    table.ForeignKey(
                        name: "FK_UnitUses_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_UnitUses_SharedUnits_CoopId_SharedUnitId",
                        columns: x => new { x.CoopId, x.SharedUnitId },
                        principalTable: "SharedUnits",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "OfferAnswers",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    OfferId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Taken = table.Column<int>(type: "INTEGER", nullable: false),
                    Of = table.Column<int>(type: "INTEGER", nullable: false),
                    Word = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OfferAnswers", x => new { x.CoopId, x.OfferId });
                    table.ForeignKey(
                        name: "FK_OfferAnswers_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_OfferAnswers_OfferedChanges_CoopId_OfferId",
                        columns: x => new { x.CoopId, x.OfferId },
                        principalTable: "OfferedChanges",
                        principalColumns: new[] { "CoopId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SharedPrints",
                columns: table => new
                {
                    CoopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SharedUnitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Activity = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Printable = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    FileName = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Bytes = table.Column<long>(type: "INTEGER", nullable: false),
                    Pages = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SharedPrints", x => new { x.CoopId, x.SharedUnitId, x.Number, x.Activity, x.Printable });
                    table.ForeignKey(
                        name: "FK_SharedPrints_Coops_CoopId",
                        column: x => x.CoopId,
                        principalTable: "Coops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SharedPrints_SharedRevisions_CoopId_SharedUnitId_Number",
                        columns: x => new { x.CoopId, x.SharedUnitId, x.Number },
                        principalTable: "SharedRevisions",
                        principalColumns: new[] { "CoopId", "SharedUnitId", "Number" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_CoopAdults_CoopId_FamilyId",
                table: "CoopAdults",
                columns: new[] { "CoopId", "FamilyId" });

            migrationBuilder.CreateIndex(
                name: "IX_CoopMeetings_CoopId_On",
                table: "CoopMeetings",
                columns: new[] { "CoopId", "On" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_OfferedChanges_CoopId_SharedUnitId",
                table: "OfferedChanges",
                columns: new[] { "CoopId", "SharedUnitId" });

            migrationBuilder.CreateIndex(
                name: "IX_UnitOrigins_FamilyId_SharedId",
                table: "UnitOrigins",
                columns: new[] { "FamilyId", "SharedId" });

            migrationBuilder.CreateIndex(
                name: "IX_UnitUses_CoopId_SharedUnitId",
                table: "UnitUses",
                columns: new[] { "CoopId", "SharedUnitId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ArrivedPacks");

            migrationBuilder.DropTable(
                name: "CoopAdults");

            migrationBuilder.DropTable(
                name: "CoopClasses");

            migrationBuilder.DropTable(
                name: "CoopMeetings");

            migrationBuilder.DropTable(
                name: "CoopPeriods");

            migrationBuilder.DropTable(
                name: "CoopRooms");

            migrationBuilder.DropTable(
                name: "OfferAnswers");

            migrationBuilder.DropTable(
                name: "SharedPrints");

            migrationBuilder.DropTable(
                name: "UnitOrigins");

            migrationBuilder.DropTable(
                name: "UnitUses");

            migrationBuilder.DropTable(
                name: "OfferedChanges");

            migrationBuilder.DropTable(
                name: "SharedRevisions");

            migrationBuilder.DropTable(
                name: "SharedUnits");
        }
    }
}
