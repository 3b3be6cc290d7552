-- Version 1 of the register, as SQLite keeps it. Registers made with it lie in
-- herbaria: this file never changes. A later version is a file of its own that
-- turns the version before into it.

CREATE TABLE about (
    key   TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- How the numbers of a series are written, and the highest that has a state.
CREATE TABLE series (
    id              INTEGER NOT NULL PRIMARY KEY,
    name            TEXT    NOT NULL UNIQUE,
    code            TEXT    NOT NULL,
    separator       TEXT    NOT NULL,
    digits          INTEGER NOT NULL,
    scheme          TEXT    NOT NULL,
    check_separator TEXT    NOT NULL,
    highest         INTEGER NOT NULL CHECK (highest >= 0)
) STRICT;

-- What happened, in order and without a gap in id. An event is of the numbers
-- first to last, of a printed label, or of the whole register. state is what
-- the numbers became, NULL where they stayed as they were.
CREATE TABLE events (
    id     INTEGER NOT NULL PRIMARY KEY,
    at     TEXT    NOT NULL, -- UTC, 2026-06-14T09:30:00Z
    who    TEXT    NOT NULL CHECK (who <> ''),
    what   TEXT    NOT NULL,
    why    TEXT    NOT NULL,
    series INTEGER REFERENCES series (id),
    first  INTEGER,
    last   INTEGER,
    state  TEXT,
    label  INTEGER,
    CHECK ((series IS NULL) = (first IS NULL) AND (first IS NULL) = (last IS NULL)),
    CHECK (first IS NULL OR first >= 1 AND last >= first)
) STRICT;
CREATE INDEX events_single ON events (series, first) WHERE first = last;
CREATE INDEX events_range ON events (series, last, first) WHERE first < last;
CREATE INDEX events_label ON events (label) WHERE label IS NOT NULL;

CREATE TABLE numbers (
    series INTEGER NOT NULL REFERENCES series (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    state  TEXT    NOT NULL CHECK (state IN ('issued', 'printed', 'attached', 'void', 'deaccessioned',
                                             'transferred', 'lost', 'held elsewhere')),
    event  INTEGER NOT NULL REFERENCES events (id), -- that brought the state
    PRIMARY KEY (series, number)
) STRICT, WITHOUT ROWID;

-- Stretches of numbers that were passed over and never issued by this
-- register: their state is "unknown" until they get a row in numbers.
CREATE TABLE passed (
    series INTEGER NOT NULL REFERENCES series (id),
    first  INTEGER NOT NULL CHECK (first >= 1),
    last   INTEGER NOT NULL CHECK (last >= first),
    event  INTEGER NOT NULL REFERENCES events (id),
    PRIMARY KEY (series, first)
) STRICT, WITHOUT ROWID;

-- Which specimen has the number, as its record says it.
CREATE TABLE specimens (
    series     INTEGER NOT NULL,
    number     INTEGER NOT NULL,
    occurrence TEXT    NOT NULL,
    collector  TEXT    NOT NULL,
    record     TEXT    NOT NULL, -- recordNumber
    part       TEXT    NOT NULL,
    date       TEXT    NOT NULL,
    name       TEXT    NOT NULL,
    PRIMARY KEY (series, number),
    FOREIGN KEY (series, number) REFERENCES numbers (series, number)
) STRICT, WITHOUT ROWID;

-- What a specimen is known again by: kind is 'occurrence' or 'gathering', key
-- an occurrenceID or collector, number and part in folded letters.
CREATE TABLE identities (
    kind   TEXT    NOT NULL,
    key    TEXT    NOT NULL,
    series INTEGER NOT NULL,
    number INTEGER NOT NULL,
    date   TEXT    NOT NULL,
    PRIMARY KEY (kind, key, series, number),
    FOREIGN KEY (series, number) REFERENCES numbers (series, number)
) STRICT, WITHOUT ROWID;
CREATE INDEX identities_number ON identities (series, number);

-- House files as they were when something was printed with them.
CREATE TABLE houses (
    digest BLOB NOT NULL PRIMARY KEY, -- SHA-256 of text
    text   TEXT NOT NULL
) STRICT;

-- One printing each. While done is 0 it may still come to nothing.
CREATE TABLE runs (
    id      INTEGER NOT NULL PRIMARY KEY,
    at      TEXT    NOT NULL,
    who     TEXT    NOT NULL CHECK (who <> ''),
    program TEXT    NOT NULL,
    source  TEXT    NOT NULL, -- the table it was printed from
    house   BLOB    REFERENCES houses (digest),
    done    INTEGER NOT NULL CHECK (done IN (0, 1))
) STRICT;
CREATE INDEX runs_open ON runs (id) WHERE done = 0;

-- Names and collectors as printed, each distinct text once.
CREATE TABLE phrases (
    id   INTEGER NOT NULL PRIMARY KEY,
    role TEXT    NOT NULL CHECK (role IN ('name', 'collector')),
    key  TEXT    NOT NULL,
    text TEXT    NOT NULL,
    UNIQUE (role, key)
) STRICT;

-- Their words to search for: small letters, no accents.
CREATE TABLE words (
    word   TEXT    NOT NULL,
    phrase INTEGER NOT NULL REFERENCES phrases (id),
    role   TEXT    NOT NULL,
    PRIMARY KEY (word, phrase)
) STRICT, WITHOUT ROWID;

CREATE TABLE labels (
    id          INTEGER NOT NULL PRIMARY KEY,
    run         INTEGER NOT NULL REFERENCES runs (id),
    kind        TEXT    NOT NULL,
    part        TEXT    NOT NULL,
    recipient   TEXT    NOT NULL, -- herbarium a duplicate goes to, '' our own
    label       INTEGER NOT NULL, -- this one of ...
    of          INTEGER NOT NULL, -- ... so many
    catalog     TEXT    NOT NULL, -- catalogue number as printed
    catalog_key TEXT    NOT NULL,
    record      TEXT    NOT NULL, -- recordNumber
    record_key  TEXT    NOT NULL,
    date        TEXT    NOT NULL,
    collector   INTEGER REFERENCES phrases (id),
    name        INTEGER REFERENCES phrases (id),
    series      INTEGER,          -- the number where it is one of ours
    number      INTEGER,
    digest      BLOB    NOT NULL  -- of the record as it was
) STRICT;
CREATE INDEX labels_run ON labels (run);
CREATE INDEX labels_catalog ON labels (catalog_key, id) WHERE catalog_key <> '';
CREATE INDEX labels_record ON labels (record_key, id, collector, name) WHERE record_key <> '';
CREATE INDEX labels_collector ON labels (collector, id, name);
CREATE INDEX labels_name ON labels (name, id, collector);

-- The set labels, apart from what is searched, so that a search reads little.
CREATE TABLE boxes (
    label INTEGER NOT NULL PRIMARY KEY REFERENCES labels (id),
    box   BLOB    NOT NULL,
    cells BLOB    NOT NULL -- the record's cells as the program encodes them
) STRICT;

-- What may never happen to a register, whoever writes to it.
CREATE TRIGGER events_kept BEFORE UPDATE ON events BEGIN SELECT RAISE(ABORT, 'the history is only ever added to'); END;
CREATE TRIGGER events_stay BEFORE DELETE ON events BEGIN SELECT RAISE(ABORT, 'the history is only ever added to'); END;
CREATE TRIGGER numbers_stay BEFORE DELETE ON numbers BEGIN SELECT RAISE(ABORT, 'a number once issued stays in the register'); END;
CREATE TRIGGER numbers_kept BEFORE UPDATE OF series, number ON numbers BEGIN SELECT RAISE(ABORT, 'a number once issued stays in the register'); END;
CREATE TRIGGER numbers_once BEFORE UPDATE OF state ON numbers WHEN NEW.state = 'issued' BEGIN SELECT RAISE(ABORT, 'a number is issued once'); END;
CREATE TRIGGER passed_kept BEFORE UPDATE ON passed BEGIN SELECT RAISE(ABORT, 'a number passed over stays in the register'); END;
CREATE TRIGGER passed_stay BEFORE DELETE ON passed BEGIN SELECT RAISE(ABORT, 'a number passed over stays in the register'); END;
CREATE TRIGGER series_stay BEFORE DELETE ON series BEGIN SELECT RAISE(ABORT, 'a series stays in the register'); END;
CREATE TRIGGER series_kept BEFORE UPDATE OF id, name, code, separator, digits, scheme, check_separator ON series BEGIN SELECT RAISE(ABORT, 'the form of a series stays as it is'); END;
CREATE TRIGGER series_rise BEFORE UPDATE OF highest ON series WHEN NEW.highest < OLD.highest BEGIN SELECT RAISE(ABORT, 'a series never falls back'); END;
CREATE TRIGGER labels_kept BEFORE UPDATE ON labels BEGIN SELECT RAISE(ABORT, 'a printed label stays as it is'); END;
CREATE TRIGGER labels_stay BEFORE DELETE ON labels WHEN (SELECT done FROM runs WHERE id = OLD.run) = 1 BEGIN SELECT RAISE(ABORT, 'a printed label stays as it is'); END;
CREATE TRIGGER boxes_kept BEFORE UPDATE ON boxes BEGIN SELECT RAISE(ABORT, 'a printed label stays as it is'); END;
CREATE TRIGGER boxes_stay BEFORE DELETE ON boxes WHEN (SELECT done FROM runs WHERE id = (SELECT run FROM labels WHERE id = OLD.label)) = 1 BEGIN SELECT RAISE(ABORT, 'a printed label stays as it is'); END;
