using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Archwright.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Guards : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            Model.Guards.UpInSqlite(migrationBuilder);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            Model.Guards.DownInSqlite(migrationBuilder);
        }
    }
}
