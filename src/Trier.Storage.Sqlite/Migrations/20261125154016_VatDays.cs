using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Trier.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class VatDays : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "makes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Recipe = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    BegunAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_makes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "recipe_revisions",
                columns: table => new
                {
                    Recipe = table.Column<Guid>(type: "TEXT", nullable: false),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recipe_revisions", x => new { x.Recipe, x.Revision });
                });

            migrationBuilder.CreateTable(
                name: "things",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 16, nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    ExpiresOn = table.Column<DateOnly>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_things", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "make_events",
                columns: table => new
                {
                    Make = table.Column<Guid>(type: "TEXT", nullable: false),
                    Sequence = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Send = table.Column<Guid>(type: "TEXT", nullable: true),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_make_events", x => new { x.Make, x.Sequence });
                    table.ForeignKey(
                        name: "FK_make_events_makes_Make",
                        column: x => x.Make,
                        principalTable: "makes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "wheel_numbers",
                columns: table => new
                {
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Wheel = table.Column<Guid>(type: "TEXT", nullable: false),
                    Make = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_wheel_numbers", x => x.Number);
                    table.ForeignKey(
                        name: "FK_wheel_numbers_makes_Make",
                        column: x => x.Make,
                        principalTable: "makes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "thing_events",
                columns: table => new
                {
                    Thing = table.Column<Guid>(type: "TEXT", nullable: false),
                    Sequence = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_thing_events", x => new { x.Thing, x.Sequence });
                    table.ForeignKey(
                        name: "FK_thing_events_things_Thing",
                        column: x => x.Thing,
                        principalTable: "things",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_make_events_Send",
                table: "make_events",
                column: "Send",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_makes_Recipe_Version",
                table: "makes",
                columns: new[] { "Recipe", "Version" });

            migrationBuilder.CreateIndex(
                name: "IX_wheel_numbers_Make",
                table: "wheel_numbers",
                column: "Make");

            migrationBuilder.CreateIndex(
                name: "IX_wheel_numbers_Wheel",
                table: "wheel_numbers",
                column: "Wheel",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "make_events");

            migrationBuilder.DropTable(
                name: "recipe_revisions");

            migrationBuilder.DropTable(
                name: "thing_events");

            migrationBuilder.DropTable(
                name: "wheel_numbers");

            migrationBuilder.DropTable(
                name: "things");

            migrationBuilder.DropTable(
                name: "makes");
        }
    }
}
