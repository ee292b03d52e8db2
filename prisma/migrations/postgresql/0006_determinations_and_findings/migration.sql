-- CreateTable
CREATE TABLE "finding" (
    "id" INTEGER NOT NULL,
    "patient_id" INTEGER NOT NULL,
    "finding" TEXT NOT NULL,
    "day" INTEGER NOT NULL,
    "at" TIMESTAMP(3),
    "present" BOOLEAN NOT NULL,
    "cells_per_mm3" DOUBLE PRECISION,
    "marks" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "finding_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "determination" (
    "case_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "patient_id" INTEGER NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "day" INTEGER NOT NULL,
    "place_id" INTEGER,
    "edition_id" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "event_day" INTEGER,
    "ward_id" INTEGER,
    "is_cauti" BOOLEAN NOT NULL,
    "summary" TEXT NOT NULL,
    "reported" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "known_through" INTEGER NOT NULL,
    "settles_on" INTEGER NOT NULL,
    "cause" TEXT NOT NULL,
    "reason" TEXT,
    "determined_at" TIMESTAMP(3) NOT NULL,
    "determined_by" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "decision" TEXT,
    "decided" TEXT,

    CONSTRAINT "determination_pkey" PRIMARY KEY ("case_id","number")
);

-- CreateTable
CREATE TABLE "decision" (
    "case_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "about" INTEGER NOT NULL,
    "reason" TEXT,
    "decided_at" TIMESTAMP(3) NOT NULL,
    "decided_by" INTEGER NOT NULL,

    CONSTRAINT "decision_pkey" PRIMARY KEY ("case_id","number")
);

-- CreateTable
CREATE TABLE "none_found" (
    "id" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "month" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "none_found_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "finding_patient_id_day_idx" ON "finding"("patient_id", "day");

-- CreateIndex
CREATE INDEX "determination_patient_id_idx" ON "determination"("patient_id");

-- CreateIndex
CREATE INDEX "determination_state_day_idx" ON "determination"("state", "day");

-- CreateIndex
CREATE INDEX "determination_settles_on_known_through_idx" ON "determination"("settles_on", "known_through");

-- CreateIndex
CREATE UNIQUE INDEX "none_found_ward_id_month_void_key_key" ON "none_found"("ward_id", "month", "void_key");

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "determination" ADD CONSTRAINT "determination_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "none_found" ADD CONSTRAINT "none_found_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
