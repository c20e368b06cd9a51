-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "answer" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "solver_id" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "name" TEXT,
    "has_meant" BOOLEAN NOT NULL DEFAULT false,
    "meant" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "channel" TEXT NOT NULL,
    "received_at" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),
    "stated_from" TIMESTAMPTZ(6),
    "stated_to" TIMESTAMPTZ(6),
    "time_word" TEXT,
    "client_key" TEXT,
    "receipt_hash" TEXT,
    "locale" TEXT,
    "is_reply" BOOLEAN NOT NULL DEFAULT false,
    "is_addressed" BOOLEAN,
    "intake_flags" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "withdrawn_at" TIMESTAMPTZ(6),
    "work" TEXT NOT NULL DEFAULT 'to-mark',
    "tries" INTEGER NOT NULL DEFAULT 0,
    "asked" INTEGER NOT NULL DEFAULT 0,
    "standing" TEXT NOT NULL DEFAULT 'waiting',

    CONSTRAINT "answer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "book_row" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "position" TEXT NOT NULL,
    "moves_left" INTEGER,
    "move" TEXT NOT NULL,
    "verdict" TEXT NOT NULL,
    "mate_in" INTEGER,
    "value" INTEGER,
    "depth" INTEGER NOT NULL,
    "nodes" BIGINT NOT NULL,
    "evidence" JSONB NOT NULL,
    "proof_id" INTEGER,
    "check_status" TEXT NOT NULL,
    "replies" JSONB NOT NULL,
    "adequate" TEXT[],
    "evident" BOOLEAN,
    "still_winning" BOOLEAN,
    "engine_version" TEXT NOT NULL,
    "budgets" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "book_row_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "proof" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "body" TEXT NOT NULL,

    CONSTRAINT "proof_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ruling" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "position" TEXT,
    "moves_left" INTEGER,
    "move" TEXT,
    "verdict" TEXT,
    "text_hash" TEXT,
    "meant" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "reason" TEXT NOT NULL,
    "member_id" INTEGER,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "superseded_at" TIMESTAMPTZ(6),

    CONSTRAINT "ruling_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "want" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "answer_id" INTEGER,
    "fen" TEXT NOT NULL,
    "position" TEXT NOT NULL,
    "moves_left" INTEGER,
    "move" TEXT NOT NULL,
    "turn" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "want_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "source" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "source_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "import" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "source_id" INTEGER NOT NULL,
    "format" TEXT NOT NULL,
    "file_name" TEXT,
    "bytes" BYTEA,
    "hash" TEXT NOT NULL,
    "columns" JSONB,
    "time_word" TEXT NOT NULL,
    "exported_at" TIMESTAMPTZ(6),
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "new_count" INTEGER NOT NULL DEFAULT 0,
    "known_count" INTEGER NOT NULL DEFAULT 0,
    "edited_count" INTEGER NOT NULL DEFAULT 0,
    "refused" JSONB NOT NULL DEFAULT '[]',
    "member_id" INTEGER,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finished_at" TIMESTAMPTZ(6),

    CONSTRAINT "import_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "comment" (
    "id" SERIAL NOT NULL,
    "source_id" INTEGER NOT NULL,
    "import_id" INTEGER NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "external_id" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "author" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "stated_from" TIMESTAMPTZ(6),
    "stated_to" TIMESTAMPTZ(6),
    "link" TEXT,
    "seen_at" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),
    "answer_id" INTEGER,

    CONSTRAINT "comment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "log" (
    "id" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT clock_timestamp(),
    "kind" TEXT NOT NULL,
    "member_id" INTEGER,
    "puzzle_id" INTEGER,
    "answer_id" INTEGER,
    "details" JSONB NOT NULL DEFAULT '{}',
    "prev_hash" TEXT NOT NULL DEFAULT '',
    "hash" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "log_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "worker_beat" (
    "id" TEXT NOT NULL,
    "pid" INTEGER NOT NULL,
    "worker_ids" TEXT[],
    "started_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "beat_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "worker_beat_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "key" VARCHAR(255) NOT NULL,
    "points" INTEGER NOT NULL DEFAULT 0,
    "expire" BIGINT,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "mark" (
    "id" SERIAL NOT NULL,
    "answer_id" INTEGER NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "solver_id" INTEGER NOT NULL,
    "outcome" TEXT NOT NULL,
    "flags" TEXT[],
    "points" INTEGER NOT NULL,
    "p" INTEGER NOT NULL,
    "r" INTEGER NOT NULL,
    "at_move" INTEGER,
    "has_line" BOOLEAN NOT NULL,
    "line" TEXT[],
    "reading" JSONB,
    "verdicts" JSONB NOT NULL,
    "reason" JSONB NOT NULL,
    "scheme" TEXT NOT NULL,
    "scheme_version" INTEGER NOT NULL,
    "reader_version" INTEGER NOT NULL,
    "engine_version" TEXT,
    "book_version" TEXT NOT NULL,
    "made_by" TEXT NOT NULL,
    "member_id" INTEGER,
    "why" TEXT,
    "doubt" TEXT,
    "regrade_id" INTEGER,
    "is_current" BOOLEAN NOT NULL DEFAULT true,
    "superseded_by_id" INTEGER,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "mark_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "regrade" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "scope" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "differences" JSONB NOT NULL,
    "member_id" INTEGER,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "decided_at" TIMESTAMPTZ(6),

    CONSTRAINT "regrade_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "scheme" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "numbers" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "scheme_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "puzzle" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "episode_id" INTEGER NOT NULL,
    "slug" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "fen" TEXT NOT NULL,
    "task_kind" TEXT NOT NULL,
    "mate_moves" INTEGER,
    "scheme" TEXT NOT NULL DEFAULT 'full-line',
    "scheme_version" INTEGER NOT NULL DEFAULT 1,
    "win_bound" INTEGER NOT NULL DEFAULT 300,
    "slip_bound" INTEGER NOT NULL DEFAULT 150,
    "draw_bound" INTEGER NOT NULL DEFAULT -75,
    "draw_slip_bound" INTEGER NOT NULL DEFAULT -150,
    "any_defence" BOOLEAN NOT NULL DEFAULT false,
    "mate_written" BOOLEAN NOT NULL DEFAULT false,
    "solver_moves" INTEGER,
    "is_strict" BOOLEAN NOT NULL DEFAULT false,
    "proof_nodes" INTEGER NOT NULL DEFAULT 20000000,
    "budget_nodes" INTEGER NOT NULL DEFAULT 5000000,
    "counts_first" BOOLEAN NOT NULL DEFAULT false,
    "how_far" TEXT,
    "zone" TEXT NOT NULL DEFAULT 'UTC',
    "opens_at" TIMESTAMPTZ(6),
    "closes_at" TIMESTAMPTZ(6),
    "verified_at" TIMESTAMPTZ(6),
    "claim" TEXT,
    "report" JSONB,
    "engine_version" TEXT,
    "claim_override" TEXT,
    "published_at" TIMESTAMPTZ(6),
    "closed_at" TIMESTAMPTZ(6),
    "revealed_at" TIMESTAMPTZ(6),
    "voided_at" TIMESTAMPTZ(6),
    "created_by" INTEGER,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "puzzle_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "published_line" (
    "id" SERIAL NOT NULL,
    "puzzle_id" INTEGER NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "published_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "progress" (
    "puzzle_id" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "stage" TEXT,
    "done" INTEGER NOT NULL DEFAULT 0,
    "total" INTEGER NOT NULL DEFAULT 0,
    "nodes" BIGINT NOT NULL DEFAULT 0,
    "verdicts" INTEGER NOT NULL DEFAULT 0,
    "failure" TEXT,
    "started_at" TIMESTAMPTZ(6),
    "updated_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finished_at" TIMESTAMPTZ(6),

    CONSTRAINT "progress_pkey" PRIMARY KEY ("puzzle_id")
);

