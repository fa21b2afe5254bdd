using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Trier.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class FirstTasting : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "sign_in_links",
                columns: table => new
                {
                    SecretHash = table.Column<byte[]>(type: "BLOB", maxLength: 32, nullable: false),
                    ExpiresAt = table.Column<long>(type: "INTEGER", nullable: false),
                    SpentAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sign_in_links", x => x.SecretHash);
                });

            migrationBuilder.CreateTable(
                name: "trials",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    BegunAt = table.Column<long>(type: "INTEGER", nullable: false),
                    LinkSecret = table.Column<byte[]>(type: "BLOB", maxLength: 32, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_trials", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "wheel_revisions",
                columns: table => new
                {
                    Wheel = table.Column<Guid>(type: "TEXT", nullable: false),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_wheel_revisions", x => new { x.Wheel, x.Revision });
                });

            migrationBuilder.CreateTable(
                name: "ballot_revisions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Trial = table.Column<Guid>(type: "TEXT", nullable: false),
                    Arrival = table.Column<int>(type: "INTEGER", nullable: false),
                    Taster = table.Column<Guid>(type: "TEXT", nullable: false),
                    Base = table.Column<Guid>(type: "TEXT", nullable: true),
                    Device = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Source = table.Column<string>(type: "TEXT", maxLength: 16, nullable: false),
                    Stage = table.Column<string>(type: "TEXT", maxLength: 16, nullable: false),
                    Standing = table.Column<string>(type: "TEXT", maxLength: 16, nullable: false),
                    ReceivedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    OffsetMinutes = table.Column<int>(type: "INTEGER", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ballot_revisions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ballot_revisions_trials_Trial",
                        column: x => x.Trial,
                        principalTable: "trials",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "day_events",
                columns: table => new
                {
                    Trial = table.Column<Guid>(type: "TEXT", nullable: false),
                    Sequence = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_day_events", x => new { x.Trial, x.Sequence });
                    table.ForeignKey(
                        name: "FK_day_events_trials_Trial",
                        column: x => x.Trial,
                        principalTable: "trials",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "walk_ins",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Trial = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    AskedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Taster = table.Column<Guid>(type: "TEXT", nullable: true),
                    TurnedAway = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_walk_ins", x => x.Id);
                    table.ForeignKey(
                        name: "FK_walk_ins_trials_Trial",
                        column: x => x.Trial,
                        principalTable: "trials",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ballot_revisions_Trial_Arrival",
                table: "ballot_revisions",
                columns: new[] { "Trial", "Arrival" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ballot_revisions_Trial_Taster",
                table: "ballot_revisions",
                columns: new[] { "Trial", "Taster" });

            migrationBuilder.CreateIndex(
                name: "IX_walk_ins_Trial",
                table: "walk_ins",
                column: "Trial");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ballot_revisions");

            migrationBuilder.DropTable(
                name: "day_events");

            migrationBuilder.DropTable(
                name: "sign_in_links");

            migrationBuilder.DropTable(
                name: "walk_ins");

            migrationBuilder.DropTable(
                name: "wheel_revisions");

            migrationBuilder.DropTable(
                name: "trials");
        }
    }
}
