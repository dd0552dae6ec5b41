using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Archwright.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Guards : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            Model.Guards.UpInPostgres(migrationBuilder);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            Model.Guards.DownInPostgres(migrationBuilder);
        }
    }
}