-- CreateTable
CREATE TABLE "show" (
    "id" SERIAL NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL DEFAULT 'UTC',
    "locale" TEXT NOT NULL DEFAULT 'en',
    "ladder_target" INTEGER,
    "own_voices" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "show_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "member" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "sign_in_name" TEXT NOT NULL,
    "password_hash" TEXT,
    "role" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "removed_at" TIMESTAMPTZ(6),

    CONSTRAINT "member_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "setup_link" (
    "id" SERIAL NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "used_at" TIMESTAMPTZ(6),
    "voided_at" TIMESTAMPTZ(6),

    CONSTRAINT "setup_link_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "season" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "is_sample" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "season_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "episode" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "season_id" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "aired_at" TIMESTAMPTZ(6),
    "is_sample" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "episode_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "solver" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "name" TEXT,
    "name_hidden_at" TIMESTAMPTZ(6),
    "joined_into_id" INTEGER,
    "is_sample" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "solver_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "solver_identity" (
    "id" SERIAL NOT NULL,
    "show_id" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "solver_id" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "solver_identity_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "answer_client_key_key" ON "answer"("client_key");

-- CreateIndex
CREATE INDEX "answer_puzzle_id_solver_id_idx" ON "answer"("puzzle_id", "solver_id");

-- CreateIndex
CREATE INDEX "answer_solver_id_idx" ON "answer"("solver_id");

-- CreateIndex
CREATE INDEX "answer_receipt_hash_idx" ON "answer"("receipt_hash");

-- CreateIndex
CREATE INDEX "book_row_puzzle_id_idx" ON "book_row"("puzzle_id");

-- CreateIndex
CREATE UNIQUE INDEX "proof_puzzle_id_hash_key" ON "proof"("puzzle_id", "hash");

-- CreateIndex
CREATE INDEX "ruling_puzzle_id_idx" ON "ruling"("puzzle_id");

-- CreateIndex
CREATE INDEX "want_puzzle_id_turn_idx" ON "want"("puzzle_id", "turn");

-- CreateIndex
CREATE INDEX "want_answer_id_idx" ON "want"("answer_id");

-- CreateIndex
CREATE UNIQUE INDEX "source_show_id_name_key" ON "source"("show_id", "name");

-- CreateIndex
CREATE INDEX "import_puzzle_id_idx" ON "import"("puzzle_id");

-- CreateIndex
CREATE INDEX "import_source_id_idx" ON "import"("source_id");

-- CreateIndex
CREATE UNIQUE INDEX "comment_answer_id_key" ON "comment"("answer_id");

-- CreateIndex
CREATE INDEX "comment_import_id_idx" ON "comment"("import_id");

-- CreateIndex
CREATE INDEX "comment_puzzle_id_idx" ON "comment"("puzzle_id");

-- CreateIndex
CREATE UNIQUE INDEX "comment_source_id_puzzle_id_external_id_version_key" ON "comment"("source_id", "puzzle_id", "external_id", "version");

-- CreateIndex
CREATE INDEX "log_puzzle_id_idx" ON "log"("puzzle_id");

-- CreateIndex
CREATE INDEX "log_answer_id_idx" ON "log"("answer_id");

-- CreateIndex
CREATE INDEX "mark_answer_id_idx" ON "mark"("answer_id");

-- CreateIndex
CREATE INDEX "mark_solver_id_idx" ON "mark"("solver_id");

-- CreateIndex
CREATE INDEX "mark_superseded_by_id_idx" ON "mark"("superseded_by_id");

-- CreateIndex
CREATE INDEX "regrade_puzzle_id_idx" ON "regrade"("puzzle_id");

-- CreateIndex
CREATE UNIQUE INDEX "scheme_show_id_name_version_key" ON "scheme"("show_id", "name", "version");

-- CreateIndex
CREATE UNIQUE INDEX "puzzle_slug_key" ON "puzzle"("slug");

-- CreateIndex
CREATE INDEX "puzzle_show_id_published_at_idx" ON "puzzle"("show_id", "published_at");

-- CreateIndex
CREATE INDEX "puzzle_episode_id_idx" ON "puzzle"("episode_id");

-- CreateIndex
CREATE UNIQUE INDEX "published_line_puzzle_id_ordinal_key" ON "published_line"("puzzle_id", "ordinal");

-- CreateIndex
CREATE UNIQUE INDEX "member_sign_in_name_key" ON "member"("sign_in_name");

-- CreateIndex
CREATE INDEX "member_show_id_idx" ON "member"("show_id");

-- CreateIndex
CREATE UNIQUE INDEX "setup_link_token_hash_key" ON "setup_link"("token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "season_show_id_number_key" ON "season"("show_id", "number");

-- CreateIndex
CREATE INDEX "episode_show_id_idx" ON "episode"("show_id");

-- CreateIndex
CREATE UNIQUE INDEX "episode_season_id_number_key" ON "episode"("season_id", "number");

-- CreateIndex
CREATE INDEX "solver_show_id_idx" ON "solver"("show_id");

-- CreateIndex
CREATE INDEX "solver_identity_solver_id_idx" ON "solver_identity"("solver_id");

-- CreateIndex
CREATE UNIQUE INDEX "solver_identity_show_id_kind_key_key" ON "solver_identity"("show_id", "kind", "key");

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_solver_id_fkey" FOREIGN KEY ("solver_id") REFERENCES "solver"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "book_row" ADD CONSTRAINT "book_row_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "book_row" ADD CONSTRAINT "book_row_proof_id_fkey" FOREIGN KEY ("proof_id") REFERENCES "proof"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "proof" ADD CONSTRAINT "proof_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ruling" ADD CONSTRAINT "ruling_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ruling" ADD CONSTRAINT "ruling_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "want" ADD CONSTRAINT "want_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "want" ADD CONSTRAINT "want_answer_id_fkey" FOREIGN KEY ("answer_id") REFERENCES "answer"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "source" ADD CONSTRAINT "source_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import" ADD CONSTRAINT "import_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import" ADD CONSTRAINT "import_source_id_fkey" FOREIGN KEY ("source_id") REFERENCES "source"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import" ADD CONSTRAINT "import_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comment" ADD CONSTRAINT "comment_source_id_fkey" FOREIGN KEY ("source_id") REFERENCES "source"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comment" ADD CONSTRAINT "comment_import_id_fkey" FOREIGN KEY ("import_id") REFERENCES "import"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comment" ADD CONSTRAINT "comment_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comment" ADD CONSTRAINT "comment_answer_id_fkey" FOREIGN KEY ("answer_id") REFERENCES "answer"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mark" ADD CONSTRAINT "mark_answer_id_fkey" FOREIGN KEY ("answer_id") REFERENCES "answer"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mark" ADD CONSTRAINT "mark_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mark" ADD CONSTRAINT "mark_solver_id_fkey" FOREIGN KEY ("solver_id") REFERENCES "solver"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mark" ADD CONSTRAINT "mark_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mark" ADD CONSTRAINT "mark_regrade_id_fkey" FOREIGN KEY ("regrade_id") REFERENCES "regrade"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mark" ADD CONSTRAINT "mark_superseded_by_id_fkey" FOREIGN KEY ("superseded_by_id") REFERENCES "mark"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "regrade" ADD CONSTRAINT "regrade_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "regrade" ADD CONSTRAINT "regrade_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "scheme" ADD CONSTRAINT "scheme_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_episode_id_fkey" FOREIGN KEY ("episode_id") REFERENCES "episode"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_created_by_fkey" FOREIGN KEY ("created_by") REFERENCES "member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "published_line" ADD CONSTRAINT "published_line_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "progress" ADD CONSTRAINT "progress_puzzle_id_fkey" FOREIGN KEY ("puzzle_id") REFERENCES "puzzle"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "member" ADD CONSTRAINT "member_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "season" ADD CONSTRAINT "season_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "episode" ADD CONSTRAINT "episode_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "episode" ADD CONSTRAINT "episode_season_id_fkey" FOREIGN KEY ("season_id") REFERENCES "season"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "solver" ADD CONSTRAINT "solver_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "solver" ADD CONSTRAINT "solver_joined_into_id_fkey" FOREIGN KEY ("joined_into_id") REFERENCES "solver"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "solver_identity" ADD CONSTRAINT "solver_identity_show_id_fkey" FOREIGN KEY ("show_id") REFERENCES "show"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "solver_identity" ADD CONSTRAINT "solver_identity_solver_id_fkey" FOREIGN KEY ("solver_id") REFERENCES "solver"("id") ON DELETE CASCADE ON UPDATE CASCADE;
