-- AlterTable
ALTER TABLE "import" ADD COLUMN "ward_codes" TEXT;

-- CreateTable
CREATE TABLE "ward_alias" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "source_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "ward_alias_source_id_fkey" FOREIGN KEY ("source_id") REFERENCES "import_source" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ward_alias_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_ward" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "facility_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "opened_day" INTEGER,
    "closed_day" INTEGER,
    "named_only" BOOLEAN NOT NULL DEFAULT false,
    "merged_into_id" INTEGER,
    "merge_reason" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "ward_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ward_merged_into_id_fkey" FOREIGN KEY ("merged_into_id") REFERENCES "ward" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_ward" ("closed_day", "code", "facility_id", "id", "named_only", "opened_day", "recorded_at", "recorded_by", "version") SELECT "closed_day", "code", "facility_id", "id", "named_only", "opened_day", "recorded_at", "recorded_by", "version" FROM "ward";
DROP TABLE "ward";
ALTER TABLE "new_ward" RENAME TO "ward";
CREATE INDEX "ward_merged_into_id_idx" ON "ward"("merged_into_id");
CREATE UNIQUE INDEX "ward_facility_id_code_void_key_key" ON "ward"("facility_id", "code", "void_key");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "ward_alias_ward_id_idx" ON "ward_alias"("ward_id");

-- CreateIndex
CREATE UNIQUE INDEX "ward_alias_source_id_code_void_key_key" ON "ward_alias"("source_id", "code", "void_key");
