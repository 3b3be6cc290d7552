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

INSERT INTO about (key, value) VALUES ('register', 'cornerslip');
INSERT INTO about (key, value) VALUES ('version', '1');
INSERT INTO series (id, name, code, separator, digits, scheme, check_separator, highest) VALUES (1, 'VDOURA', 'VDOURA', '-', 7, '', '', 2001);
INSERT INTO series (id, name, code, separator, digits, scheme, check_separator, highest) VALUES (2, 'VDB', 'VDB', ' ', 5, 'MOD 37,36', '', 3);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (1, '2026-06-14T09:30:00Z', 'M. Teixeira', 'created', '', NULL, NULL, NULL, NULL, NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (2, '2026-06-14T09:30:00Z', 'M. Teixeira', 'opened', 'the old book ends with 100', 1, 101, 101, NULL, NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (3, '2026-06-14T09:30:00Z', 'M. Teixeira', 'passed over', 'the old book ends with 100', 1, 1, 100, 'unknown', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (4, '2026-06-14T09:30:00Z', 'M. Teixeira', 'opened', '', 2, 1, 1, NULL, NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (5, '2026-06-14T09:30:00Z', 'M. Teixeira', 'issued', '', 1, 101, 103, 'issued', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (6, '2026-06-14T09:30:00Z', 'M. Teixeira', 'issued', 'stickers', 1, 104, 104, 'issued', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (7, '2026-06-14T09:30:00Z', 'M. Teixeira', 'issued', 'stickers', 1, 105, 124, 'issued', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (8, '2026-06-14T09:30:00Z', 'M. Teixeira', 'issued', '', 2, 1, 3, 'issued', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (9, '2026-06-14T09:30:00Z', 'M. Teixeira', 'imported', 'the card index', 1, 15, 15, 'attached', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (10, '2026-06-14T09:30:00Z', 'M. Teixeira', 'imported', 'the card index', 1, 11, 11, 'void', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (11, '2026-06-14T09:30:00Z', 'M. Teixeira', 'imported', 'the card index', 1, 20, 20, 'deaccessioned', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (12, '2026-06-14T09:30:00Z', 'M. Teixeira', 'imported', 'the card index', 1, 18, 18, 'transferred', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (13, '2026-06-14T09:30:00Z', 'M. Teixeira', 'imported', 'the card index', 1, 21, 21, 'held elsewhere', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (14, '2026-06-14T09:30:00Z', 'M. Teixeira', 'printed', '', 1, 101, 101, 'printed', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (15, '2026-06-14T09:30:00Z', 'M. Teixeira', 'reprinted', 'torn', 1, 101, 101, NULL, 1);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (16, '2026-06-14T09:30:00Z', 'M. Teixeira', 'void', 'it''s spoiled', 1, 110, 110, 'void', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (17, '2026-06-14T09:30:00Z', 'M. Teixeira', 'void', 'it''s spoiled', 1, 112, 113, 'void', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (18, '2026-06-14T09:30:00Z', 'M. Teixeira', 'lost', 'not in its place', 1, 111, 111, 'lost', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (19, '2026-06-14T09:30:00Z', 'M. Teixeira', 'lost', 'not in its place', 2, 2, 2, 'lost', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (20, '2026-06-14T09:30:00Z', 'M. Teixeira', 'attached', '', 1, 101, 101, 'attached', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (21, '2026-06-14T09:30:00Z', 'M. Teixeira', 'moved up', 'restored from a backup', 1, 125, 2000, 'unknown', NULL);
INSERT INTO events (id, at, who, what, why, series, first, last, state, label) VALUES (22, '2026-06-14T09:30:00Z', 'M. Teixeira', 'issued', '', 1, 2001, 2001, 'issued', NULL);
INSERT INTO numbers (series, number, state, event) VALUES (1, 11, 'void', 10);
INSERT INTO numbers (series, number, state, event) VALUES (1, 15, 'attached', 9);
INSERT INTO numbers (series, number, state, event) VALUES (1, 18, 'transferred', 12);
INSERT INTO numbers (series, number, state, event) VALUES (1, 20, 'deaccessioned', 11);
INSERT INTO numbers (series, number, state, event) VALUES (1, 21, 'held elsewhere', 13);
INSERT INTO numbers (series, number, state, event) VALUES (1, 101, 'attached', 20);
INSERT INTO numbers (series, number, state, event) VALUES (1, 102, 'issued', 5);
INSERT INTO numbers (series, number, state, event) VALUES (1, 103, 'issued', 5);
INSERT INTO numbers (series, number, state, event) VALUES (1, 104, 'issued', 6);
INSERT INTO numbers (series, number, state, event) VALUES (1, 105, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 106, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 107, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 108, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 109, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 110, 'void', 16);
INSERT INTO numbers (series, number, state, event) VALUES (1, 111, 'lost', 18);
INSERT INTO numbers (series, number, state, event) VALUES (1, 112, 'void', 17);
INSERT INTO numbers (series, number, state, event) VALUES (1, 113, 'void', 17);
INSERT INTO numbers (series, number, state, event) VALUES (1, 114, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 115, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 116, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 117, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 118, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 119, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 120, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 121, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 122, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 123, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 124, 'issued', 7);
INSERT INTO numbers (series, number, state, event) VALUES (1, 2001, 'issued', 22);
INSERT INTO numbers (series, number, state, event) VALUES (2, 1, 'issued', 8);
INSERT INTO numbers (series, number, state, event) VALUES (2, 2, 'lost', 19);
INSERT INTO numbers (series, number, state, event) VALUES (2, 3, 'issued', 8);
INSERT INTO passed (series, first, last, event) VALUES (1, 1, 100, 3);
INSERT INTO passed (series, first, last, event) VALUES (1, 125, 2000, 21);
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 11, '', 'M. Böhm', '4', '', '1931', 'Iris boissieri Henriq.');
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 15, '', 'M. Böhm', '8', '', '1931', 'Iris boissieri Henriq.');
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 18, '', 'M. Böhm', '11', '', '1931', 'Iris boissieri Henriq.');
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 20, '', 'M. Böhm', '13', '', '1931', 'Iris boissieri Henriq.');
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 21, '', 'M. Böhm', '14', '', '1931', 'Iris boissieri Henriq.');
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 101, '', 'I. Almeida', '214', '', '2026-06-14', '');
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 102, 'urn:uuid:6b1e2c9a-0000-4000-8000-000000000001', 'J. Moura', 's.n.', '', '2026-06-15', '');
INSERT INTO specimens (series, number, occurrence, collector, record, part, date, name) VALUES (1, 103, 'id3', 'Ιωάννης Παπάς', '97-12', 'Sheet 1 of 2', '', '');
INSERT INTO identities (kind, key, series, number, date) VALUES ('gathering', 'almeida i|214|', 1, 101, '2026-06-14');
INSERT INTO identities (kind, key, series, number, date) VALUES ('gathering', 'bohm m|11|', 1, 18, '1931');
INSERT INTO identities (kind, key, series, number, date) VALUES ('gathering', 'bohm m|13|', 1, 20, '1931');
INSERT INTO identities (kind, key, series, number, date) VALUES ('gathering', 'bohm m|14|', 1, 21, '1931');
INSERT INTO identities (kind, key, series, number, date) VALUES ('gathering', 'bohm m|4|', 1, 11, '1931');
INSERT INTO identities (kind, key, series, number, date) VALUES ('gathering', 'bohm m|8|', 1, 15, '1931');
INSERT INTO identities (kind, key, series, number, date) VALUES ('gathering', 'ιωαννησ παπασ|97-12|sheet 1 of 2', 1, 103, '');
INSERT INTO identities (kind, key, series, number, date) VALUES ('occurrence', 'id3', 1, 103, '');
INSERT INTO identities (kind, key, series, number, date) VALUES ('occurrence', 'urn:uuid:6b1e2c9a-0000-4000-8000-000000000001', 1, 102, '');
INSERT INTO houses (digest, text) VALUES ('\xa559a6848fb5e7728c4c5f0f1a63eead049efbd32e78af59092abdda45639e00', 'code = "VDOURA"
');
INSERT INTO runs (id, at, who, program, source, house, done) VALUES (1, '2026-06-14T09:30:00Z', 'M. Teixeira', 'cornerslip 1.0.0', 'trip.csv', '\xa559a6848fb5e7728c4c5f0f1a63eead049efbd32e78af59092abdda45639e00', 1);
INSERT INTO runs (id, at, who, program, source, house, done) VALUES (2, '2026-06-14T09:30:00Z', 'M. Teixeira', 'cornerslip 1.0.0', 'broken off.csv', NULL, 0);
INSERT INTO phrases (id, role, key, text) VALUES (1, 'name', 'Iris boissieri Henriq.', 'Iris boissieri Henriq.');
INSERT INTO phrases (id, role, key, text) VALUES (2, 'name', '×Sorbopyrus auricularis (Knoop) C.K.Schneid.', '×Sorbopyrus auricularis (Knoop) C.K.Schneid.');
INSERT INTO phrases (id, role, key, text) VALUES (3, 'collector', 'I. Almeida & J. Moura', 'I. Almeida & J. Moura');
INSERT INTO phrases (id, role, key, text) VALUES (4, 'collector', 'Ιωάννης Παπάς', 'Ιωάννης Παπάς');
INSERT INTO phrases (id, role, key, text) VALUES (5, 'collector', 'I. Almeida', 'I. Almeida');
INSERT INTO words (word, phrase, role) VALUES ('almeida', 3, 'collector');
INSERT INTO words (word, phrase, role) VALUES ('almeida', 5, 'collector');
INSERT INTO words (word, phrase, role) VALUES ('auricularis', 2, 'name');
INSERT INTO words (word, phrase, role) VALUES ('boissieri', 1, 'name');
INSERT INTO words (word, phrase, role) VALUES ('c', 2, 'name');
INSERT INTO words (word, phrase, role) VALUES ('henriq', 1, 'name');
INSERT INTO words (word, phrase, role) VALUES ('i', 3, 'collector');
INSERT INTO words (word, phrase, role) VALUES ('i', 5, 'collector');
INSERT INTO words (word, phrase, role) VALUES ('iris', 1, 'name');
INSERT INTO words (word, phrase, role) VALUES ('j', 3, 'collector');
INSERT INTO words (word, phrase, role) VALUES ('k', 2, 'name');
INSERT INTO words (word, phrase, role) VALUES ('knoop', 2, 'name');
INSERT INTO words (word, phrase, role) VALUES ('moura', 3, 'collector');
INSERT INTO words (word, phrase, role) VALUES ('schneid', 2, 'name');
INSERT INTO words (word, phrase, role) VALUES ('sorbopyrus', 2, 'name');
INSERT INTO words (word, phrase, role) VALUES ('ιωαννησ', 4, 'collector');
INSERT INTO words (word, phrase, role) VALUES ('παπασ', 4, 'collector');
INSERT INTO labels (id, run, kind, part, recipient, label, of, catalog, catalog_key, record, record_key, date, collector, name, series, number, digest) VALUES (1, 1, 'sheet', '', '', 1, 1, 'VDOURA-0000101', 'vdoura0000101', '214', '214', '2026-06-14', 3, 1, 1, 101, '\x646967657374206f6620323134');
INSERT INTO labels (id, run, kind, part, recipient, label, of, catalog, catalog_key, record, record_key, date, collector, name, series, number, digest) VALUES (2, 1, 'packet', 'Sheet 1 of 2', 'PINHEL', 2, 2, '', '', '214', '214', '2026-06-14', 3, 1, NULL, NULL, '\x646967657374206f6620323134');
INSERT INTO labels (id, run, kind, part, recipient, label, of, catalog, catalog_key, record, record_key, date, collector, name, series, number, digest) VALUES (3, 1, 'sheet', '', '', 1, 1, 'LISU 77', 'lisu77', '97-12', '9712', '2026-06-14', 4, 2, NULL, NULL, '\x646967657374206f662039372d3132');
INSERT INTO labels (id, run, kind, part, recipient, label, of, catalog, catalog_key, record, record_key, date, collector, name, series, number, digest) VALUES (4, 2, 'sheet', '', '', 1, 1, 'VDOURA-0000104', 'vdoura0000104', '999', '999', '2026-06-14', 5, NULL, 1, 104, '\x646967657374206f6620393939');
INSERT INTO boxes (label, box, cells) VALUES (1, '\x000102faff27', '\x63656c6c73206f6620323134');
INSERT INTO boxes (label, box, cells) VALUES (2, '\x626f78206f6620323134', '\x63656c6c73206f6620323134');
INSERT INTO boxes (label, box, cells) VALUES (3, '\x626f78206f662039372d3132', '\x63656c6c73206f662039372d3132');
INSERT INTO boxes (label, box, cells) VALUES (4, '\x626f78206f6620393939', '\x63656c6c73206f6620393939');
