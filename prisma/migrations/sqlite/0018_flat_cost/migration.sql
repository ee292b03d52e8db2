-- CreateIndex
CREATE INDEX "stay_facility_id_admitted_at_idx" ON "stay"("facility_id", "admitted_at");

-- Stays of more than 62 days are few. All others that touch a day were admitted within the 62 days before it.
CREATE INDEX "stay_long_idx" ON "stay"("facility_id", (CASE WHEN "discharged_at" - "admitted_at" > 5356800000 THEN "discharged_at" END));

-- RedefineTables: a determination says whose it is, so that no list looks through the patients of the facility.
CREATE TABLE "new_determination" (
    "case_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "patient_id" INTEGER NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "day" INTEGER NOT NULL,
    "place_id" INTEGER,
    "edition_id" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "event_day" INTEGER,
    "ward_id" INTEGER,
    "is_cauti" BOOLEAN NOT NULL,
    "summary" TEXT NOT NULL,
    "reported" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "known_through" INTEGER NOT NULL,
    "settles_on" INTEGER NOT NULL,
    "cause" TEXT NOT NULL,
    "reason" TEXT,
    "determined_at" DATETIME NOT NULL,
    "determined_by" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "decision" TEXT,
    "decided" TEXT,
    "may_count" TEXT,
    "facility_id" INTEGER NOT NULL,

    PRIMARY KEY ("case_id", "number"),
    CONSTRAINT "determination_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_determination" ("case_id", "number", "patient_id", "subject_kind", "day", "place_id", "edition_id", "outcome", "event_day", "ward_id", "is_cauti", "summary", "reported", "body", "digest", "known_through", "settles_on", "cause", "reason", "determined_at", "determined_by", "state", "revision", "decision", "decided", "may_count", "facility_id")
SELECT d."case_id", d."number", d."patient_id", d."subject_kind", d."day", d."place_id", d."edition_id", d."outcome", d."event_day", d."ward_id", d."is_cauti", d."summary", d."reported", d."body", d."digest", d."known_through", d."settles_on", d."cause", d."reason", d."determined_at", d."determined_by", d."state", d."revision", d."decision", d."decided", d."may_count", p."facility_id" FROM "determination" d JOIN "patient" p ON p."id" = d."patient_id";
DROP TABLE "determination";
ALTER TABLE "new_determination" RENAME TO "determination";
CREATE INDEX "determination_patient_id_idx" ON "determination"("patient_id");

-- Cases that time alone may still change.
CREATE INDEX "determination_unsettled_idx" ON "determination"((CASE WHEN "settles_on" > "known_through" AND "state" <> 'replaced' THEN "known_through" END));

-- CreateIndex
CREATE INDEX "determination_facility_id_state_day_idx" ON "determination"("facility_id", "state", "day");
CREATE INDEX "determination_facility_id_event_day_day_idx" ON "determination"("facility_id", "event_day", "day");
CREATE INDEX "determination_facility_id_day_idx" ON "determination"("facility_id", "day");

-- CreateIndex
CREATE INDEX "audit_entry_facility_id_action_at_idx" ON "audit_entry"("facility_id", "action", "at");

-- CreateIndex
CREATE INDEX "import_facility_id_source_id_state_idx" ON "import"("facility_id", "source_id", "state");

-- CreateIndex
CREATE INDEX "ward_stay_ward_id_end_at_idx" ON "ward_stay"("ward_id", "end_at");

-- CreateIndex
CREATE INDEX "ward_stay_ward_id_absence_after_idx" ON "ward_stay"("ward_id", "absence_after");
