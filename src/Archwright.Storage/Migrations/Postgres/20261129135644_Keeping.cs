using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Archwright.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Keeping : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Gtin",
                table: "Lots",
                type: "character varying(14)",
                maxLength: 14,
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "RecalledBecause",
                table: "Lots",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<DateOnly>(
                name: "RecalledOn",
                table: "Lots",
                type: "date",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "Disposals",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PatientId = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    StaffId = table.Column<Guid>(type: "uuid", nullable: false),
                    StaffName = table.Column<string>(type: "text", nullable: false),
                    Rule = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Disposals", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "PoliciesInForce",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false),
                    Version = table.Column<string>(type: "text", nullable: false),
                    Digest = table.Column<string>(type: "text", nullable: false),
                    Since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PoliciesInForce", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Lots_Gtin",
                table: "Lots",
                column: "Gtin");

            migrationBuilder.CreateIndex(
                name: "IX_Disposals_PatientId",
                table: "Disposals",
                column: "PatientId");

            Model.Guards.LetGoInPostgres(migrationBuilder);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            Model.Guards.KeepAllInPostgres(migrationBuilder);

            migrationBuilder.DropTable(
                name: "Disposals");

            migrationBuilder.DropTable(
                name: "PoliciesInForce");

            migrationBuilder.DropIndex(
                name: "IX_Lots_Gtin",
                table: "Lots");

            migrationBuilder.DropColumn(
                name: "Gtin",
                table: "Lots");

            migrationBuilder.DropColumn(
                name: "RecalledBecause",
                table: "Lots");

            migrationBuilder.DropColumn(
                name: "RecalledOn",
                table: "Lots");
        }
    }
}
