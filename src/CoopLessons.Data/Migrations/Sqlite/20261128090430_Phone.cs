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

            migrationBuilder.AddColumn<bool>(
                name: "KeepOriginals",
                table: "Families",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "ChildrenSaid",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SessionId = table.Column<Guid>(type: "TEXT", nullable: true),
                    What = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Minutes = table.Column<int>(type: "INTEGER", nullable: true),
                    Words = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    With = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Pieces = table.Column<string>(type: "TEXT", nullable: false),
                    SaidAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    State = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    EntryId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Wrote = table.Column<bool>(type: "INTEGER", nullable: false),
                    DecidedBy = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    DecidedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Answer = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ChildrenSaid", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_ChildrenSaid_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ChildrenSaid_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "FamilyTablets",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    KeyHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    MadeById = table.Column<Guid>(type: "TEXT", nullable: false),
                    Device = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    SeenAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    EndsAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Learners = table.Column<string>(type: "TEXT", nullable: false),
                    Lent = table.Column<bool>(type: "INTEGER", nullable: false),
                    OpenFor = table.Column<Guid>(type: "TEXT", nullable: true),
                    OpenUntil = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FamilyTablets", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_FamilyTablets_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_FamilyTablets_People_MadeById",
                        column: x => x.MadeById,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "IllSpells",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    To = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Learners = table.Column<string>(type: "TEXT", nullable: false),
                    Kept = table.Column<string>(type: "TEXT", nullable: false),
                    Rested = table.Column<string>(type: "TEXT", nullable: false),
                    BegunBy = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    BegunAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_IllSpells", x => new { x.FamilyId, x.Id });
                    table.ForeignKey(
                        name: "FK_IllSpells_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "NoticeChoices",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Waits = table.Column<bool>(type: "INTEGER", nullable: false),
                    LawDates = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_NoticeChoices", x => x.PersonId);
                    table.ForeignKey(
                        name: "FK_NoticeChoices_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "NoticeDevices",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Endpoint = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    EndpointHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Key = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Secret = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Device = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    Since = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_NoticeDevices", x => x.Id);
                    table.ForeignKey(
                        name: "FK_NoticeDevices_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "OwnLists",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LearnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Shown = table.Column<bool>(type: "INTEGER", nullable: false),
                    Reading = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Pin = table.Column<string>(type: "TEXT", maxLength: 600, nullable: false),
                    WrongPins = table.Column<int>(type: "INTEGER", nullable: false),
                    WaitsUntil = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OwnLists", x => new { x.FamilyId, x.LearnerId });
                    table.ForeignKey(
                        name: "FK_OwnLists_Families_FamilyId",
                        column: x => x.FamilyId,
                        principalTable: "Families",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_OwnLists_Learners_FamilyId_LearnerId",
                        columns: x => new { x.FamilyId, x.LearnerId },
                        principalTable: "Learners",
                        principalColumns: new[] { "FamilyId", "Id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Pieces",
                columns: table => new
                {
                    FamilyId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    SmallHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    OriginalHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    Name = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
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
                    RemovedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
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
                        name: "FK_Pieces_StoredFiles_FamilyId_OriginalHash",
                        columns: x => new { x.FamilyId, x.OriginalHash },
                        principalTable: "StoredFiles",
                        principalColumns: new[] { "FamilyId", "Hash" });
                    table.ForeignKey(
                        name: "FK_Pieces_StoredFiles_FamilyId_SmallHash",
                        columns: x => new { x.FamilyId, x.SmallHash },
                        principalTable: "StoredFiles",
                        principalColumns: new[] { "FamilyId", "Hash" });
                    table.ForeignKey(
                        name: "FK_Pieces_Subjects_FamilyId_SubjectId",
                        columns: x => new { x.FamilyId, x.SubjectId },
                        principalTable: "Subjects",
                        principalColumns: new[] { "FamilyId", "Id" });
                });

            migrationBuilder.CreateTable(
                name: "SentNotices",
                columns: table => new
                {
                    DeviceId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SentNotices", x => new { x.DeviceId, x.Key });
                    table.ForeignKey(
                        name: "FK_SentNotices_NoticeDevices_DeviceId",
                        column: x => x.DeviceId,
                        principalTable: "NoticeDevices",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SentNotices_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ChildrenSaid_FamilyId_LearnerId_Date",
                table: "ChildrenSaid",
                columns: new[] { "FamilyId", "LearnerId", "Date" });

            migrationBuilder.CreateIndex(
                name: "IX_FamilyTablets_KeyHash",
                table: "FamilyTablets",
                column: "KeyHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_FamilyTablets_MadeById",
                table: "FamilyTablets",
                column: "MadeById");

            migrationBuilder.CreateIndex(
                name: "IX_IllSpells_FamilyId_From",
                table: "IllSpells",
                columns: new[] { "FamilyId", "From" });

            migrationBuilder.CreateIndex(
                name: "IX_NoticeDevices_EndpointHash",
                table: "NoticeDevices",
                column: "EndpointHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_NoticeDevices_PersonId",
                table: "NoticeDevices",
                column: "PersonId");

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
                name: "IX_Pieces_FamilyId_OriginalHash",
                table: "Pieces",
                columns: new[] { "FamilyId", "OriginalHash" });

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_FamilyId_SmallHash",
                table: "Pieces",
                columns: new[] { "FamilyId", "SmallHash" });

            migrationBuilder.CreateIndex(
                name: "IX_Pieces_FamilyId_SubjectId",
                table: "Pieces",
                columns: new[] { "FamilyId", "SubjectId" });

            migrationBuilder.CreateIndex(
                name: "IX_SentNotices_At",
                table: "SentNotices",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_SentNotices_PersonId",
                table: "SentNotices",
                column: "PersonId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ChildrenSaid");

            migrationBuilder.DropTable(
                name: "FamilyTablets");

            migrationBuilder.DropTable(
                name: "IllSpells");

            migrationBuilder.DropTable(
                name: "NoticeChoices");

            migrationBuilder.DropTable(
                name: "OwnLists");

            migrationBuilder.DropTable(
                name: "Pieces");

            migrationBuilder.DropTable(
                name: "SentNotices");

            migrationBuilder.DropTable(
                name: "NoticeDevices");

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

            migrationBuilder.DropColumn(
                name: "KeepOriginals",
                table: "Families");
        }
    }
}
