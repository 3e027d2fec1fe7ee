-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "user" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "user_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" TEXT NOT NULL,
    "token" TEXT NOT NULL,
    "user_id" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account" (
    "id" TEXT NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "user_id" TEXT NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ(3),
    "refresh_token_expires_at" TIMESTAMPTZ(3),
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification" (
    "id" TEXT NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "last_request" BIGINT NOT NULL,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "shop" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "locale" TEXT NOT NULL DEFAULT 'en-GB',
    "settings" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "shop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "user_id" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "person_id" UUID,
    "length_unit" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "ended_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "membership_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "person" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "phone" TEXT,
    "skills" TEXT[],
    "hourly_cost_minor" INTEGER NOT NULL DEFAULT 0,
    "sort" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "person_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "person_leave" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "from_on" DATE NOT NULL,
    "to_on" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "person_leave_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "bay" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kinds" TEXT[],
    "sort" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "bay_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "access_token" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "detail" JSONB NOT NULL DEFAULT '{}',
    "created_by" TEXT,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),
    "used_count" INTEGER NOT NULL DEFAULT 0,
    "last_used_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "access_token_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "customer" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "phone" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "address" TEXT NOT NULL DEFAULT '',
    "notes" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "customer_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "vehicle_model" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "make" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "year_from" INTEGER,
    "year_to" INTEGER,
    "body" TEXT NOT NULL,
    "powertrain" TEXT NOT NULL DEFAULT 'unknown',
    "payload_kg" DOUBLE PRECISION,
    "longest_cabin_m" DOUBLE PRECISION,
    "notes" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "vehicle_model_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "vehicle" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "plate" TEXT NOT NULL DEFAULT '',
    "year" INTEGER,
    "colour" TEXT NOT NULL DEFAULT '',
    "notes" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "vehicle_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "survey" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "form_kind" TEXT NOT NULL,
    "space_name" TEXT NOT NULL DEFAULT '',
    "seat_state" TEXT NOT NULL DEFAULT '',
    "revision" INTEGER NOT NULL DEFAULT 1,
    "settled_at" TIMESTAMPTZ(3),
    "taken_by" TEXT NOT NULL DEFAULT '',
    "taken_on" DATE,
    "notes" TEXT NOT NULL DEFAULT '',
    "extras" JSONB NOT NULL DEFAULT '{}',
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "survey_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "measurement" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "typed" TEXT NOT NULL,
    "plus_minus" DOUBLE PRECISION NOT NULL,
    "method" TEXT NOT NULL,
    "taken_by" TEXT NOT NULL DEFAULT '',
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "measurement_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "survey_photo" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "measurement_key" TEXT,
    "file_id" UUID NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "survey_photo_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "stored_file" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "sha256" TEXT NOT NULL,
    "mime" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "width_px" INTEGER,
    "height_px" INTEGER,
    "name" TEXT NOT NULL,
    "created_by" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "stored_file_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "supplier" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'supplier',
    "contact" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL DEFAULT '',
    "phone" TEXT NOT NULL DEFAULT '',
    "lead_days" INTEGER NOT NULL DEFAULT 3,
    "terms" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "supplier_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "part" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "maker" TEXT NOT NULL DEFAULT '',
    "name" TEXT NOT NULL,
    "code" TEXT NOT NULL DEFAULT '',
    "unit" TEXT NOT NULL DEFAULT 'each',
    "supplier_id" UUID,
    "buy_price_minor" INTEGER NOT NULL DEFAULT 0,
    "sell_price_minor" INTEGER NOT NULL DEFAULT 0,
    "stock_quantity" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "lead_days" INTEGER,
    "figures" JSONB NOT NULL,
    "notes" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "part_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "job" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "vehicle_id" UUID,
    "wished_on" DATE,
    "promised_on" DATE,
    "forecast_on" DATE,
    "standing" TEXT NOT NULL DEFAULT 'enquiry',
    "surveyed_at" TIMESTAMPTZ(3),
    "priced_at" TIMESTAMPTZ(3),
    "quoted_at" TIMESTAMPTZ(3),
    "approved_at" TIMESTAMPTZ(3),
    "in_bay_at" TIMESTAMPTZ(3),
    "handed_over_at" TIMESTAMPTZ(3),
    "declined_at" TIMESTAMPTZ(3),
    "total_minor" INTEGER,
    "plan_rank" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "job_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "sheet" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "input" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "edited_by" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sheet_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "sheet_issue" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "input" JSONB NOT NULL,
    "facts" JSONB NOT NULL,
    "upstream" JSONB NOT NULL,
    "result" JSONB NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "issued_by" TEXT,
    "issued_by_name" TEXT NOT NULL,
    "issued_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "checked_by_name" TEXT,
    "checked_at" TIMESTAMPTZ(3),

    CONSTRAINT "sheet_issue_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "quote" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "price_issue_id" UUID NOT NULL,
    "snapshot" JSONB NOT NULL,
    "snapshot_sha256" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "total_minor" INTEGER NOT NULL,
    "deposit_minor" INTEGER NOT NULL,
    "valid_until" DATE NOT NULL,
    "promised_on" DATE,
    "created_by" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sent_at" TIMESTAMPTZ(3),
    "sent_to" TEXT,
    "first_seen_at" TIMESTAMPTZ(3),
    "approved_at" TIMESTAMPTZ(3),
    "approved_by_name" TEXT,
    "approved_from" TEXT,
    "declined_at" TIMESTAMPTZ(3),
    "superseded_at" TIMESTAMPTZ(3),

    CONSTRAINT "quote_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "quote_message" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "quote_id" UUID NOT NULL,
    "side" TEXT NOT NULL,
    "author_name" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "quote_message_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "job_task" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "skill" TEXT NOT NULL,
    "bay_kind" TEXT,
    "minutes" INTEGER NOT NULL,
    "breakable" BOOLEAN NOT NULL DEFAULT true,
    "vehicle_on_site" BOOLEAN NOT NULL DEFAULT false,
    "prerequisites" JSONB NOT NULL,
    "needs_part_lines" TEXT[],
    "sort" INTEGER NOT NULL DEFAULT 0,
    "pinned_person_id" UUID,
    "pinned_bay_id" UUID,
    "earliest_on" DATE,
    "started_at" TIMESTAMPTZ(3),
    "started_by" UUID,
    "finished_at" TIMESTAMPTZ(3),
    "worked_minutes" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "job_task_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "part_delivery" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "line_key" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "expected_on" DATE,
    "received_at" TIMESTAMPTZ(3),
    "return_due_on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "part_delivery_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "plan_run" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "input" JSONB NOT NULL,
    "plan" JSONB NOT NULL,
    "because" TEXT NOT NULL DEFAULT '',
    "computed_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "plan_run_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "counter" (
    "shop_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "value" INTEGER NOT NULL,

    CONSTRAINT "counter_pkey" PRIMARY KEY ("shop_id","name")
);

