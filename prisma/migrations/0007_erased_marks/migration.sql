-- A withdrawal erases what a mark quotes of the viewer's text and what the host wrote about it; nothing else
-- of a mark ever changes. Written by hand.

CREATE OR REPLACE FUNCTION "keep_mark"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  "may" text[] := ARRAY['is_current', 'superseded_by_id', 'solver_id', 'member_id', 'regrade_id'];
BEGIN
  IF (to_jsonb(NEW) - "may") IS DISTINCT FROM (to_jsonb(OLD) - "may")
    AND EXISTS (SELECT FROM "answer" WHERE "id" = OLD."answer_id" AND "withdrawn_at" IS NOT NULL) THEN
    "may" := "may" || ARRAY['why', 'reason', 'doubt'];
  END IF;
  IF (to_jsonb(NEW) - "may") IS DISTINCT FROM (to_jsonb(OLD) - "may") OR (NEW."is_current" AND NOT OLD."is_current") THEN
    RAISE EXCEPTION 'mark %: a mark is superseded, never changed', OLD."id";
  END IF;
  RETURN NEW;
END $$;
