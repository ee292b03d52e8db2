-- CreateTable
CREATE TABLE "import_source" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "facility_id" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "settings" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "import_source_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_import" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "facility_id" INTEGER NOT NULL,
    "person_id" INTEGER NOT NULL,
    "source_id" INTEGER,
    "state" TEXT NOT NULL,
    "set_aside" BOOLEAN NOT NULL,
    "assume_inpatient" BOOLEAN NOT NULL,
    "started_at" DATETIME NOT NULL,
    "finished_at" DATETIME,
    "summary" TEXT,
    "done" INTEGER,
    "total" INTEGER,
    "notices" TEXT,
    "effects" TEXT,
    CONSTRAINT "import_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "import_source_id_fkey" FOREIGN KEY ("source_id") REFERENCES "import_source" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_import" ("assume_inpatient", "done", "effects", "facility_id", "finished_at", "id", "notices", "person_id", "set_aside", "started_at", "state", "summary", "total") SELECT "assume_inpatient", "done", "effects", "facility_id", "finished_at", "id", "notices", "person_id", "set_aside", "started_at", "state", "summary", "total" FROM "import";
DROP TABLE "import";
ALTER TABLE "new_import" RENAME TO "import";
CREATE INDEX "import_facility_id_state_idx" ON "import"("facility_id", "state");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "import_source_facility_id_name_key" ON "import_source"("facility_id", "name");
