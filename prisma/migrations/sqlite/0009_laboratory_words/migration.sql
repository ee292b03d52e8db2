-- CreateTable
CREATE TABLE "laboratory_word" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "facility_id" INTEGER NOT NULL,
    "column_name" TEXT NOT NULL,
    "wording" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "choice" TEXT,
    "is_for_past" BOOLEAN NOT NULL,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "laboratory_word_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "specimen_wording" (
    "column_name" TEXT NOT NULL,
    "wording" TEXT NOT NULL,
    "specimen_id" INTEGER NOT NULL,

    PRIMARY KEY ("column_name", "wording", "specimen_id"),
    CONSTRAINT "specimen_wording_specimen_id_fkey" FOREIGN KEY ("specimen_id") REFERENCES "specimen" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "laboratory_word_facility_id_column_name_wording_number_key" ON "laboratory_word"("facility_id", "column_name", "wording", "number");

-- CreateIndex
CREATE INDEX "specimen_wording_specimen_id_idx" ON "specimen_wording"("specimen_id");
