-- CreateIndex
CREATE INDEX "stay_facility_id_admitted_at_idx" ON "stay"("facility_id", "admitted_at");

-- Stays of more than 62 days are few. All others that touch a day were admitted within the 62 days before it.
CREATE INDEX "stay_long_idx" ON "stay"("facility_id", (CASE WHEN "discharged_at" - "admitted_at" > INTERVAL '62 days' THEN "discharged_at" END));

-- A determination says whose it is, so that no list looks through the patients of the facility.
ALTER TABLE "determination" ADD COLUMN "facility_id" INTEGER;
UPDATE "determination" d SET "facility_id" = p."facility_id" FROM "patient" p WHERE p."id" = d."patient_id";
ALTER TABLE "determination" ALTER COLUMN "facility_id" SET NOT NULL;
DROP INDEX "determination_state_day_idx";
DROP INDEX "determination_settles_on_known_through_idx";
DROP INDEX "determination_day_idx";

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
