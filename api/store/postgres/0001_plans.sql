-- Plans, their revisions and the readings that led to them, and what is pushed: as in the
-- file (migrations/), so that a plan can move from one to the other. Revisions and readings
-- are only added. Instants are milliseconds since 1970 UTC.
CREATE TABLE plan (
    id         text    PRIMARY KEY,
    made       bigint  NOT NULL GENERATED ALWAYS AS IDENTITY UNIQUE,
    feed       text    UNIQUE,
    key        text    UNIQUE,
    body       text,
    made_at    bigint  NOT NULL,
    changed_at bigint  NOT NULL,
    newest     integer NOT NULL CHECK (newest >= 0),
    name       text    NOT NULL,
    feasible   boolean NOT NULL,
    serve_at   bigint  NOT NULL,
    not_before bigint, -- NULL for no such instant
    trial      boolean NOT NULL,
    whole      bytea   NOT NULL -- the newest revision, packed alone
);

CREATE TABLE revision (
    plan_id text     NOT NULL REFERENCES plan (id) ON DELETE CASCADE,
    number  integer  NOT NULL CHECK (number >= 0),
    kept_at bigint   NOT NULL,
    packing smallint NOT NULL, -- 1 packed alone, 2 packed against the revision before
    json    bytea    NOT NULL,
    PRIMARY KEY (plan_id, number)
);

CREATE TABLE reading (
    plan_id  text    NOT NULL REFERENCES plan (id) ON DELETE CASCADE,
    ordinal  integer NOT NULL CHECK (ordinal >= 0),
    revision integer NOT NULL, -- the one that it led to
    json     bytea   NOT NULL,
    PRIMARY KEY (plan_id, ordinal)
);

-- What is packed already is not packed again.
ALTER TABLE plan ALTER COLUMN whole SET STORAGE EXTERNAL;
ALTER TABLE revision ALTER COLUMN json SET STORAGE EXTERNAL;

CREATE FUNCTION stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'a % is never changed', TG_TABLE_NAME;
END $$;
CREATE TRIGGER revision_stays BEFORE UPDATE ON revision FOR EACH ROW EXECUTE FUNCTION stays();
CREATE TRIGGER reading_stays BEFORE UPDATE ON reading FOR EACH ROW EXECUTE FUNCTION stays();

CREATE TABLE probe (
    one  integer PRIMARY KEY CHECK (one = 1),
    room bytea
);
INSERT INTO probe (one) VALUES (1);

-- A way is a broker or a webhook; a mark is how far a plan was told by it. The mark
-- outlives its plan until the end of the plan was told; it keeps no way back to it.
CREATE TABLE way (
    name text PRIMARY KEY
);

CREATE TABLE mark (
    way         text    NOT NULL REFERENCES way (name) ON DELETE CASCADE,
    topic       text    NOT NULL,
    plan_id     text,
    revision    integer NOT NULL DEFAULT 0,  -- of the last event that was told
    place       integer NOT NULL DEFAULT -1, -- in the revision
    from_at     bigint  NOT NULL DEFAULT 0,  -- what was due before is not told
    next_at     bigint  NOT NULL DEFAULT 0,
    retry_at    bigint  NOT NULL DEFAULT 0,
    tries       integer NOT NULL DEFAULT 0,
    since_at    bigint  NOT NULL DEFAULT 0,
    fault       text    NOT NULL DEFAULT '',
    changes     bigint  NOT NULL DEFAULT 0,
    owner       text    NOT NULL DEFAULT '',
    lease_until bigint  NOT NULL DEFAULT 0,
    PRIMARY KEY (way, topic)
);
CREATE INDEX mark_plan ON mark (plan_id) WHERE plan_id IS NOT NULL;
CREATE INDEX mark_next ON mark (way, next_at);

CREATE FUNCTION mark_of_the_gone() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $$
BEGIN
    UPDATE mark SET plan_id = NULL, next_at = 0, changes = changes + 1 WHERE plan_id = OLD.id;
    RETURN OLD;
END $$;
CREATE TRIGGER mark_of_the_gone BEFORE DELETE ON plan FOR EACH ROW EXECUTE FUNCTION mark_of_the_gone();

CREATE TABLE dead_letter (
    ordinal   bigint  PRIMARY KEY GENERATED ALWAYS AS IDENTITY,
    way       text    NOT NULL,
    topic     text    NOT NULL,
    event     text    NOT NULL,
    due_at    bigint  NOT NULL,
    buried_at bigint  NOT NULL,
    tries     integer NOT NULL,
    fault     text    NOT NULL
);
CREATE INDEX dead_letter_way ON dead_letter (way, ordinal);
