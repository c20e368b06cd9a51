-- What the tables of second looks, regrades and corrections alone cannot say. Written by hand.

ALTER TABLE "regrade" DROP CONSTRAINT "regrade_state";
ALTER TABLE "regrade" ADD CONSTRAINT "regrade_state" CHECK (
  "state" IN ('waiting', 'previewed', 'applying', 'applied', 'cancelled') AND ("decided_at" IS NULL) = ("state" IN ('waiting', 'previewed', 'applying')));
CREATE UNIQUE INDEX "regrade_one_open" ON "regrade" ("puzzle_id") WHERE "decided_at" IS NULL;

ALTER TABLE "second_look" ADD CONSTRAINT "second_look_words" CHECK (length("words") <= 1000);
ALTER TABLE "second_look" ADD CONSTRAINT "second_look_settled" CHECK (
  ("settled_at" IS NULL AND "result" IS NULL AND "reply" IS NULL)
  OR ("settled_at" IS NOT NULL AND "result" IN ('stands', 'changed') AND "reply" IS NOT NULL));
CREATE INDEX "second_look_waiting" ON "second_look" ("puzzle_id") WHERE "settled_at" IS NULL;

ALTER TABLE "amendment" ADD CONSTRAINT "amendment_state" CHECK (
  "state" IN ('waiting', 'verified', 'failed', 'in-force', 'cancelled') AND ("decided_at" IS NULL) = ("state" IN ('waiting', 'verified', 'failed')));
ALTER TABLE "amendment" ADD CONSTRAINT "amendment_claim" CHECK ("claim" IN ('true', 'false', 'unclear'));
CREATE UNIQUE INDEX "amendment_one_open" ON "amendment" ("puzzle_id") WHERE "decided_at" IS NULL;

ALTER TABLE "correction" ADD CONSTRAINT "correction_kind" CHECK ("kind" IN ('amended', 'extended', 'void'));
ALTER TABLE "puzzle" ADD CONSTRAINT "puzzle_revision" CHECK ("revision" >= 1);

-- The same verdict may be wanted under two revisions of the terms.
DROP INDEX "want_one";
CREATE UNIQUE INDEX "want_one" ON "want"
  ("puzzle_id", "answer_id", "revision", "position", "moves_left", "move") NULLS NOT DISTINCT;

-- Notices and former terms are facts.
CREATE TRIGGER "correction_is_kept" BEFORE UPDATE ON "correction" FOR EACH ROW
  WHEN (NEW."member_id" IS NOT DISTINCT FROM OLD."member_id") EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "former_terms_are_kept" BEFORE UPDATE ON "former_terms" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();

-- What the sender's page showed is a fact of the answer like its time.
CREATE FUNCTION "keep_seen_revision"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'answer %: the revision that was seen is never changed', OLD."id";
END $$;
CREATE TRIGGER "answer_keeps_seen_revision" BEFORE UPDATE OF "seen_revision" ON "answer" FOR EACH ROW
  WHEN (NEW."seen_revision" IS DISTINCT FROM OLD."seen_revision") EXECUTE FUNCTION "keep_seen_revision"();
