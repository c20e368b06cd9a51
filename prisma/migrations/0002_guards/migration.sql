-- What the tables alone cannot say: uniqueness with conditions, closed lists of words, facts that
-- are written once, and the chained log. Written by hand.

-- One current mark an answer; one counted answer a solver and puzzle.
CREATE UNIQUE INDEX "mark_one_current" ON "mark" ("answer_id") WHERE "is_current";
CREATE UNIQUE INDEX "answer_one_counted" ON "answer" ("puzzle_id", "solver_id") WHERE "standing" = 'counted';

-- The work list of marking, and the lists the desk asks for most.
CREATE INDEX "answer_work_list" ON "answer" ("puzzle_id", "id") WHERE "work" = 'to-mark';
CREATE INDEX "answer_unfinished" ON "answer" ("puzzle_id") WHERE "work" <> 'done';
CREATE INDEX "mark_by_outcome" ON "mark" ("puzzle_id", "outcome") WHERE "is_current";
CREATE INDEX "mark_doubtful" ON "mark" ("puzzle_id") WHERE "is_current" AND "doubt" IS NOT NULL;

-- Book rows are unique although moves_left may be null.
CREATE UNIQUE INDEX "book_row_one" ON "book_row"
  ("puzzle_id", "position", "moves_left", "move", "engine_version", "budgets") NULLS NOT DISTINCT;
CREATE UNIQUE INDEX "want_one" ON "want"
  ("puzzle_id", "answer_id", "position", "moves_left", "move") NULLS NOT DISTINCT;
CREATE UNIQUE INDEX "ruling_one_verdict" ON "ruling"
  ("puzzle_id", "position", "moves_left", "move") NULLS NOT DISTINCT
  WHERE "kind" = 'verdict' AND "superseded_at" IS NULL;
CREATE UNIQUE INDEX "ruling_one_reading" ON "ruling" ("puzzle_id", "text_hash")
  WHERE "kind" = 'reading' AND "superseded_at" IS NULL;

-- Closed lists of words.
ALTER TABLE "show" ADD CONSTRAINT "show_locale" CHECK ("locale" IN ('en', 'de'));
ALTER TABLE "member" ADD CONSTRAINT "member_role" CHECK ("role" IN ('owner', 'helper'));
ALTER TABLE "member" ADD CONSTRAINT "member_sign_in_name" CHECK ("sign_in_name" = lower("sign_in_name") AND "sign_in_name" <> '');
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_task" CHECK (
  ("task_kind" = 'mate' AND "mate_moves" BETWEEN 1 AND 30) OR ("task_kind" IN ('win', 'draw') AND "mate_moves" IS NULL));
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_claim" CHECK ("claim" IN ('true', 'false', 'unclear'));
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_times" CHECK ("closes_at" > "opens_at");
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_published_is_verified" CHECK (
  "published_at" IS NULL OR ("verified_at" IS NOT NULL AND "opens_at" IS NOT NULL
    AND ("claim" = 'true' OR ("claim" = 'unclear' AND "claim_override" IS NOT NULL) OR "voided_at" IS NOT NULL)));
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_revealed_is_published" CHECK ("revealed_at" IS NULL OR "published_at" IS NOT NULL);
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_budgets" CHECK ("proof_nodes" > 0 AND "budget_nodes" > 0);
ALTER TABLE "progress" ADD CONSTRAINT "progress_state" CHECK ("state" IN ('waiting', 'running', 'done', 'failed'));
ALTER TABLE "book_row" ADD CONSTRAINT "book_row_verdict" CHECK ("verdict" IN ('holds', 'slower', 'slips', 'unclear'));
ALTER TABLE "book_row" ADD CONSTRAINT "book_row_check" CHECK ("check_status" IN ('passed', 'failed', 'too-large', 'not-checkable'));
ALTER TABLE "ruling" ADD CONSTRAINT "ruling_kind" CHECK (
  ("kind" = 'verdict' AND "position" IS NOT NULL AND "move" IS NOT NULL AND "verdict" IN ('holds', 'slips'))
  OR ("kind" = 'reading' AND "text_hash" IS NOT NULL));
