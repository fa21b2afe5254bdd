#!/usr/bin/env bash
# Adds a migration to every provider: eng/add-migration.sh NAME. Generated files are never edited by hand.
set -euo pipefail
cd "$(dirname "$0")/.."
dotnet tool restore
for provider in Sqlite; do
  dotnet ef migrations add "$1" --project "src/Trier.Storage.$provider" --startup-project "src/Trier.Storage.$provider" --output-dir Migrations
done
