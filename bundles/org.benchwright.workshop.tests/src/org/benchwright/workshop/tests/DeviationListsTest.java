package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.ledger.Projection;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.FleetFilter;
import org.benchwright.workshop.LedgerReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Departures and nonconformities of a whole ledger: out of the cache beside it, which verification compares with the events. */
class DeviationListsTest extends WithSealedTests {

    private List<Fleet.Deviated> list(boolean nonconformities, boolean waitingOnly) throws Exception {
        try (Fleet fleet = Fleet.of(tests.file(), Progress.none(), Cancellation.never())) {
            return fleet.deviations(nonconformities, waitingOnly);
        }
    }

    @Test
    void whatWaitsComesFirstAndWhatIsDecidedSaysByWhomAndWhy() throws Exception {
        String decided = tests.departed();
        String voided = tests.departed();
        String waiting = tests.departed();
        String rejected = tests.rejected();
        tests.rehearsal();
        assertEquals(List.of(decided, voided, waiting), list(false, true).stream().map(Fleet.Deviated::test).toList());
        tests.sign(decided, "MJ", new RecordFact.DepartureDecided(tests.deviation(decided), DepartureDecision.ACCEPTED, "it read right"));
        tests.sign(voided, "KM", new RecordFact.Voided("wrong unit"));
        List<Fleet.Deviated> all = list(false, false);
        assertEquals(List.of(waiting), list(false, true).stream().map(Fleet.Deviated::test).toList());
        assertEquals(List.of(waiting, voided, decided), all.stream().map(Fleet.Deviated::test).toList());
        assertEquals(List.of(Fleet.Stand.WAITING, Fleet.Stand.PASSED_OVER, Fleet.Stand.DECIDED), all.stream().map(Fleet.Deviated::stand).toList());
        assertEquals("accepted it read right MJ", all.get(2).decided().map(each -> each.word() + " " + each.reason() + " " + each.by()).orElseThrow());
        assertTrue(all.get(0).words().contains("M-17 was due on 2020-03-01"), all.get(0).words());
        Fleet.Deviated only = list(true, true).get(0);
        assertEquals(rejected + " power_up lamps", only.test() + " " + only.stage() + " " + only.step());
        tests.sign(rejected, "MJ", new RecordFact.NonconformityDecided(only.sequence(), Disposition.SCRAP, "dead"));
        assertEquals(List.of(), list(true, true));
        assertSound();
    }

    @Test
    void aVoidRecordCountsNowhere() throws Exception {
        String test = tests.accepted();
        assertEquals(Fleet.State.ACCEPTED, state());
        tests.sign(test, "KM", new RecordFact.Voided("wrong unit"));
        assertEquals(Fleet.State.VOID, state());
        try (Fleet fleet = Fleet.of(tests.file(), Progress.none(), Cancellation.never())) {
            FleetFilter all = new FleetFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
            assertEquals(List.of(), fleet.inField(all, LocalDate.of(2027, 1, 1), 366));
            assertEquals(List.of(), fleet.measured(all));
        }
        assertSound();
    }

    private Fleet.State state() throws Exception {
        try (Fleet fleet = Fleet.of(tests.file(), Progress.none(), Cancellation.never())) {
            List<Fleet.Group> groups = fleet.groups(new FleetFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()));
            assertEquals(1, groups.size());
            return groups.get(0).state();
        }
    }

    @Test
    void whatIsNotOverYetWaitsForNobody() throws Exception {
        String test = tests.open();
        assertEquals(List.of(), list(false, true));
        assertSound();
        assertEquals(List.of(test), ids());
    }

    private List<String> ids() throws Exception {
        try (Projection cache = Projection.open(Projection.besides(tests.file().toAbsolutePath()))) {
            return List.copyOf(cache.ids());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"UPDATE deviation SET stand = 2, decision = 'accepted', reason = 'fine', decided_by = 'MJ', decided = 0",
        "DELETE FROM deviation", "UPDATE deviation SET words = 'nothing'", "UPDATE test SET state = 0 WHERE state = 1", "DELETE FROM test",
        "UPDATE reading SET value = value + 1", "UPDATE deviation SET stand = 77", "UPDATE test SET serial = 'C16-000001'",
        "DROP TABLE cause", "CREATE TABLE more (a)", "PRAGMA writable_schema = ON; UPDATE sqlite_master SET rootpage = (SELECT sum(rootpage) FROM sqlite_master "
                + "WHERE name IN ('test_groups', 'test_soaks')) - rootpage WHERE name IN ('test_groups', 'test_soaks')", "UPDATE test SET test = replace(hex(zeroblob(3000000)), '0', 'x') WHERE id = 1",
        "ALTER TABLE test RENAME TO kept; CREATE VIEW test AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i AS id, i AS test FROM n"})
    void aCacheThatWasChangedIsFound(String change) throws Exception {
        String departed = tests.departed();
        tests.rejected();
        assertEquals(1, list(false, true).size());
        assertSound();
        sql(change);
        LedgerReport report = tests.report();
        assertTrue(!report.sound() && !report.decisions().isEmpty(), change);
        assertTrue(report.decisions().get(0).reason().startsWith("the cache of figures and lists"), report.decisions().toString());
        Files.delete(Projection.besides(tests.file().toAbsolutePath()));
        assertSound();
        assertEquals(departed, list(false, true).get(0).test());
    }

    @Test
    void aTestThatIsOnlyInTheCacheIsFound() throws Exception {
        tests.departed();
        list(false, true);
        sql("INSERT INTO test SELECT 99, 'T-4K7M2-QXD9R', opened, family, procedure, serial, technician, station, state, first, soak_after, soak_by, "
                + "predecessor, out_day, back_day, back_fault, again_day, review_due FROM test LIMIT 1");
        LedgerReport report = tests.report();
        assertEquals(List.of("T-4K7M2-QXD9R"), report.decisions().stream().map(fault -> fault.test()).toList());
    }

    /** It is thrown away when somebody uses it; until then it says nothing. */
    @Test
    void aCacheOfAnotherLedgerIsNoFault() throws Exception {
        tests.departed();
        list(false, true);
        sql("UPDATE mark SET link = 'other'");
        sql("DELETE FROM deviation");
        assertSound();
        assertEquals(1, list(false, true).size());
        Files.writeString(Projection.besides(tests.file().toAbsolutePath()), "no database");
        assertSound();
    }

    private void sql(String change) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + Projection.besides(tests.file().toAbsolutePath()));
                Statement statement = connection.createStatement()) {
            statement.executeUpdate(change);
        }
    }
}
