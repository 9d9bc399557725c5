-- What is kept of a plan beside its revisions, and revisions that are packed. The
-- newest one stands whole beside the plan, so that reading it needs no other.
ALTER TABLE plan ADD COLUMN made INTEGER NOT NULL DEFAULT 0; -- ordinal, 1 for the first plan of the file
ALTER TABLE plan ADD COLUMN feed TEXT;
ALTER TABLE plan ADD COLUMN key TEXT;
ALTER TABLE plan ADD COLUMN body TEXT;
ALTER TABLE plan ADD COLUMN made_at INTEGER NOT NULL DEFAULT 0;
ALTER TABLE plan ADD COLUMN changed_at INTEGER NOT NULL DEFAULT 0;
ALTER TABLE plan ADD COLUMN newest INTEGER NOT NULL DEFAULT 0;
ALTER TABLE plan ADD COLUMN name TEXT NOT NULL DEFAULT '';
ALTER TABLE plan ADD COLUMN feasible INTEGER NOT NULL DEFAULT 0;
ALTER TABLE plan ADD COLUMN serve_at INTEGER NOT NULL DEFAULT 0;
ALTER TABLE plan ADD COLUMN not_before INTEGER; -- NULL for no such instant
ALTER TABLE plan ADD COLUMN trial INTEGER NOT NULL DEFAULT 0;
ALTER TABLE plan ADD COLUMN whole BLOB; -- the newest revision, packed alone; NULL before its first change
ALTER TABLE revision ADD COLUMN packing INTEGER NOT NULL DEFAULT 0; -- 0 as it is, 1 packed alone, 2 packed against the revision before

UPDATE plan SET
    made = rowid,
    made_at = (SELECT min(kept_at) FROM revision WHERE plan_id = id),
    changed_at = (SELECT max(kept_at) FROM revision WHERE plan_id = id),
    newest = (SELECT max(number) FROM revision WHERE plan_id = id),
    trial = 1; -- what came before did not go by the clock
UPDATE plan SET
    name = (SELECT coalesce(json_extract(CAST(json AS TEXT), '$.name'), '') FROM revision WHERE plan_id = id AND number = newest),
    feasible = (SELECT coalesce(json_extract(CAST(json AS TEXT), '$.feasible'), 0) FROM revision WHERE plan_id = id AND number = newest),
    serve_at = (SELECT coalesce(unixepoch(json_extract(CAST(json AS TEXT), '$.serve_at')) * 1000, 0) FROM revision WHERE plan_id = id AND number = newest);

CREATE UNIQUE INDEX plan_made ON plan (made);
CREATE UNIQUE INDEX plan_feed ON plan (feed) WHERE feed IS NOT NULL;
CREATE UNIQUE INDEX plan_key ON plan (key) WHERE key IS NOT NULL;

-- One row, written to see whether the file can be: with as many bytes as a plan takes,
-- for a disk that is full may have room for a few.
CREATE TABLE probe (
    one   INTEGER PRIMARY KEY CHECK (one = 1),
    room  BLOB
) STRICT;
INSERT INTO probe (one) VALUES (1);
