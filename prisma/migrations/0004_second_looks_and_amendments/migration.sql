-- AlterTable
ALTER TABLE "answer" ADD COLUMN     "seen_revision" INTEGER;

-- AlterTable
ALTER TABLE "want" ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1;

-- AlterTable
ALTER TABLE "mark" ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1;

-- AlterTable
ALTER TABLE "regrade" ADD COLUMN     "agreed" INTEGER[] DEFAULT ARRAY[]::INTEGER[],
ADD COLUMN     "done" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "total" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "puzzle" ADD COLUMN     "revision" INTEGER NOT NULL DEFAULT 1;

-- CreateTable
CREATE TABLE "second_look" (
    "id" SERIAL NOT NULL,
    "answer_id" INTEGER NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "words" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),
    "settled_at" TIMESTAMPTZ(6),
    "result" TEXT,
    "reply" TEXT,
    "member_id" INTEGER,

    CONSTRAINT "second_look_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "amendment" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "terms" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "claim" TEXT,
    "report" JSONB,
    "engine_version" TEXT,
    "failure" TEXT,
    "member_id" INTEGER,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "decided_at" TIMESTAMPTZ(6),

    CONSTRAINT "amendment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "former_terms" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "terms" JSONB NOT NULL,
    "engine_version" TEXT NOT NULL,
    "replaced_at" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),

    CONSTRAINT "former_terms_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "correction" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "details" JSONB NOT NULL DEFAULT '{}',
    "revision" INTEGER NOT NULL,
    "member_id" INTEGER,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),

    CONSTRAINT "correction_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "second_look_answer_id_key" ON "second_look"("answer_id");

-- CreateIndex
CREATE INDEX "second_look_puzzle_id_idx" ON "second_look"("puzzle_id");

-- CreateIndex
CREATE INDEX "amendment_puzzle_id_idx" ON "amendment"("puzzle_id");

-- CreateIndex
CREATE UNIQUE INDEX "former_terms_puzzle_id_revision_key" ON "former_terms"("puzzle_id", "revision");

-- CreateIndex
CREATE INDEX "correction_puzzle_id_idx" ON "correction"("puzzle_id");

-- AddForeignKey
ALTER TABLE "second_look" ADD CONSTRAINT "second_look_answer_id_fkey" FOREIGN KEY ("answer_id") REFERENCES "answer"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "second_look" ADD CONSTRAINT "second_look_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "second_look" ADD CONSTRAINT "second_look_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "amendment" ADD CONSTRAINT "amendment_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "amendment" ADD CONSTRAINT "amendment_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "former_terms" ADD CONSTRAINT "former_terms_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "correction" ADD CONSTRAINT "correction_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "correction" ADD CONSTRAINT "correction_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;
