-- AlterTable
ALTER TABLE "facility" ADD COLUMN "earlier_readings_through" TEXT;

-- Months that are signed keep their readings. Later ones take the changed reading.
UPDATE "facility" SET "earlier_readings_through" =
  (SELECT MAX(s."month") FROM "signed_month" s WHERE s."facility_id" = "facility"."id");

-- Cultures between the first and the second birthday are determined again by whoever reads next.
UPDATE "determination" SET "known_through" = "settles_on" - 1
WHERE "state" <> 'replaced' AND "known_through" >= "settles_on" AND EXISTS (
  SELECT 1 FROM "patient" p JOIN "patient" s ON s."survivor_id" = p."survivor_id"
  WHERE p."id" = "determination"."patient_id" AND s."birth_day" BETWEEN "determination"."day" - 745 AND "determination"."day" - 350
);
