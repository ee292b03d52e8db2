-- AlterTable
ALTER TABLE "ward_setting" ADD COLUMN     "by_hand" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "reason" TEXT;
