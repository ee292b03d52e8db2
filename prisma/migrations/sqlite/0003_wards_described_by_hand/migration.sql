-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_ward_setting" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "ward_id" INTEGER NOT NULL,
    "from_day" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "type" TEXT,
    "setting" TEXT,
    "beds" INTEGER,
    "by_hand" BOOLEAN NOT NULL DEFAULT false,
    "reason" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "ward_setting_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_ward_setting" ("beds", "from_day", "id", "name", "recorded_at", "recorded_by", "setting", "type", "version", "ward_id") SELECT "beds", "from_day", "id", "name", "recorded_at", "recorded_by", "setting", "type", "version", "ward_id" FROM "ward_setting";
DROP TABLE "ward_setting";
ALTER TABLE "new_ward_setting" RENAME TO "ward_setting";
CREATE UNIQUE INDEX "ward_setting_ward_id_from_day_key" ON "ward_setting"("ward_id", "from_day");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