-- CreateTable
CREATE TABLE "idempotency_key" (
    "shop_id" UUID NOT NULL,
    "actor" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "request_hash" TEXT NOT NULL,
    "answer" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "idempotency_key_pkey" PRIMARY KEY ("shop_id","actor","key")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "shop_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "actor" TEXT NOT NULL,
    "actor_name" TEXT NOT NULL,
    "request_id" TEXT NOT NULL,
    "act" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subject_id" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,
    "prev_hash" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("shop_id","seq")
);

-- CreateTable
CREATE TABLE "mail_message" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "purpose" TEXT NOT NULL,
    "subject_id" UUID,
    "to_address" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "sent_at" TIMESTAMPTZ(3),
    "failed_at" TIMESTAMPTZ(3),
    "failure" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "mail_message_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "user_email_key" ON "user"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE INDEX "session_user_id_idx" ON "session"("user_id");

-- CreateIndex
CREATE INDEX "account_user_id_idx" ON "account"("user_id");

-- CreateIndex
CREATE INDEX "verification_identifier_idx" ON "verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "rate_limit_key_key" ON "rate_limit"("key");

-- CreateIndex
CREATE INDEX "membership_user_id_idx" ON "membership"("user_id");

-- CreateIndex
CREATE UNIQUE INDEX "membership_shop_id_user_id_key" ON "membership"("shop_id", "user_id");

