-- A comment first seen after the reveal takes the place of no answer that counted then.
ALTER TABLE "answer" DROP CONSTRAINT "answer_standing";
ALTER TABLE "answer" ADD CONSTRAINT "answer_standing" CHECK (
  "standing" IN ('waiting', 'counted', 'replaced', 'late', 'early', 'no-answer', 'reply', 'after-reveal', 'own-voice', 'withdrawn'));
