-- What is pushed. A way is a broker or a webhook; a mark is how far a plan was told by it.
-- The mark outlives its plan until the end of the plan was told; it keeps no way back to it.
CREATE TABLE way (
    name TEXT PRIMARY KEY NOT NULL
) STRICT;

CREATE TABLE mark (
    way         TEXT    NOT NULL REFERENCES way (name) ON DELETE CASCADE,
    topic       TEXT    NOT NULL,
    plan_id     TEXT    REFERENCES plan (id) ON DELETE SET NULL,
    revision    INTEGER NOT NULL DEFAULT 0,   -- of the last event that was told
    place       INTEGER NOT NULL DEFAULT -1,  -- in the revision
    from_at     INTEGER NOT NULL DEFAULT 0,   -- what was due before is not told
    next_at     INTEGER NOT NULL DEFAULT 0,
    retry_at    INTEGER NOT NULL DEFAULT 0,
    tries       INTEGER NOT NULL DEFAULT 0,
    since_at    INTEGER NOT NULL DEFAULT 0,
    fault       TEXT    NOT NULL DEFAULT '',
    changes     INTEGER NOT NULL DEFAULT 0,
    owner       TEXT    NOT NULL DEFAULT '',
    lease_until INTEGER NOT NULL DEFAULT 0,
    PRIMARY KEY (way, topic)
) STRICT, WITHOUT ROWID;

CREATE INDEX mark_plan ON mark (plan_id) WHERE plan_id IS NOT NULL;
CREATE INDEX mark_next ON mark (way, next_at);

CREATE TRIGGER mark_of_the_gone BEFORE DELETE ON plan BEGIN
    UPDATE mark SET next_at = 0, changes = changes + 1 WHERE plan_id = OLD.id;
END;

CREATE TABLE dead_letter (
    ordinal   INTEGER PRIMARY KEY AUTOINCREMENT,
    way       TEXT    NOT NULL,
    topic     TEXT    NOT NULL,
    event     TEXT    NOT NULL,
    due_at    INTEGER NOT NULL,
    buried_at INTEGER NOT NULL,
    tries     INTEGER NOT NULL,
    fault     TEXT    NOT NULL
) STRICT;
