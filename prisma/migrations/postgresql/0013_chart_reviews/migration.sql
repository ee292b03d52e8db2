-- AlterTable
ALTER TABLE "sign" ADD COLUMN     "last_day" INTEGER,
ADD COLUMN     "read_at" TIMESTAMP(3);
