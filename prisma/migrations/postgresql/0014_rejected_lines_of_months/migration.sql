-- AlterTable
ALTER TABLE "import" ADD COLUMN     "first_day" INTEGER,
ADD COLUMN     "last_day" INTEGER;

-- AlterTable
ALTER TABLE "import_line" ADD COLUMN     "about" TEXT;

-- CreateTable
CREATE TABLE "import_line_month" (
    "import_id" INTEGER NOT NULL,
    "file" TEXT NOT NULL,
    "line" INTEGER NOT NULL,
    "month" TEXT NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "wards" TEXT,
    "dated" BOOLEAN NOT NULL,

    CONSTRAINT "import_line_month_pkey" PRIMARY KEY ("import_id","file","line","month")
);

-- CreateIndex
CREATE INDEX "import_line_month_facility_id_month_idx" ON "import_line_month"("facility_id", "month");

-- AddForeignKey
ALTER TABLE "import_line_month" ADD CONSTRAINT "import_line_month_import_id_file_line_fkey" FOREIGN KEY ("import_id", "file", "line") REFERENCES "import_line"("import_id", "file", "line") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Lines that are held for repair already kept nothing of what they name, so each touches any month.
INSERT INTO "import_line_month" ("import_id", "file", "line", "month", "facility_id", "wards", "dated")
SELECT l."import_id", l."file", l."line", '', i."facility_id", NULL, false
FROM "import_line" l JOIN "import" i ON i."id" = l."import_id"
WHERE l."state" = 'refused' AND i."state" = 'applied';
