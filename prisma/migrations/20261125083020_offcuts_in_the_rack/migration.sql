-- CreateTable
CREATE TABLE "offcut" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "part_id" UUID NOT NULL,
    "length_mm" DOUBLE PRECISION NOT NULL,
    "width_mm" DOUBLE PRECISION NOT NULL,
    "thickness_mm" DOUBLE PRECISION NOT NULL,
    "place" TEXT NOT NULL DEFAULT '',
    "cut_in_id" UUID,
    "used_in_id" UUID,
    "thrown_away_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "offcut_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "cut_report" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "issue_id" UUID NOT NULL,
    "taken" JSONB NOT NULL,
    "reported_by" TEXT NOT NULL,
    "reported_by_name" TEXT NOT NULL,
    "reported_at" TIMESTAMPTZ(3) NOT NULL,
    "undone_by_name" TEXT,
    "undone_at" TIMESTAMPTZ(3),

    CONSTRAINT "cut_report_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateIndex
CREATE INDEX "offcut_shop_id_part_id_idx" ON "offcut"("shop_id", "part_id");

-- CreateIndex
CREATE UNIQUE INDEX "offcut_shop_id_number_key" ON "offcut"("shop_id", "number");

-- CreateIndex
CREATE INDEX "cut_report_shop_id_job_id_idx" ON "cut_report"("shop_id", "job_id");

-- AddForeignKey
ALTER TABLE "offcut" ADD CONSTRAINT "offcut_shop_id_part_id_fkey" FOREIGN KEY ("shop_id", "part_id") REFERENCES "part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "offcut" ADD CONSTRAINT "offcut_shop_id_cut_in_id_fkey" FOREIGN KEY ("shop_id", "cut_in_id") REFERENCES "cut_report"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "offcut" ADD CONSTRAINT "offcut_shop_id_used_in_id_fkey" FOREIGN KEY ("shop_id", "used_in_id") REFERENCES "cut_report"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cut_report" ADD CONSTRAINT "cut_report_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cut_report" ADD CONSTRAINT "cut_report_shop_id_issue_id_fkey" FOREIGN KEY ("shop_id", "issue_id") REFERENCES "sheet_issue"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A sheet is cut once; an undone report makes way for another.
CREATE UNIQUE INDEX "cut_report_one_standing" ON "cut_report"("shop_id", "issue_id") WHERE "undone_at" IS NULL;

SELECT gusset_isolate('offcut');
SELECT gusset_isolate('cut_report');
