-- DropIndex
DROP INDEX "ward_facility_id_code_key";

-- AlterTable
ALTER TABLE "import" ADD COLUMN     "ward_codes" TEXT;

-- AlterTable
ALTER TABLE "ward" ADD COLUMN     "merge_reason" TEXT,
ADD COLUMN     "merged_into_id" INTEGER,
ADD COLUMN     "void_key" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "void_reason" TEXT;

-- CreateTable
CREATE TABLE "ward_alias" (
    "id" INTEGER NOT NULL,
    "source_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "ward_alias_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "ward_alias_ward_id_idx" ON "ward_alias"("ward_id");

-- CreateIndex
CREATE UNIQUE INDEX "ward_alias_source_id_code_void_key_key" ON "ward_alias"("source_id", "code", "void_key");

-- CreateIndex
CREATE INDEX "ward_merged_into_id_idx" ON "ward"("merged_into_id");

-- CreateIndex
CREATE UNIQUE INDEX "ward_facility_id_code_void_key_key" ON "ward"("facility_id", "code", "void_key");

-- AddForeignKey
ALTER TABLE "ward" ADD CONSTRAINT "ward_merged_into_id_fkey" FOREIGN KEY ("merged_into_id") REFERENCES "ward"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ward_alias" ADD CONSTRAINT "ward_alias_source_id_fkey" FOREIGN KEY ("source_id") REFERENCES "import_source"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ward_alias" ADD CONSTRAINT "ward_alias_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
