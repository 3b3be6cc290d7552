-- Version 1 of the register, as PostgreSQL keeps it. Registers made with it lie in
-- herbaria: this file never changes. A later version is a file of its own that
-- turns the version before into it.

CREATE TABLE about (
    key   TEXT COLLATE "C" NOT NULL PRIMARY KEY,
    value TEXT COLLATE "C" NOT NULL
);

-- How the numbers of a series are written, and the highest that has a state.
CREATE TABLE series (
    id              BIGINT NOT NULL PRIMARY KEY,
    name            TEXT COLLATE "C" NOT NULL UNIQUE,
    code            TEXT COLLATE "C" NOT NULL,
    separator       TEXT COLLATE "C" NOT NULL,
    digits          BIGINT NOT NULL,
    scheme          TEXT COLLATE "C" NOT NULL,
    check_separator TEXT COLLATE "C" NOT NULL,
    highest         BIGINT NOT NULL CHECK (highest >= 0)
);

-- What happened, in order and without a gap in id. An event is of the numbers
-- first to last, of a printed label, or of the whole register. state is what
-- the numbers became, NULL where they stayed as they were.
CREATE TABLE events (
    id     BIGINT NOT NULL PRIMARY KEY,
    at     TEXT COLLATE "C" NOT NULL, -- UTC, 2026-06-14T09:30:00Z
    who    TEXT COLLATE "C" NOT NULL CHECK (who <> ''),
    what   TEXT COLLATE "C" NOT NULL,
    why    TEXT COLLATE "C" NOT NULL,
    series BIGINT REFERENCES series (id),
    first  BIGINT,
    last   BIGINT,
    state  TEXT COLLATE "C",
    label  BIGINT,
    CHECK ((series IS NULL) = (first IS NULL) AND (first IS NULL) = (last IS NULL)),
    CHECK (first IS NULL OR first >= 1 AND last >= first)
);
CREATE INDEX events_single ON events (series, first) WHERE first = last;
CREATE INDEX events_range ON events (series, last, first) WHERE first < last;
CREATE INDEX events_label ON events (label) WHERE label IS NOT NULL;

CREATE TABLE numbers (
    series BIGINT NOT NULL REFERENCES series (id),
    number BIGINT NOT NULL CHECK (number >= 1),
    state  TEXT COLLATE "C" NOT NULL CHECK (state IN ('issued', 'printed', 'attached', 'void', 'deaccessioned',
                                             'transferred', 'lost', 'held elsewhere')),
    event  BIGINT NOT NULL REFERENCES events (id), -- that brought the state
    PRIMARY KEY (series, number)
);

-- Stretches of numbers that were passed over and never issued by this
-- register: their state is "unknown" until they get a row in numbers.
CREATE TABLE passed (
    series BIGINT NOT NULL REFERENCES series (id),
    first  BIGINT NOT NULL CHECK (first >= 1),
    last   BIGINT NOT NULL CHECK (last >= first),
    event  BIGINT NOT NULL REFERENCES events (id),
    PRIMARY KEY (series, first)
);

-- Which specimen has the number, as its record says it.
CREATE TABLE specimens (
    series     BIGINT NOT NULL,
    number     BIGINT NOT NULL,
    occurrence TEXT COLLATE "C" NOT NULL,
    collector  TEXT COLLATE "C" NOT NULL,
    record     TEXT COLLATE "C" NOT NULL, -- recordNumber
    part       TEXT COLLATE "C" NOT NULL,
    date       TEXT COLLATE "C" NOT NULL,
    name       TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (series, number),
    FOREIGN KEY (series, number) REFERENCES numbers (series, number)
);

-- What a specimen is known again by: kind is 'occurrence' or 'gathering', key
-- an occurrenceID or collector, number and part in folded letters.
CREATE TABLE identities (
    kind   TEXT COLLATE "C" NOT NULL,
    key    TEXT COLLATE "C" NOT NULL,
    series BIGINT NOT NULL,
    number BIGINT NOT NULL,
    date   TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (kind, key, series, number),
    FOREIGN KEY (series, number) REFERENCES numbers (series, number)
);
CREATE INDEX identities_number ON identities (series, number);

-- House files as they were when something was printed with them.
CREATE TABLE houses (
    digest BYTEA NOT NULL PRIMARY KEY, -- SHA-256 of text
    text   TEXT COLLATE "C" NOT NULL
);

-- One printing each. While done is 0 it may still come to nothing.
CREATE TABLE runs (
    id      BIGINT NOT NULL PRIMARY KEY,
    at      TEXT COLLATE "C" NOT NULL,
    who     TEXT COLLATE "C" NOT NULL CHECK (who <> ''),
    program TEXT COLLATE "C" NOT NULL,
    source  TEXT COLLATE "C" NOT NULL, -- the table it was printed from
    house   BYTEA REFERENCES houses (digest),
    done    BIGINT NOT NULL CHECK (done IN (0, 1))
);
CREATE INDEX runs_open ON runs (id) WHERE done = 0;

-- Names and collectors as printed, each distinct text once.
CREATE TABLE phrases (
    id   BIGINT NOT NULL PRIMARY KEY,
    role TEXT COLLATE "C" NOT NULL CHECK (role IN ('name', 'collector')),
    key  TEXT COLLATE "C" NOT NULL,
    text TEXT COLLATE "C" NOT NULL,
    UNIQUE (role, key)
);

-- Their words to search for: small letters, no accents.
CREATE TABLE words (
    word   TEXT COLLATE "C" NOT NULL,
    phrase BIGINT NOT NULL REFERENCES phrases (id),
    role   TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (word, phrase)
);

