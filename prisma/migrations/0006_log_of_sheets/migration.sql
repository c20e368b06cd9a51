-- The few entries about sheets that were read, found without walking through all that was received. Written by hand.

CREATE INDEX "log_sheets" ON "log" ("puzzle_id") WHERE "kind" = 'sheet-read';
