-- CreateTable
CREATE TABLE "signed_month_change" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "facility_id" INTEGER NOT NULL,
    "month" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "person_id" INTEGER NOT NULL,
    "action" TEXT NOT NULL,
    "entry_kind" TEXT,
    "entry_id" INTEGER,
    "patient_id" INTEGER,
    "figures" TEXT NOT NULL,
    "is_open" BOOLEAN NOT NULL DEFAULT true,
    CONSTRAINT "signed_month_change_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "signed_month_change_facility_id_month_idx" ON "signed_month_change"("facility_id", "month");

-- CreateIndex
CREATE INDEX "signed_month_change_facility_id_is_open_month_idx" ON "signed_month_change"("facility_id", "is_open", "month");
