using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class GettingReady : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Goods",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", maxLength: 240, nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    PackSize = table.Column<string>(type: "TEXT", maxLength: 40, nullable: true),
                    PackMeasure = table.Column<string>(type: "TEXT", maxLength: 10, nullable: true),
                    PackCents = table.Column<int>(type: "INTEGER", nullable: true),
                    Place = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    GramsPerCup = table.Column<string>(type: "TEXT", maxLength: 40, nullable: true),
                    UsedUp = table.Column<bool>(type: "INTEGER", nullable: true),
                    AlwaysThere = table.Column<bool>(type: "INTEGER", nullable: false),
                    SameAsId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Goods", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Goods_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Goods_Goods_FamilyId_SameAsId",
                        columns: x => new { x.FamilyId, x.SameAsId },
                        principalTable: "Goods",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "LibraryCards",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    LoanDays = table.Column<int>(type: "INTEGER", nullable: false),
                    Renewals = table.Column<int>(type: "INTEGER", nullable: false),
                    MostBooks = table.Column<int>(type: "INTEGER", nullable: true),
                    MostHolds = table.Column<int>(type: "INTEGER", nullable: true),
                    HoldDays = table.Column<int>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LibraryCards", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_LibraryCards_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "PrintHabits",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    GreyTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    ColourTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    PaperTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    BothSides = table.Column<bool>(type: "INTEGER", nullable: false),
                    Paper = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PrintHabits", x => x.FamilyId);
                    table.ForeignKey(
                        name: "FK_PrintHabits_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "PrintedPackets",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Week = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    PrintedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Copies = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PrintedPackets", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_PrintedPackets_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "StoredFiles",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Bytes = table.Column<long>(type: "INTEGER", nullable: false),
                    Pages = table.Column<int>(type: "INTEGER", nullable: false),
                    UploadedBy = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    UploadedAt = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StoredFiles", x => new { x.FamilyId, x.Hash });
                    table.ForeignKey(
                        name: "FK_StoredFiles_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ListedByHand",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Week = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    GoodId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Quantity = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Measure = table.Column<string>(type: "TEXT", maxLength: 10, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ListedByHand", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_ListedByHand_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ListedByHand_Goods_FamilyId_GoodId",
                        columns: x => new { x.FamilyId, x.GoodId },
                        principalTable: "Goods",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Purchases",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    GoodId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Quantity = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Measure = table.Column<string>(type: "TEXT", maxLength: 10, nullable: false),
                    Cents = table.Column<int>(type: "INTEGER", nullable: false),
                    Day = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Week = table.Column<string>(type: "TEXT", maxLength: 8, nullable: true),
                    Shares = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Purchases", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Purchases_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Purchases_Goods_FamilyId_GoodId",
                        columns: x => new { x.FamilyId, x.GoodId },
                        principalTable: "Goods",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ShelfCounts",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    GoodId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Day = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Quantity = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Measure = table.Column<string>(type: "TEXT", maxLength: 10, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShelfCounts", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_ShelfCounts_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ShelfCounts_Goods_FamilyId_GoodId",
                        columns: x => new { x.FamilyId, x.GoodId },
                        principalTable: "Goods",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ShopTicks",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Week = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    GoodId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShopTicks", x => new { x.FamilyId, x.Week, x.GoodId });
                    table.ForeignKey(
                        name: "FK_ShopTicks_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ShopTicks_Goods_FamilyId_GoodId",
                        columns: x => new { x.FamilyId, x.GoodId },
                        principalTable: "Goods",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Swaps",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    GoodId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ActivityId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Instead = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Factor = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    OwnQuantity = table.Column<string>(type: "TEXT", maxLength: 40, nullable: true),
                    OwnMeasure = table.Column<string>(type: "TEXT", maxLength: 10, nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Swaps", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Swaps_Activities_FamilyId_ActivityId",
                        columns: x => new { x.FamilyId, x.ActivityId },
                        principalTable: "Activities",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Swaps_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Swaps_Goods_FamilyId_GoodId",
                        columns: x => new { x.FamilyId, x.GoodId },
                        principalTable: "Goods",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Books",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Title = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Author = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Isbn = table.Column<string>(type: "TEXT", maxLength: 13, nullable: false),
                    Measure = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Length = table.Column<int>(type: "INTEGER", nullable: true),
                    Chapters = table.Column<string>(type: "TEXT", nullable: false),
                    Level = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Source = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Lender = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    CardId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Note = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    HoldPlacedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    FetchedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    DueOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Renewed = table.Column<int>(type: "INTEGER", nullable: false),
                    ReturnedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Books", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_Books_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Books_LibraryCards_FamilyId_CardId",
                        columns: x => new { x.FamilyId, x.CardId },
                        principalTable: "LibraryCards",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "PrintSources",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    ActivityId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Printable = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Hash = table.Column<string>(type: "TEXT", nullable: false),
                    FileName = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Choices = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PrintSources", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_PrintSources_Activities_FamilyId_ActivityId",
                        columns: x => new { x.FamilyId, x.ActivityId },
                        principalTable: "Activities",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_PrintSources_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_PrintSources_StoredFiles_FamilyId_Hash",
                        columns: x => new { x.FamilyId, x.Hash },
                        principalTable: "StoredFiles",
                        principalColumns: new[] { "FamilyId", "Hash" });
                });

            migrationBuilder.CreateTable(
                name: "BookMeetings",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    BookId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Learners = table.Column<string>(type: "TEXT", nullable: false),
                    How = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    BegunOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    EndedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Unfinished = table.Column<bool>(type: "INTEGER", nullable: false),
                    Note = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BookMeetings", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_BookMeetings_Books_FamilyId_BookId",
                        columns: x => new { x.FamilyId, x.BookId },
                        principalTable: "Books",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_BookMeetings_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ReadAloudPlans",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    BookId = table.Column<Guid>(type: "TEXT", nullable: false),
                    First = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Last = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    On = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Chosen = table.Column<int>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ReadAloudPlans", x => new { x.FamilyId, x.BookId });
                    table.ForeignKey(
                        name: "FK_ReadAloudPlans_Books_FamilyId_BookId",
                        columns: x => new { x.FamilyId, x.BookId },
                        principalTable: "Books",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ReadAloudPlans_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ReadingSittings",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    BookId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    FromChapter = table.Column<int>(type: "INTEGER", nullable: false),
                    ToChapter = table.Column<int>(type: "INTEGER", nullable: false),
                    Minutes = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ReadingSittings", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_ReadingSittings_Books_FamilyId_BookId",
                        columns: x => new { x.FamilyId, x.BookId },
                        principalTable: "Books",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ReadingSittings_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_BookMeetings_FamilyId_BookId",
                table: "BookMeetings",
                columns: new[] { "FamilyId", "BookId" });

            migrationBuilder.CreateIndex(
                name: "IX_Books_FamilyId_CardId",
                table: "Books",
                columns: new[] { "FamilyId", "CardId" });

            migrationBuilder.CreateIndex(
                name: "IX_Goods_FamilyId_Key",
                table: "Goods",
                columns: new[] { "FamilyId", "Key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Goods_FamilyId_SameAsId",
                table: "Goods",
                columns: new[] { "FamilyId", "SameAsId" });

            migrationBuilder.CreateIndex(
                name: "IX_ListedByHand_FamilyId_GoodId",
                table: "ListedByHand",
                columns: new[] { "FamilyId", "GoodId" });

            migrationBuilder.CreateIndex(
                name: "IX_ListedByHand_FamilyId_Week",
                table: "ListedByHand",
                columns: new[] { "FamilyId", "Week" });

            migrationBuilder.CreateIndex(
                name: "IX_PrintSources_FamilyId_ActivityId_Printable",
                table: "PrintSources",
                columns: new[] { "FamilyId", "ActivityId", "Printable" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PrintSources_FamilyId_Hash",
                table: "PrintSources",
                columns: new[] { "FamilyId", "Hash" });

            migrationBuilder.CreateIndex(
                name: "IX_PrintedPackets_FamilyId_Week_PrintedAt",
                table: "PrintedPackets",
                columns: new[] { "FamilyId", "Week", "PrintedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_Purchases_FamilyId_Day",
                table: "Purchases",
                columns: new[] { "FamilyId", "Day" });

            migrationBuilder.CreateIndex(
                name: "IX_Purchases_FamilyId_GoodId",
                table: "Purchases",
                columns: new[] { "FamilyId", "GoodId" });

            migrationBuilder.CreateIndex(
                name: "IX_ReadingSittings_FamilyId_BookId",
                table: "ReadingSittings",
                columns: new[] { "FamilyId", "BookId" });

            migrationBuilder.CreateIndex(
                name: "IX_ShelfCounts_FamilyId_GoodId",
                table: "ShelfCounts",
                columns: new[] { "FamilyId", "GoodId" });

            migrationBuilder.CreateIndex(
                name: "IX_ShopTicks_FamilyId_GoodId",
                table: "ShopTicks",
                columns: new[] { "FamilyId", "GoodId" });

            migrationBuilder.CreateIndex(
                name: "IX_Swaps_FamilyId_ActivityId",
                table: "Swaps",
                columns: new[] { "FamilyId", "ActivityId" });

            migrationBuilder.CreateIndex(
                name: "IX_Swaps_FamilyId_GoodId",
                table: "Swaps",
                columns: new[] { "FamilyId", "GoodId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "BookMeetings");

            migrationBuilder.DropTable(
                name: "ListedByHand");

            migrationBuilder.DropTable(
                name: "PrintHabits");

            migrationBuilder.DropTable(
                name: "PrintSources");

            migrationBuilder.DropTable(
                name: "PrintedPackets");

            migrationBuilder.DropTable(
                name: "Purchases");

            migrationBuilder.DropTable(
                name: "ReadAloudPlans");

            migrationBuilder.DropTable(
                name: "ReadingSittings");

            migrationBuilder.DropTable(
                name: "ShelfCounts");

            migrationBuilder.DropTable(
                name: "ShopTicks");

            migrationBuilder.DropTable(
                name: "Swaps");

            migrationBuilder.DropTable(
                name: "StoredFiles");

            migrationBuilder.DropTable(
                name: "Books");

            migrationBuilder.DropTable(
                name: "Goods");

            migrationBuilder.DropTable(
                name: "LibraryCards");
        }
    }
}
