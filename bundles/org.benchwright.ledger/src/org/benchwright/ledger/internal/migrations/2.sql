-- Format 2: beside the tests there are books, of people, revisions, receipts and instruments. Events of anything else are refused.

CREATE TRIGGER event_chain BEFORE INSERT ON event
WHEN NEW.test_id NOT LIKE 'T-%' AND NEW.test_id NOT IN ('B-PEOPLE', 'B-REVISIONS', 'B-RECEIPTS', 'B-INSTRUMENTS')
BEGIN SELECT RAISE(ABORT, 'an event belongs to a test or to one of the books'); END
;
