using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Archwright.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Leaflets : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "DiscomfortDays",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PatientId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Day = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Score = table.Column<int>(type: "INTEGER", nullable: false),
                    NotedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Revision = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DiscomfortDays", x => x.Id);
                    table.ForeignKey(
                        name: "FK_DiscomfortDays_Patients_PatientId",
                        column: x => x.PatientId,
                        principalTable: "Patients",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Leaflets",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PatientId = table.Column<Guid>(type: "TEXT", nullable: false),
                    VisitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Leaflet = table.Column<string>(type: "TEXT", nullable: false),
                    Pictures = table.Column<string>(type: "TEXT", nullable: false),
                    ReleasedBy = table.Column<string>(type: "TEXT", nullable: false),
                    ReleasedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Leaflets", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Leaflets_Patients_PatientId",
                        column: x => x.PatientId,
                        principalTable: "Patients",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PatientLinks",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PatientId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LeafletId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Digest = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    MadeBy = table.Column<string>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ExpiresAt = table.Column<long>(type: "INTEGER", nullable: false),
                    RevokedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PatientLinks", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PatientLinks_Leaflets_LeafletId",
                        column: x => x.LeafletId,
                        principalTable: "Leaflets",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_DiscomfortDays_PatientId_Day",
                table: "DiscomfortDays",
                columns: new[] { "PatientId", "Day" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Leaflets_PatientId",
                table: "Leaflets",
                column: "PatientId");

            migrationBuilder.CreateIndex(
                name: "IX_Leaflets_VisitId",
                table: "Leaflets",
                column: "VisitId");

            migrationBuilder.CreateIndex(
                name: "IX_PatientLinks_Digest",
                table: "PatientLinks",
                column: "Digest",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PatientLinks_LeafletId",
                table: "PatientLinks",
                column: "LeafletId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "DiscomfortDays");

            migrationBuilder.DropTable(
                name: "PatientLinks");

            migrationBuilder.DropTable(
                name: "Leaflets");
        }
    }
}