CREATE TABLE labels (
    id          BIGINT NOT NULL PRIMARY KEY,
    run         BIGINT NOT NULL REFERENCES runs (id),
    kind        TEXT COLLATE "C" NOT NULL,
    part        TEXT COLLATE "C" NOT NULL,
    recipient   TEXT COLLATE "C" NOT NULL, -- herbarium a duplicate goes to, '' our own
    label       BIGINT NOT NULL, -- this one of ...
    of          BIGINT NOT NULL, -- ... so many
    catalog     TEXT COLLATE "C" NOT NULL, -- catalogue number as printed
    catalog_key TEXT COLLATE "C" NOT NULL,
    record      TEXT COLLATE "C" NOT NULL, -- recordNumber
    record_key  TEXT COLLATE "C" NOT NULL,
    date        TEXT COLLATE "C" NOT NULL,
    collector   BIGINT REFERENCES phrases (id),
    name        BIGINT REFERENCES phrases (id),
    series      BIGINT,          -- the number where it is one of ours
    number      BIGINT,
    digest      BYTEA NOT NULL  -- of the record as it was
);
CREATE INDEX labels_run ON labels (run);
CREATE INDEX labels_catalog ON labels (catalog_key, id) WHERE catalog_key <> '';
CREATE INDEX labels_record ON labels (record_key, id, collector, name) WHERE record_key <> '';
CREATE INDEX labels_collector ON labels (collector, id, name);
CREATE INDEX labels_name ON labels (name, id, collector);

-- The set labels, apart from what is searched, so that a search reads little.
CREATE TABLE boxes (
    label BIGINT NOT NULL PRIMARY KEY REFERENCES labels (id),
    box   BYTEA NOT NULL,
    cells BYTEA NOT NULL -- the record's cells as the program encodes them
);

-- What may never happen to a register, whoever writes to it.
CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION '%', TG_ARGV[0]; END $$;
CREATE TRIGGER events_kept BEFORE UPDATE ON events FOR EACH ROW EXECUTE FUNCTION refuse('the history is only ever added to');
CREATE TRIGGER events_stay BEFORE DELETE ON events FOR EACH ROW EXECUTE FUNCTION refuse('the history is only ever added to');
CREATE TRIGGER numbers_stay BEFORE DELETE ON numbers FOR EACH ROW EXECUTE FUNCTION refuse('a number once issued stays in the register');
CREATE TRIGGER numbers_kept BEFORE UPDATE OF series, number ON numbers FOR EACH ROW EXECUTE FUNCTION refuse('a number once issued stays in the register');
CREATE TRIGGER numbers_once BEFORE UPDATE OF state ON numbers FOR EACH ROW WHEN (NEW.state = 'issued') EXECUTE FUNCTION refuse('a number is issued once');
CREATE TRIGGER passed_kept BEFORE UPDATE ON passed FOR EACH ROW EXECUTE FUNCTION refuse('a number passed over stays in the register');
CREATE TRIGGER passed_stay BEFORE DELETE ON passed FOR EACH ROW EXECUTE FUNCTION refuse('a number passed over stays in the register');
CREATE TRIGGER series_stay BEFORE DELETE ON series FOR EACH ROW EXECUTE FUNCTION refuse('a series stays in the register');
CREATE TRIGGER series_kept BEFORE UPDATE OF id, name, code, separator, digits, scheme, check_separator ON series FOR EACH ROW EXECUTE FUNCTION refuse('the form of a series stays as it is');
CREATE TRIGGER series_rise BEFORE UPDATE OF highest ON series FOR EACH ROW WHEN (NEW.highest < OLD.highest) EXECUTE FUNCTION refuse('a series never falls back');
CREATE TRIGGER labels_kept BEFORE UPDATE ON labels FOR EACH ROW EXECUTE FUNCTION refuse('a printed label stays as it is');
CREATE TRIGGER boxes_kept BEFORE UPDATE ON boxes FOR EACH ROW EXECUTE FUNCTION refuse('a printed label stays as it is');
-- A trigger's condition cannot look into another table here.
CREATE FUNCTION refuse_label() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (SELECT FROM runs WHERE id = OLD.run AND done = 1) THEN
        RAISE EXCEPTION 'a printed label stays as it is';
    END IF;
    RETURN OLD;
END $$;
CREATE FUNCTION refuse_box() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (SELECT FROM runs JOIN labels ON labels.run = runs.id WHERE labels.id = OLD.label AND done = 1) THEN
        RAISE EXCEPTION 'a printed label stays as it is';
    END IF;
    RETURN OLD;
END $$;
CREATE TRIGGER labels_stay BEFORE DELETE ON labels FOR EACH ROW EXECUTE FUNCTION refuse_label();
CREATE TRIGGER boxes_stay BEFORE DELETE ON boxes FOR EACH ROW EXECUTE FUNCTION refuse_box();
CREATE TRIGGER events_whole BEFORE TRUNCATE ON events EXECUTE FUNCTION refuse('the history is only ever added to');
CREATE TRIGGER numbers_whole BEFORE TRUNCATE ON numbers EXECUTE FUNCTION refuse('a number once issued stays in the register');
CREATE TRIGGER passed_whole BEFORE TRUNCATE ON passed EXECUTE FUNCTION refuse('a number passed over stays in the register');
CREATE TRIGGER series_whole BEFORE TRUNCATE ON series EXECUTE FUNCTION refuse('a series stays in the register');
CREATE TRIGGER labels_whole BEFORE TRUNCATE ON labels EXECUTE FUNCTION refuse('a printed label stays as it is');
CREATE TRIGGER boxes_whole BEFORE TRUNCATE ON boxes EXECUTE FUNCTION refuse('a printed label stays as it is');
