"""The tables of a record file, and the guards that keep what is written as it is.

A file tells its schema by `user_version`: it has had that many of these steps. A step, once
released, never changes; a new need is a new step.
"""

APPLICATION_ID = 0x6C696768  # "ligh": other programs keep their data in SQLite too

_UNIT = """
CREATE TABLE unit (  -- the list of units: what it tells follows from the events
    stream  TEXT NOT NULL PRIMARY KEY,
    tag     TEXT NOT NULL,
    serves  TEXT,
    visits  INTEGER NOT NULL,
    at      TEXT NOT NULL,
    version INTEGER NOT NULL
) STRICT
"""

# without a rowid, by which INSERT OR REPLACE could name a row that no guard compares
_EVENT = """
CREATE TABLE event (
    stream   TEXT NOT NULL REFERENCES unit (stream),
    version  INTEGER NOT NULL,
    id       TEXT NOT NULL UNIQUE,
    text     TEXT NOT NULL,  -- canonical JSON
    previous TEXT NOT NULL,
    digest   TEXT NOT NULL,
    PRIMARY KEY (stream, version)
) STRICT, WITHOUT ROWID
"""

_NO_UPDATE = """
CREATE TRIGGER event_never_changes BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'an event never changes'); END
"""

_NO_DELETE = """
CREATE TRIGGER event_never_goes BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'an event never goes'); END
"""

# INSERT OR REPLACE slips past a BEFORE DELETE trigger: it has to be met before the insert
_ONLY_NEXT = """
CREATE TRIGGER event_is_new_and_next BEFORE INSERT ON event
WHEN NEW.version <> (SELECT coalesce(max(version), 0) + 1 FROM event WHERE stream = NEW.stream)
  OR EXISTS (SELECT 1 FROM event WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'an event is new, and the next of its stream'); END
"""

STEPS: tuple[tuple[str, ...], ...] = ((_UNIT, _EVENT, _NO_UPDATE, _NO_DELETE, _ONLY_NEXT),)
VERSION = len(STEPS)
