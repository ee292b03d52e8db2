-- AlterTable
ALTER TABLE "laboratory_word" ADD COLUMN "past_after" INTEGER;

-- CreateIndex
CREATE INDEX "laboratory_word_facility_id_past_after_idx" ON "laboratory_word"("facility_id", "past_after");

-- How far an earlier choice for past specimens came is not known: whoever reads next determines them again.
UPDATE "laboratory_word" SET "past_after" = 0 WHERE "is_for_past";
