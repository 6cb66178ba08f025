-- Format 2: beside the tests there are two books, of people and of revisions. Events of anything else are refused.

CREATE TRIGGER event_chain BEFORE INSERT ON event
WHEN NEW.test_id NOT LIKE 'T-%' AND NEW.test_id NOT IN ('B-PEOPLE', 'B-REVISIONS')
BEGIN SELECT RAISE(ABORT, 'an event belongs to a test, to the book of people or to the book of revisions'); END
;
