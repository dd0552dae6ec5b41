using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Archwright.Storage.Migrations.Sqlite
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
                type: "TEXT",
                nullable: true,
                computedColumnSql: "coalesce(json_extract(\"Content\", '$.upper.found.wire_id'), '') || char(31) || coalesce(json_extract(\"Content\", '$.upper.found.since'), '') || char(31) || coalesce(json_extract(\"Content\", '$.lower.found.wire_id'), '') || char(31) || coalesce(json_extract(\"Content\", '$.lower.found.since'), '')",
                stored: false);

            migrationBuilder.AddColumn<string>(
                name: "WiresLeft",
                table: "Visits",
                type: "TEXT",
                nullable: true,
                computedColumnSql: "coalesce(json_extract(\"Content\", '$.upper.decided.wire_id'), '') || char(31) || coalesce(json_extract(\"Content\", '$.lower.decided.wire_id'), '')",
                stored: false);
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
