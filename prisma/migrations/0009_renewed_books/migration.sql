-- Former terms are facts; the engine version of their book is none. A new version is a new book by re-verification.
DROP TRIGGER "former_terms_are_kept" ON "former_terms";
CREATE TRIGGER "former_terms_are_kept" BEFORE UPDATE ON "former_terms" FOR EACH ROW
  WHEN ((to_jsonb(NEW) - 'engine_version') IS DISTINCT FROM (to_jsonb(OLD) - 'engine_version'))
  EXECUTE FUNCTION "refuse_change"();