ALTER TABLE "solver_identity" ADD CONSTRAINT "solver_identity_kind" CHECK ("kind" IN ('receipt', 'device', 'author', 'signin'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_channel" CHECK ("channel" IN ('page', 'board', 'api', 'comment'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_time_word" CHECK ("time_word" IN ('before', 'after', 'unknown'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_work" CHECK ("work" IN ('to-mark', 'lacking', 'done', 'parked'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_standing" CHECK (
  "standing" IN ('waiting', 'counted', 'replaced', 'late', 'early', 'no-answer', 'reply', 'own-voice', 'withdrawn'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_withdrawn_is_erased" CHECK (
  "withdrawn_at" IS NULL OR ("text" = '' AND "name" IS NULL AND "standing" = 'withdrawn'));
ALTER TABLE "answer" ADD CONSTRAINT "answer_channel_has_key" CHECK (("channel" = 'comment') = ("client_key" IS NULL));
ALTER TABLE "answer" ADD CONSTRAINT "answer_stated_times" CHECK ("stated_to" >= "stated_from");
ALTER TABLE "answer" ADD CONSTRAINT "answer_text_length" CHECK (length("text") <= 20000);
ALTER TABLE "mark" ADD CONSTRAINT "mark_outcome" CHECK ("outcome" IN ('solved', 'slower', 'unfinished', 'slipped', 'wrong',
  'impossible', 'ambiguous', 'unclear', 'unreadable', 'chatter'));
ALTER TABLE "mark" ADD CONSTRAINT "mark_points" CHECK ("points" >= 0 AND "p" >= 0 AND "r" >= 1);
ALTER TABLE "mark" ADD CONSTRAINT "mark_made_by" CHECK (
  ("made_by" = 'program' AND "why" IS NULL) OR ("made_by" = 'person' AND "why" IS NOT NULL));
ALTER TABLE "regrade" ADD CONSTRAINT "regrade_state" CHECK ("state" IN ('previewed', 'applied', 'cancelled'));
ALTER TABLE "import" ADD CONSTRAINT "import_format" CHECK ("format" IN ('pasted', 'csv', 'tsv', 'jsonl'));
ALTER TABLE "import" ADD CONSTRAINT "import_state" CHECK ("state" IN ('waiting', 'done', 'failed'));
ALTER TABLE "import" ADD CONSTRAINT "import_time_word" CHECK ("time_word" IN ('before', 'after', 'unknown'));

-- Facts are written once. An answer may lose its text and name by withdrawal, nothing else of what
-- was received may change.
CREATE FUNCTION "keep_answer_facts"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW."withdrawn_at" IS NOT NULL AND NEW."text" = '' THEN
    IF OLD."withdrawn_at" IS NOT NULL AND NEW."withdrawn_at" <> OLD."withdrawn_at" THEN
      RAISE EXCEPTION 'answer %: a withdrawal is written once', OLD."id";
    END IF;
  ELSIF NEW."text" IS DISTINCT FROM OLD."text" OR NEW."name" IS DISTINCT FROM OLD."name"
    OR NEW."meant" IS DISTINCT FROM OLD."meant" OR NEW."has_meant" IS DISTINCT FROM OLD."has_meant"
    OR NEW."withdrawn_at" IS DISTINCT FROM OLD."withdrawn_at" THEN
    RAISE EXCEPTION 'answer %: what was received is never changed', OLD."id";
  END IF;
  IF NEW."received_at" <> OLD."received_at" OR NEW."puzzle_id" <> OLD."puzzle_id" OR NEW."channel" <> OLD."channel"
    OR NEW."client_key" IS DISTINCT FROM OLD."client_key" OR NEW."receipt_hash" IS DISTINCT FROM OLD."receipt_hash"
    OR NEW."stated_from" IS DISTINCT FROM OLD."stated_from" OR NEW."stated_to" IS DISTINCT FROM OLD."stated_to" THEN
    RAISE EXCEPTION 'answer %: time, puzzle, channel and keys are never changed', OLD."id";
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "answer_keeps_facts" BEFORE UPDATE ON "answer" FOR EACH ROW EXECUTE FUNCTION "keep_answer_facts"();

-- A mark is an opinion of its day: only whether it is in force may change, or whose it is.
CREATE FUNCTION "keep_mark"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (to_jsonb(NEW) - 'is_current' - 'superseded_by_id' - 'solver_id' - 'member_id' - 'regrade_id')
    IS DISTINCT FROM (to_jsonb(OLD) - 'is_current' - 'superseded_by_id' - 'solver_id' - 'member_id' - 'regrade_id')
    OR (NEW."is_current" AND NOT OLD."is_current") THEN
    RAISE EXCEPTION 'mark %: a mark is superseded, never changed', OLD."id";
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "mark_is_kept" BEFORE UPDATE ON "mark" FOR EACH ROW EXECUTE FUNCTION "keep_mark"();

CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only', TG_TABLE_NAME;
END $$;
CREATE TRIGGER "book_row_is_kept" BEFORE UPDATE ON "book_row" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "proof_is_kept" BEFORE UPDATE ON "proof" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "log_is_kept" BEFORE UPDATE OR DELETE ON "log" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "log_is_not_emptied" BEFORE TRUNCATE ON "log" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- The log numbers itself without gaps and chains its hashes. The lock lasts until the end of the
-- transaction, so writing the entry is the last thing a deed does.
CREATE FUNCTION "chain_log"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  last record;
BEGIN
  PERFORM pg_advisory_xact_lock(hashtext('tailpiece.log'));
  SELECT "id", "hash" INTO last FROM "log" ORDER BY "id" DESC LIMIT 1;
  NEW."id" := coalesce(last."id", 0) + 1;
  NEW."prev_hash" := coalesce(last."hash", repeat('0', 64));
  NEW."at" := clock_timestamp();
  NEW."hash" := "hash_log_entry"(NEW);
  RETURN NEW;
END $$;

-- What is hashed: the fields of an entry in this order, joined by line feeds, an absent number as
-- nothing, the time in microseconds since 1970.
CREATE FUNCTION "hash_log_entry"("entry" "log") RETURNS text LANGUAGE sql STABLE AS $$
  SELECT encode(sha256(convert_to(concat_ws(E'\n', "entry"."prev_hash", "entry"."id",
    (extract(epoch FROM "entry"."at") * 1000000)::bigint, "entry"."kind",
    coalesce("entry"."member_id"::text, ''), coalesce("entry"."puzzle_id"::text, ''),
    coalesce("entry"."answer_id"::text, ''), "entry"."details"::text), 'UTF8')), 'hex')
$$;
CREATE TRIGGER "log_is_chained" BEFORE INSERT ON "log" FOR EACH ROW EXECUTE FUNCTION "chain_log"();
