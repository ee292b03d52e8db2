-- CreateTable
CREATE TABLE "id_block" (
    "name" TEXT NOT NULL,
    "next" INTEGER NOT NULL,

    CONSTRAINT "id_block_pkey" PRIMARY KEY ("name")
);

-- CreateTable
CREATE TABLE "facility" (
    "id" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "facility_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "facility_census" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "from_day" INTEGER NOT NULL,
    "time" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "facility_census_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person_role" (
    "person_id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "role" TEXT NOT NULL,

    CONSTRAINT "person_role_pkey" PRIMARY KEY ("person_id","facility_id","role")
);

-- CreateTable
CREATE TABLE "person_ward" (
    "person_id" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,

    CONSTRAINT "person_ward_pkey" PRIMARY KEY ("person_id","ward_id")
);

-- CreateTable
CREATE TABLE "ward" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "opened_day" INTEGER,
    "closed_day" INTEGER,
    "named_only" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "ward_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ward_setting" (
    "id" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "from_day" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "type" TEXT,
    "setting" TEXT,
    "beds" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "ward_setting_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "patient" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "identifier" TEXT NOT NULL,
    "birth_day" INTEGER,
    "sex" TEXT,
    "merged_into_id" INTEGER,
    "survivor_id" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "patient_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "patient_merge" (
    "id" INTEGER NOT NULL,
    "from_id" INTEGER NOT NULL,
    "into_id" INTEGER NOT NULL,
    "merged_at" TIMESTAMP(3) NOT NULL,
    "merged_by" INTEGER NOT NULL,
    "undone_at" TIMESTAMP(3),
    "undone_by" INTEGER,

    CONSTRAINT "patient_merge_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stay" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "patient_id" INTEGER NOT NULL,
    "number" TEXT NOT NULL,
    "admitted_at" TIMESTAMP(3) NOT NULL,
    "discharged_at" TIMESTAMP(3),
    "disposition" TEXT,
    "span_from_moves" BOOLEAN NOT NULL DEFAULT false,
    "marks" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "stay_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ward_stay" (
    "id" INTEGER NOT NULL,
    "stay_id" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "bed" TEXT,
    "start_at" TIMESTAMP(3) NOT NULL,
    "end_at" TIMESTAMP(3),
    "absence_after" TEXT,
    "marks" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "ward_stay_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "catheter" (
    "id" INTEGER NOT NULL,
    "stay_id" INTEGER NOT NULL,
    "number" TEXT,
    "kind" TEXT NOT NULL,
    "inserted_at" TIMESTAMP(3),
    "in_place_on_arrival" BOOLEAN NOT NULL DEFAULT false,
    "removed_at" TIMESTAMP(3),
    "removed_after_at" TIMESTAMP(3),
    "removed_before_at" TIMESTAMP(3),
    "last_seen_at" TIMESTAMP(3),
    "indication" TEXT,
    "size_fr" DOUBLE PRECISION,
    "balloon_ml" DOUBLE PRECISION,
    "marks" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "catheter_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "patient_day" (
    "patient_id" INTEGER NOT NULL,
    "day" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "stay_id" INTEGER NOT NULL,
    "catheter" BOOLEAN NOT NULL,

    CONSTRAINT "patient_day_pkey" PRIMARY KEY ("patient_id","day")
);

-- CreateTable
CREATE TABLE "daily_count" (
    "id" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "day" INTEGER NOT NULL,
    "patients" INTEGER NOT NULL,
    "catheters" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "daily_count_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "scope" (
    "id" INTEGER NOT NULL,
    "ward_id" INTEGER NOT NULL,
    "from_month" TEXT NOT NULL,
    "to_month" TEXT,
    "edition" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "void_key" INTEGER NOT NULL DEFAULT 0,
    "void_reason" TEXT,
    "recorded_at" TIMESTAMP(3) NOT NULL,
    "recorded_by" INTEGER NOT NULL,

    CONSTRAINT "scope_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "entry_version" (
    "kind" TEXT NOT NULL,
    "entry_id" INTEGER NOT NULL,
    "version" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    "replaced_at" TIMESTAMP(3) NOT NULL,
    "replaced_by" INTEGER NOT NULL,
    "reason" TEXT,

    CONSTRAINT "entry_version_pkey" PRIMARY KEY ("kind","entry_id","version")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "id" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "facility_id" INTEGER,
    "person_id" INTEGER NOT NULL,
    "action" TEXT NOT NULL,
    "details" TEXT NOT NULL,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_patient" (
    "audit_id" TEXT NOT NULL,
    "patient_id" INTEGER NOT NULL,

    CONSTRAINT "audit_patient_pkey" PRIMARY KEY ("audit_id","patient_id")
);

-- CreateTable
CREATE TABLE "idempotency_key" (
    "person_id" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "request_hash" TEXT NOT NULL,
    "status" INTEGER,
    "body" TEXT,
    "created_at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "idempotency_key_pkey" PRIMARY KEY ("person_id","key")
);

-- CreateTable
CREATE TABLE "import" (
    "id" INTEGER NOT NULL,
    "facility_id" INTEGER NOT NULL,
    "person_id" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "set_aside" BOOLEAN NOT NULL,
    "assume_inpatient" BOOLEAN NOT NULL,
    "started_at" TIMESTAMP(3) NOT NULL,
    "finished_at" TIMESTAMP(3),
    "summary" TEXT,

    CONSTRAINT "import_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "import_line" (
    "import_id" INTEGER NOT NULL,
    "file" TEXT NOT NULL,
    "line" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "group_key" TEXT NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "entry_key" TEXT NOT NULL,
    "content" TEXT,
    "faults" TEXT,

    CONSTRAINT "import_line_pkey" PRIMARY KEY ("import_id","file","line")
);

-- CreateIndex
CREATE UNIQUE INDEX "facility_census_facility_id_from_day_key" ON "facility_census"("facility_id", "from_day");

-- CreateIndex
CREATE UNIQUE INDEX "ward_facility_id_code_key" ON "ward"("facility_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "ward_setting_ward_id_from_day_key" ON "ward_setting"("ward_id", "from_day");

-- CreateIndex
CREATE INDEX "patient_survivor_id_idx" ON "patient"("survivor_id");

-- CreateIndex
CREATE UNIQUE INDEX "patient_facility_id_identifier_key" ON "patient"("facility_id", "identifier");

-- CreateIndex
CREATE INDEX "patient_merge_from_id_idx" ON "patient_merge"("from_id");

-- CreateIndex
CREATE INDEX "patient_merge_into_id_idx" ON "patient_merge"("into_id");

-- CreateIndex
CREATE INDEX "stay_patient_id_idx" ON "stay"("patient_id");

-- CreateIndex
CREATE INDEX "stay_facility_id_discharged_at_idx" ON "stay"("facility_id", "discharged_at");

-- CreateIndex
CREATE UNIQUE INDEX "stay_facility_id_number_void_key_key" ON "stay"("facility_id", "number", "void_key");

-- CreateIndex
CREATE INDEX "ward_stay_stay_id_idx" ON "ward_stay"("stay_id");

-- CreateIndex
CREATE INDEX "ward_stay_ward_id_start_at_idx" ON "ward_stay"("ward_id", "start_at");

-- CreateIndex
CREATE INDEX "catheter_stay_id_idx" ON "catheter"("stay_id");

-- CreateIndex
CREATE INDEX "patient_day_ward_id_day_catheter_idx" ON "patient_day"("ward_id", "day", "catheter");

-- CreateIndex
CREATE UNIQUE INDEX "daily_count_ward_id_day_key" ON "daily_count"("ward_id", "day");

-- CreateIndex
CREATE UNIQUE INDEX "scope_ward_id_from_month_void_key_key" ON "scope"("ward_id", "from_month", "void_key");

-- CreateIndex
CREATE INDEX "audit_entry_facility_id_at_idx" ON "audit_entry"("facility_id", "at");

-- CreateIndex
CREATE INDEX "audit_entry_person_id_at_idx" ON "audit_entry"("person_id", "at");

-- CreateIndex
CREATE INDEX "audit_patient_patient_id_idx" ON "audit_patient"("patient_id");

-- CreateIndex
CREATE INDEX "idempotency_key_created_at_idx" ON "idempotency_key"("created_at");

-- CreateIndex
CREATE INDEX "import_facility_id_state_idx" ON "import"("facility_id", "state");

-- CreateIndex
CREATE INDEX "import_line_import_id_group_key_idx" ON "import_line"("import_id", "group_key");

-- CreateIndex
CREATE INDEX "import_line_entry_key_idx" ON "import_line"("entry_key");

-- AddForeignKey
ALTER TABLE "facility_census" ADD CONSTRAINT "facility_census_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person_role" ADD CONSTRAINT "person_role_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person_role" ADD CONSTRAINT "person_role_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person_ward" ADD CONSTRAINT "person_ward_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person_ward" ADD CONSTRAINT "person_ward_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ward" ADD CONSTRAINT "ward_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ward_setting" ADD CONSTRAINT "ward_setting_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patient" ADD CONSTRAINT "patient_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patient" ADD CONSTRAINT "patient_survivor_id_fkey" FOREIGN KEY ("survivor_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patient_merge" ADD CONSTRAINT "patient_merge_from_id_fkey" FOREIGN KEY ("from_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patient_merge" ADD CONSTRAINT "patient_merge_into_id_fkey" FOREIGN KEY ("into_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stay" ADD CONSTRAINT "stay_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stay" ADD CONSTRAINT "stay_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ward_stay" ADD CONSTRAINT "ward_stay_stay_id_fkey" FOREIGN KEY ("stay_id") REFERENCES "stay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ward_stay" ADD CONSTRAINT "ward_stay_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "catheter" ADD CONSTRAINT "catheter_stay_id_fkey" FOREIGN KEY ("stay_id") REFERENCES "stay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patient_day" ADD CONSTRAINT "patient_day_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patient_day" ADD CONSTRAINT "patient_day_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "daily_count" ADD CONSTRAINT "daily_count_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "scope" ADD CONSTRAINT "scope_ward_id_fkey" FOREIGN KEY ("ward_id") REFERENCES "ward"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit_patient" ADD CONSTRAINT "audit_patient_audit_id_fkey" FOREIGN KEY ("audit_id") REFERENCES "audit_entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit_patient" ADD CONSTRAINT "audit_patient_patient_id_fkey" FOREIGN KEY ("patient_id") REFERENCES "patient"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import" ADD CONSTRAINT "import_facility_id_fkey" FOREIGN KEY ("facility_id") REFERENCES "facility"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import_line" ADD CONSTRAINT "import_line_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "import"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
