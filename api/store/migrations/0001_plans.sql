-- Plans, their revisions and the readings that led to them. Revisions and readings
-- are only added; the triggers hold whoever opens the file to that. Instants are
-- milliseconds since 1970 UTC.
CREATE TABLE plan (
    id TEXT PRIMARY KEY NOT NULL
) STRICT;

CREATE TABLE revision (
    plan_id TEXT    NOT NULL REFERENCES plan (id) ON DELETE CASCADE,
    number  INTEGER NOT NULL CHECK (number >= 0),
    kept_at INTEGER NOT NULL,
    json    BLOB    NOT NULL,
    PRIMARY KEY (plan_id, number)
) STRICT;

CREATE TABLE reading (
    plan_id  TEXT    NOT NULL REFERENCES plan (id) ON DELETE CASCADE,
    ordinal  INTEGER NOT NULL CHECK (ordinal >= 0),
    revision INTEGER NOT NULL,  -- the one that it led to
    json     BLOB    NOT NULL,
    PRIMARY KEY (plan_id, ordinal),
    FOREIGN KEY (plan_id, revision) REFERENCES revision (plan_id, number) ON DELETE CASCADE
) STRICT;

CREATE TRIGGER revision_stays BEFORE UPDATE ON revision BEGIN
    SELECT RAISE(ABORT, 'a revision is never changed');
END;

CREATE TRIGGER reading_stays BEFORE UPDATE ON reading BEGIN
    SELECT RAISE(ABORT, 'a reading is never changed');
END;
