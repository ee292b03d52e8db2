-- AlterTable
ALTER TABLE "audit_entry" ADD COLUMN     "seal_hash" TEXT,
ADD COLUMN     "seal_number" INTEGER;

-- AlterTable
ALTER TABLE "catheter" ADD COLUMN     "insertion_record" TEXT,
ADD COLUMN     "removal_record" TEXT;

-- CreateTable
CREATE TABLE "catheter_note" (
    "id" INTEGER NOT NULL,
    "catheter_id" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "outcome" TEXT,
    "indication" TEXT,
    "items" TEXT,
    "amount_ml" DOUBLE PRECISION,
    "remark" TEXT,
    "marks" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "catheter_note_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "policy_version" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "from_day" INTEGER NOT NULL,
    "body" TEXT,
    "reason" TEXT NOT NULL,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "policy_version_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "catheter_note_catheter_id_at_idx" ON "catheter_note"("catheter_id", "at");

-- CreateIndex
CREATE UNIQUE INDEX "policy_version_facility_id_ward_id_number_key" ON "policy_version"("facility_id", "ward_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "audit_entry_seal_number_key" ON "audit_entry"("seal_number");

-- CreateIndex
CREATE INDEX "audit_entry_seal_number_id_idx" ON "audit_entry"("seal_number", "id");

-- AddForeignKey
ALTER TABLE "catheter_note" ADD CONSTRAINT "catheter_note_catheter_id_fkey" FOREIGN KEY ("catheter_id") REFERENCES "catheter"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "policy_version" ADD CONSTRAINT "policy_version_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
