-- AlterTable
ALTER TABLE "import" ADD COLUMN     "done" INTEGER,
ADD COLUMN     "effects" TEXT,
ADD COLUMN     "notices" TEXT,
ADD COLUMN     "total" INTEGER;

-- AlterTable
ALTER TABLE "import_line" ADD COLUMN     "reason" TEXT,
ADD COLUMN     "settled_at" TIMESTAMP(3),
ADD COLUMN     "settled_by" INTEGER;

-- CreateTable
CREATE TABLE "import_file" (
    "import_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "text" TEXT,
    "header" TEXT,

    CONSTRAINT "import_file_pkey" PRIMARY KEY ("import_id","number")
);

-- AddForeignKey
ALTER TABLE "import_file" ADD CONSTRAINT "import_file_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "import"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
