using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Archwright.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class TreatmentLadders : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "TreatmentLadders",
                columns: table => new
                {
                    TreatmentId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PatientId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Ladder = table.Column<string>(type: "TEXT", nullable: false),
                    Revision = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TreatmentLadders", x => x.TreatmentId);
                    table.ForeignKey(
                        name: "FK_TreatmentLadders_Treatments_TreatmentId",
                        column: x => x.TreatmentId,
                        principalTable: "Treatments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_TreatmentLadders_PatientId",
                table: "TreatmentLadders",
                column: "PatientId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "TreatmentLadders");
        }
    }
}
