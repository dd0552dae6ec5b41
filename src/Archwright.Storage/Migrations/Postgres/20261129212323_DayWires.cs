using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Archwright.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class DayWires : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "WiresFound",
                table: "Visits",
                type: "text",
                nullable: true,
                computedColumnSql: "coalesce(\"Content\"::jsonb #>> '{upper,found,wire_id}', '') || chr(31) || coalesce(\"Content\"::jsonb #>> '{upper,found,since}', '') || chr(31) || coalesce(\"Content\"::jsonb #>> '{lower,found,wire_id}', '') || chr(31) || coalesce(\"Content\"::jsonb #>> '{lower,found,since}', '')",
                stored: true);

            migrationBuilder.AddColumn<string>(
                name: "WiresLeft",
                table: "Visits",
                type: "text",
                nullable: true,
                computedColumnSql: "coalesce(\"Content\"::jsonb #>> '{upper,decided,wire_id}', '') || chr(31) || coalesce(\"Content\"::jsonb #>> '{lower,decided,wire_id}', '')",
                stored: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "WiresFound",
                table: "Visits");

            migrationBuilder.DropColumn(
                name: "WiresLeft",
                table: "Visits");
        }
    }
}
