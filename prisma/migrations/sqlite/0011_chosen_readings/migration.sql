-- CreateTable
CREATE TABLE "chosen_reading" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "facility_id" INTEGER NOT NULL,
    "edition_id" TEXT NOT NULL,
    "option" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "from_month" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "chosen_reading_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "chosen_reading_facility_id_edition_id_option_from_month_key" ON "chosen_reading"("facility_id", "edition_id", "option", "from_month");
