-- CreateTable
CREATE TABLE "baseline" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "year" TEXT NOT NULL,
    "definition" TEXT NOT NULL,
    "population" TEXT NOT NULL,
    "edition" TEXT NOT NULL,
    "rows" TEXT NOT NULL,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "baseline_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "comparison" (
    "facility_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "from_month" TEXT NOT NULL,
    "infection_baseline_id" INTEGER,
    "utilization_baseline_id" INTEGER,
    "goal" DOUBLE PRECISION,
    "limits" TEXT NOT NULL,
    "factors" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "comparison_pkey" PRIMARY KEY ("facility_id","number")
);

-- CreateTable
CREATE TABLE "signed_month" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "month" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "seen" TEXT NOT NULL,
    "signed_at" TIMESTAMP(3) NOT NULL,
    "signed_by" INTEGER NOT NULL,
    "role" TEXT NOT NULL,
    "reason" TEXT,

    CONSTRAINT "signed_month_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "signed_document" (
    "signed_month_id" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "digest" TEXT NOT NULL,
    "made_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "signed_document_pkey" PRIMARY KEY ("signed_month_id","media_type")
);

-- CreateIndex
CREATE INDEX "baseline_facility_id_idx" ON "baseline"("facility_id");

-- CreateIndex
CREATE UNIQUE INDEX "signed_month_facility_id_month_number_key" ON "signed_month"("facility_id", "month", "number");

-- AddForeignKey
ALTER TABLE "baseline" ADD CONSTRAINT "baseline_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comparison" ADD CONSTRAINT "comparison_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "signed_month" ADD CONSTRAINT "signed_month_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "signed_document" ADD CONSTRAINT "signed_document_signed_month_id_fkey" FOREIGN KEY ("signed_month_id") REFERENCES "signed_month"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
