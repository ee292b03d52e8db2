-- AlterTable
ALTER TABLE "import" ADD COLUMN "done" INTEGER;
ALTER TABLE "import" ADD COLUMN "effects" TEXT;
ALTER TABLE "import" ADD COLUMN "notices" TEXT;
ALTER TABLE "import" ADD COLUMN "total" INTEGER;

-- AlterTable
ALTER TABLE "import_line" ADD COLUMN "reason" TEXT;
ALTER TABLE "import_line" ADD COLUMN "settled_at" DATETIME;
ALTER TABLE "import_line" ADD COLUMN "settled_by" INTEGER;

-- CreateTable
CREATE TABLE "import_file" (
    "import_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "text" TEXT,
    "header" TEXT,

    PRIMARY KEY ("import_id", "number"),
    CONSTRAINT "import_file_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "import" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
