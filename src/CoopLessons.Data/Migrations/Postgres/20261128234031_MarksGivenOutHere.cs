using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CoopLessons.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class MarksGivenOutHere : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "GivenOutHere",
                table: "KnownMarks",
                type: "boolean",
                nullable: false,
                defaultValue: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "GivenOutHere",
                table: "KnownMarks");
        }
    }
}
