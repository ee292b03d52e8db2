-- CreateTable
CREATE TABLE "laboratory_word" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "column_name" TEXT NOT NULL,
    "wording" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "choice" TEXT,
    "is_for_past" BOOLEAN NOT NULL,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "laboratory_word_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "specimen_wording" (
    "column_name" TEXT NOT NULL,
    "wording" TEXT NOT NULL,
    "specimen_id" INTEGER NOT NULL,

    CONSTRAINT "specimen_wording_pkey" PRIMARY KEY ("column_name","wording","specimen_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "laboratory_word_facility_id_column_name_wording_number_key" ON "laboratory_word"("facility_id", "column_name", "wording", "number");

-- CreateIndex
CREATE INDEX "specimen_wording_specimen_id_idx" ON "specimen_wording"("specimen_id");

-- AddForeignKey
ALTER TABLE "laboratory_word" ADD CONSTRAINT "laboratory_word_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "specimen_wording" ADD CONSTRAINT "specimen_wording_specimen_id_fkey" FOREIGN KEY ("specimen_id") REFERENCES "specimen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