-- CreateIndex
CREATE INDEX "person_leave_shop_id_person_id_idx" ON "person_leave"("shop_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "access_token_token_hash_key" ON "access_token"("token_hash");

-- CreateIndex
CREATE INDEX "access_token_shop_id_purpose_subject_id_idx" ON "access_token"("shop_id", "purpose", "subject_id");

-- CreateIndex
CREATE INDEX "customer_shop_id_name_id_idx" ON "customer"("shop_id", "name", "id");

-- CreateIndex
CREATE INDEX "vehicle_model_shop_id_make_model_id_idx" ON "vehicle_model"("shop_id", "make", "model", "id");

-- CreateIndex
CREATE INDEX "vehicle_shop_id_customer_id_idx" ON "vehicle"("shop_id", "customer_id");

-- CreateIndex
CREATE INDEX "vehicle_shop_id_model_id_idx" ON "vehicle"("shop_id", "model_id");

-- CreateIndex
CREATE INDEX "survey_shop_id_model_id_idx" ON "survey"("shop_id", "model_id");

-- CreateIndex
CREATE UNIQUE INDEX "measurement_shop_id_survey_id_key_key" ON "measurement"("shop_id", "survey_id", "key");

-- CreateIndex
CREATE INDEX "survey_photo_shop_id_survey_id_idx" ON "survey_photo"("shop_id", "survey_id");

-- CreateIndex
CREATE UNIQUE INDEX "stored_file_shop_id_sha256_key" ON "stored_file"("shop_id", "sha256");

-- CreateIndex
CREATE INDEX "part_shop_id_kind_name_id_idx" ON "part"("shop_id", "kind", "name", "id");

-- CreateIndex
CREATE INDEX "job_shop_id_standing_number_idx" ON "job"("shop_id", "standing", "number");

-- CreateIndex
CREATE INDEX "job_shop_id_updated_at_id_idx" ON "job"("shop_id", "updated_at", "id");

-- CreateIndex
CREATE INDEX "job_shop_id_customer_id_idx" ON "job"("shop_id", "customer_id");

-- CreateIndex
CREATE INDEX "job_shop_id_vehicle_id_idx" ON "job"("shop_id", "vehicle_id");

-- CreateIndex
CREATE UNIQUE INDEX "job_shop_id_number_key" ON "job"("shop_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "sheet_shop_id_job_id_kind_key" ON "sheet"("shop_id", "job_id", "kind");

-- CreateIndex
CREATE UNIQUE INDEX "sheet_issue_shop_id_job_id_kind_revision_key" ON "sheet_issue"("shop_id", "job_id", "kind", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "quote_shop_id_job_id_version_key" ON "quote"("shop_id", "job_id", "version");

-- CreateIndex
CREATE INDEX "quote_message_shop_id_quote_id_idx" ON "quote_message"("shop_id", "quote_id");

-- CreateIndex
CREATE UNIQUE INDEX "job_task_shop_id_job_id_key_key" ON "job_task"("shop_id", "job_id", "key");

-- CreateIndex
CREATE UNIQUE INDEX "part_delivery_shop_id_job_id_line_key_key" ON "part_delivery"("shop_id", "job_id", "line_key");

-- CreateIndex
CREATE INDEX "plan_run_shop_id_computed_at_idx" ON "plan_run"("shop_id", "computed_at");

-- CreateIndex
CREATE INDEX "audit_entry_shop_id_subject_subject_id_idx" ON "audit_entry"("shop_id", "subject", "subject_id");

-- CreateIndex
CREATE INDEX "mail_message_shop_id_created_at_idx" ON "mail_message"("shop_id", "created_at");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "account" ADD CONSTRAINT "account_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_shop_id_fkey" FOREIGN KEY ("shop_id") REFERENCES "shop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_shop_id_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "person_leave" ADD CONSTRAINT "person_leave_shop_id_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_shop_id_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_shop_id_model_id_fkey" FOREIGN KEY ("shop_id", "model_id") REFERENCES "vehicle_model"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "survey" ADD CONSTRAINT "survey_shop_id_model_id_fkey" FOREIGN KEY ("shop_id", "model_id") REFERENCES "vehicle_model"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "measurement" ADD CONSTRAINT "measurement_shop_id_survey_id_fkey" FOREIGN KEY ("shop_id", "survey_id") REFERENCES "survey"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "survey_photo" ADD CONSTRAINT "survey_photo_shop_id_survey_id_fkey" FOREIGN KEY ("shop_id", "survey_id") REFERENCES "survey"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "survey_photo" ADD CONSTRAINT "survey_photo_shop_id_file_id_fkey" FOREIGN KEY ("shop_id", "file_id") REFERENCES "stored_file"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part" ADD CONSTRAINT "part_shop_id_supplier_id_fkey" FOREIGN KEY ("shop_id", "supplier_id") REFERENCES "supplier"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_shop_id_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheet" ADD CONSTRAINT "sheet_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheet_issue" ADD CONSTRAINT "sheet_issue_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote" ADD CONSTRAINT "quote_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_message" ADD CONSTRAINT "quote_message_shop_id_quote_id_fkey" FOREIGN KEY ("shop_id", "quote_id") REFERENCES "quote"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_task" ADD CONSTRAINT "job_task_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_delivery" ADD CONSTRAINT "part_delivery_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
