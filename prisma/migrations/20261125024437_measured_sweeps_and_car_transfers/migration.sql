-- CreateTable
CREATE TABLE "measured_sweep" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "part_id" UUID,
    "job_id" UUID,
    "model_id" UUID,
    "kind" TEXT NOT NULL,
    "use" TEXT NOT NULL,
    "columns" JSONB NOT NULL,
    "conditions" JSONB NOT NULL,
    "place" TEXT NOT NULL DEFAULT '',
    "direction" TEXT,
    "notes" TEXT NOT NULL DEFAULT '',
    "file_name" TEXT NOT NULL DEFAULT '',
    "text_sha256" TEXT NOT NULL,
    "taken_on" DATE,
    "taken_by" TEXT NOT NULL,
    "archived_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "measured_sweep_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "car_transfer" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "model_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "place" TEXT NOT NULL,
    "direction" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "curve" JSONB NOT NULL,
    "low_hz" DOUBLE PRECISION NOT NULL,
    "high_hz" DOUBLE PRECISION NOT NULL,
    "sweep_ids" UUID[],
    "kept_by" TEXT NOT NULL,
    "kept_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "car_transfer_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateIndex
CREATE INDEX "measured_sweep_shop_id_part_id_idx" ON "measured_sweep"("shop_id", "part_id");

-- CreateIndex
CREATE INDEX "measured_sweep_shop_id_job_id_idx" ON "measured_sweep"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "measured_sweep_shop_id_model_id_idx" ON "measured_sweep"("shop_id", "model_id");

-- CreateIndex
CREATE UNIQUE INDEX "car_transfer_shop_id_model_id_revision_key" ON "car_transfer"("shop_id", "model_id", "revision");

-- AddForeignKey
ALTER TABLE "measured_sweep" ADD CONSTRAINT "measured_sweep_shop_id_part_id_fkey" FOREIGN KEY ("shop_id", "part_id") REFERENCES "part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "measured_sweep" ADD CONSTRAINT "measured_sweep_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "measured_sweep" ADD CONSTRAINT "measured_sweep_shop_id_model_id_fkey" FOREIGN KEY ("shop_id", "model_id") REFERENCES "vehicle_model"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "car_transfer" ADD CONSTRAINT "car_transfer_shop_id_model_id_fkey" FOREIGN KEY ("shop_id", "model_id") REFERENCES "vehicle_model"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A sweep belongs to one driver, one job or one model of vehicle.
ALTER TABLE "measured_sweep" ADD CONSTRAINT "measured_sweep_one_owner" CHECK (num_nonnulls(part_id, job_id, model_id) = 1);

SELECT gusset_isolate('measured_sweep');
SELECT gusset_isolate('car_transfer');

-- What was measured and what was concluded from it stays as it was: sweeps are put away, transfers followed by new ones.
REVOKE UPDATE, DELETE ON measured_sweep FROM gusset_api;
GRANT UPDATE (archived_at) ON measured_sweep TO gusset_api;
REVOKE UPDATE, DELETE ON car_transfer FROM gusset_api;
