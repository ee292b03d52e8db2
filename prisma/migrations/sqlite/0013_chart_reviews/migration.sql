-- AlterTable
ALTER TABLE "sign" ADD COLUMN "last_day" INTEGER;
ALTER TABLE "sign" ADD COLUMN "read_at" DATETIME;
