-- AlterTable
ALTER TABLE "import" ADD COLUMN     "source_id" INTEGER;

-- CreateTable
CREATE TABLE "import_source" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "settings" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "import_source_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "import_source_facility_id_name_key" ON "import_source"("facility_id", "name");

-- AddForeignKey
ALTER TABLE "import_source" ADD CONSTRAINT "import_source_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import" ADD CONSTRAINT "import_source_id_fkey" FOREIGN KEY ("source_id") REFERENCES "import_source"("id") ON DELETE SET NULL ON UPDATE CASCADE;
