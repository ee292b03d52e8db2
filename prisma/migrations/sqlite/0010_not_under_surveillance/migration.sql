-- AlterTable
ALTER TABLE "determination" ADD COLUMN "may_count" TEXT;

-- CreateIndex
CREATE INDEX "determination_day_idx" ON "determination"("day");

-- CreateIndex
CREATE INDEX "finding_day_idx" ON "finding"("day");

-- Work that is open is determined again by whoever reads next: it may be out of scope.
UPDATE "determination" SET "known_through" = "settles_on" - 1
WHERE "state" IN ('waiting', 'changed', 'pending') AND "known_through" >= "settles_on";
