-- DropIndex
DROP INDEX "sheet_shop_id_job_id_kind_key";

-- DropIndex
DROP INDEX "sheet_issue_shop_id_job_id_kind_revision_key";

-- AlterTable
ALTER TABLE "sheet" ADD COLUMN     "enclosure_id" UUID;

-- AlterTable
ALTER TABLE "sheet_issue" ADD COLUMN     "enclosure_id" UUID;

-- CreateTable
CREATE TABLE "job_enclosure" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "copies" INTEGER NOT NULL DEFAULT 1,
    "copied_from_id" UUID,
    "set_aside_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "job_enclosure_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "job_enclosure_shop_id_job_id_number_key" ON "job_enclosure"("shop_id", "job_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "job_enclosure_shop_id_job_id_id_key" ON "job_enclosure"("shop_id", "job_id", "id");

-- CreateIndex
CREATE INDEX "sheet_issue_shop_id_kind_issued_at_idx" ON "sheet_issue"("shop_id", "kind", "issued_at");

-- Every job has an enclosure from the start, and the sheets that were drawn belong to it. Whoever migrates may be the
-- tables' owner without being above their policies.
ALTER TABLE "job" NO FORCE ROW LEVEL SECURITY;
ALTER TABLE "sheet" NO FORCE ROW LEVEL SECURITY;
ALTER TABLE "sheet_issue" NO FORCE ROW LEVEL SECURITY;

CREATE FUNCTION gusset_first_enclosure() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO job_enclosure (shop_id, id, job_id, number, position, name)
  VALUES (NEW.shop_id, gen_random_uuid(), NEW.id, 1, 1, 'Bass box');
  RETURN NULL;
END $$;
CREATE TRIGGER has_an_enclosure AFTER INSERT ON job FOR EACH ROW EXECUTE FUNCTION gusset_first_enclosure();

INSERT INTO job_enclosure (shop_id, id, job_id, number, position, name)
SELECT shop_id, gen_random_uuid(), id, 1, 1, 'Bass box' FROM job;

UPDATE sheet SET enclosure_id = e.id FROM job_enclosure e
WHERE sheet.kind IN ('sound', 'box') AND e.shop_id = sheet.shop_id AND e.job_id = sheet.job_id;

UPDATE sheet_issue SET enclosure_id = e.id FROM job_enclosure e
WHERE sheet_issue.kind IN ('sound', 'box') AND e.shop_id = sheet_issue.shop_id AND e.job_id = sheet_issue.job_id;

ALTER TABLE "job" FORCE ROW LEVEL SECURITY;
ALTER TABLE "sheet" FORCE ROW LEVEL SECURITY;
ALTER TABLE "sheet_issue" FORCE ROW LEVEL SECURITY;

-- Sound and box belong to an enclosure, all other sheets to the job alone; one sheet of a kind in each.
ALTER TABLE "sheet" ADD CONSTRAINT "sheet_of_enclosure"
  CHECK ((kind IN ('sound', 'box')) = (enclosure_id IS NOT NULL));
ALTER TABLE "sheet_issue" ADD CONSTRAINT "sheet_issue_of_enclosure"
  CHECK ((kind IN ('sound', 'box')) = (enclosure_id IS NOT NULL));
CREATE UNIQUE INDEX "sheet_one_of_a_kind" ON "sheet"("shop_id", "job_id", "kind", "enclosure_id") NULLS NOT DISTINCT;
CREATE UNIQUE INDEX "sheet_issue_one_of_a_revision"
  ON "sheet_issue"("shop_id", "job_id", "kind", "enclosure_id", "revision") NULLS NOT DISTINCT;

ALTER TABLE "job_enclosure" ADD CONSTRAINT "job_enclosure_copies" CHECK (copies BETWEEN 1 AND 99);

-- AddForeignKey
ALTER TABLE "job_enclosure" ADD CONSTRAINT "job_enclosure_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_enclosure" ADD CONSTRAINT "job_enclosure_shop_id_copied_from_id_fkey" FOREIGN KEY ("shop_id", "copied_from_id") REFERENCES "sheet_issue"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheet" ADD CONSTRAINT "sheet_shop_id_job_id_enclosure_id_fkey" FOREIGN KEY ("shop_id", "job_id", "enclosure_id") REFERENCES "job_enclosure"("shop_id", "job_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheet_issue" ADD CONSTRAINT "sheet_issue_shop_id_job_id_enclosure_id_fkey" FOREIGN KEY ("shop_id", "job_id", "enclosure_id") REFERENCES "job_enclosure"("shop_id", "job_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

SELECT gusset_isolate('job_enclosure');
