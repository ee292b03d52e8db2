-- CreateTable
CREATE TABLE "specimen" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "patient_id" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "collected_at" DATETIME NOT NULL,
    "method" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "number" TEXT,
    "organisms" TEXT NOT NULL,
    "marks" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "specimen_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "sign" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "patient_id" INTEGER NOT NULL,
    "day" INTEGER NOT NULL,
    "at" DATETIME,
    "sign" TEXT NOT NULL,
    "finding" TEXT NOT NULL,
    "value_hundredths" INTEGER,
    "unit" TEXT,
    "other_cause" BOOLEAN NOT NULL DEFAULT false,
    "marks" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" DATETIME NOT NULL,
    "recorded_by" INTEGER NOT NULL,
    CONSTRAINT "sign_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "specimen_patient_id_collected_at_idx" ON "specimen"("patient_id", "collected_at");

-- CreateIndex
CREATE INDEX "sign_patient_id_day_idx" ON "sign"("patient_id", "day");
