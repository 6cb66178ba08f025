package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.ProjectedTest.Cause;
import org.benchwright.ledger.ProjectedTest.Decided;
import org.benchwright.ledger.ProjectedTest.Deviation;
import org.benchwright.ledger.ProjectedTest.Reading;
import org.benchwright.ledger.ProjectedTest.Soak;
import org.benchwright.ledger.ProjectedTest.Stand;
import org.benchwright.ledger.ProjectedTest.State;
import org.benchwright.ledger.Projection;
import org.benchwright.ledger.ProjectionCounts;
import org.benchwright.ledger.ProjectionFilter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProjectionTest {

    private static final Instant MAY = Instant.parse("2026-05-01T08:00:00Z");
    private static final Projection.Mark MARK = new Projection.Mark(12, "ab", 1);

    @TempDir
    private Path folder;

    private static ProjectedTest test(String id, State state, Optional<Soak> soak) {
        return new ProjectedTest(id, MAY.plusSeconds(id.length()), "tarn_c16", "c16", "C16-1", "QN", "bench 1", state, true, soak,
                List.of(new Reading("volts", "V", 24 + id.length(), "M-1")), List.of(new Cause(true, "W01"), new Cause(false, "soak")),
                Optional.empty(), Optional.empty());
    }

    private static Soak stopped(long after, long by) {
        return new Soak(after, Optional.of(by));
    }

    @Test
    void whatCountsIsCounted() throws LedgerException {
        try (Projection projection = Projection.inMemory()) {
            assertTrue(projection.mark().isEmpty());
            projection.put(List.of(test("a", State.ACCEPTED, Optional.of(new Soak(259_200, Optional.empty()))),
                    test("bb", State.REJECTED, Optional.of(stopped(10, 20))), test("ccc", State.REJECTED, Optional.of(stopped(10, 20))),
                    test("dddd", State.REHEARSAL, Optional.of(stopped(1, 2))), test("eeeee", State.FAULTY, Optional.empty())),
                    Optional.of(MARK));
            assertEquals(Optional.of(MARK), projection.mark());
            assertEquals(5, projection.tests(ProjectionFilter.ALL).stream().mapToLong(ProjectionCounts.Tests::count).sum());
            assertEquals(List.of(new ProjectionCounts.Soaks(stopped(10, 20), 2),
                    new ProjectionCounts.Soaks(new Soak(259_200, Optional.empty()), 1)), projection.soaks(ProjectionFilter.ALL));
            assertEquals(List.of(new ProjectionCounts.Found(new Cause(false, "soak"), 3), new ProjectionCounts.Found(new Cause(true, "W01"), 3)),
                    projection.causes(ProjectionFilter.ALL));
            List<ProjectionCounts.Measured> measured = projection.measured(ProjectionFilter.ALL);
            assertEquals(List.of(new ProjectionCounts.Measured("c16", "volts", "V", 3)), measured);
            assertEquals(List.of(26.0, 27.0), projection.readings(ProjectionFilter.ALL, measured.get(0), 2).stream()
                    .map(ProjectionCounts.Read::value).toList());
        }
    }

    private static ProjectedTest out(String id, long opened, Optional<String> before, Optional<ProjectedTest.Field> field) {
        return new ProjectedTest(id, Instant.EPOCH.plusSeconds(86_400 * opened), "tarn_c16", "c16", "C16-1", "QN", "bench 1", State.ACCEPTED,
                before.isEmpty(), Optional.empty(), List.of(), List.of(), before, field);
    }

    private static Optional<ProjectedTest.Field> since(long day) {
        return Optional.of(new ProjectedTest.Field(day, Optional.empty(), -1));
    }

    @Test
    void unitsAreOutThereUntilTheyComeBackOrAreTestedAgain() throws LedgerException {
        try (Projection projection = Projection.inMemory()) {
            ProjectedTest back = out("back", 90, Optional.empty(), Optional.of(new ProjectedTest.Field(100, Optional.of(130L), 1)));
            projection.put(List.of(out("old", 90, Optional.empty(), since(100)), out("new", 490, Optional.empty(), since(495)), back,
                    out("again", 90, Optional.empty(), since(100)), out("next", 150, Optional.of("again"), Optional.empty()),
                    out("never", 90, Optional.empty(), Optional.empty())), Optional.of(MARK));
            List<ProjectionCounts.Field> wanted = List.of(new ProjectionCounts.Field("c16", 366, false, false, -1, 1),
                    new ProjectionCounts.Field("c16", 5, false, false, -1, 1), new ProjectionCounts.Field("c16", 30, true, false, 1, 1),
                    new ProjectionCounts.Field("c16", 50, false, true, -1, 1));
            assertEquals(wanted, projection.field(ProjectionFilter.ALL, 500, 366));
            // The earlier test is derived again, as after a review: what its successor told stays.
            projection.put(List.of(out("again", 90, Optional.empty(), since(100))), Optional.of(MARK));
            assertEquals(wanted, projection.field(ProjectionFilter.ALL, 500, 366));
            ProjectionFilter other = new ProjectionFilter(Optional.of("tarn_a8"), Optional.empty(), Optional.empty(), Optional.empty());
            assertEquals(List.of(), projection.field(other, 500, 366));
        }
    }

    private static Deviation deviation(long sequence, boolean nonconformity, Stand stand, Optional<Decided> decision) {
        return new Deviation(sequence, nonconformity, "soak", "look", MAY.plusSeconds(sequence), "late", stand, decision);
    }

    private static ProjectedTest deviating(String id, boolean reviewDue, Deviation... deviations) {
        return new ProjectedTest(id, MAY.minusSeconds(id.length()), "tarn_c16", "c16", "C16-1", "QN", "bench 1", State.ACCEPTED, false,
                Optional.of(stopped(10, 20)), List.of(new Reading("volts", "V", 23.9, "M-1")), List.of(new Cause(true, "W01")), Optional.of("before"),
                Optional.of(new ProjectedTest.Field(100, Optional.of(130L), 1)), List.of(deviations), reviewDue);
    }

    @Test
    void aTestComesBackAsItWasPutIn() throws LedgerException {
        Decided decided = new Decided("ACCEPTED", "the gap was short", "LW", MAY.plusSeconds(99));
        ProjectedTest whole = deviating("whole", true, deviation(7, false, Stand.DECIDED, Optional.of(decided)),
                deviation(3, true, Stand.WAITING, Optional.empty()));
        ProjectedTest bare = test("bare", State.VOID, Optional.empty());
        try (Projection projection = Projection.inMemory()) {
            projection.put(List.of(whole, bare), Optional.of(MARK));
            assertEquals(Set.of("whole", "bare"), projection.ids());
            assertEquals(Optional.of(whole), projection.test("whole"));
            assertEquals(Optional.of(bare), projection.test("bare"));
            assertEquals(Optional.empty(), projection.test("who"));
            assertTrue(projection.consistent());
        }
    }

    @Test
    void whatWaitsLongestComesFirstAndBehindItWhatNobodyWaitsFor() throws LedgerException {
        Decided decided = new Decided("ACCEPTED", "the gap was short", "LW", MAY.plusSeconds(99));
        try (Projection projection = Projection.inMemory()) {
            projection.put(List.of(deviating("a", true, deviation(5, false, Stand.WAITING, Optional.empty()),
                    deviation(8, false, Stand.TEST_OPEN, Optional.empty())),
                    deviating("bb", false, deviation(2, false, Stand.WAITING, Optional.empty()),
                    deviation(9, false, Stand.DECIDED, Optional.of(decided)), deviation(1, true, Stand.WAITING, Optional.empty())),
                    deviating("ccc", true)), Optional.of(MARK));
            assertEquals(List.of(2L, 5L), sequences(projection.deviations(false, true)));
            assertEquals(List.of(2L, 5L, 9L, 8L), sequences(projection.deviations(false, false)));
            assertEquals(List.of(1L), sequences(projection.deviations(true, false)));
            assertEquals(List.of("ccc", "a"), projection.reviewsDue().stream().map(ProjectionCounts.ReviewDue::test).toList(),
                    "opened first, due first");
            assertEquals(Optional.of(Duration.ofSeconds(2)), projection.span(ProjectionFilter.ALL));
        }
    }

    private static List<Long> sequences(List<ProjectionCounts.Deviated> deviations) {
        return deviations.stream().map(each -> each.deviation().sequence()).toList();
    }

    @Test
    void filtersTakeFamilyUnitAndTime() throws LedgerException {
        try (Projection projection = Projection.inMemory()) {
            projection.put(List.of(test("a", State.ACCEPTED, Optional.of(stopped(1, 2))), test("bbbbbbbb", State.ACCEPTED, Optional.empty())),
                    Optional.of(MARK));
            ProjectionFilter later = new ProjectionFilter(Optional.of("tarn_c16"), Optional.of("C16-1"), Optional.of(MAY.plusSeconds(5)),
                    Optional.empty());
            ProjectionFilter other = new ProjectionFilter(Optional.of("tarn_a8"), Optional.empty(), Optional.empty(), Optional.empty());
            assertEquals(1, projection.tests(later).stream().mapToLong(ProjectionCounts.Tests::count).sum());
            assertEquals(1, projection.measured(later).get(0).count());
            assertEquals(List.of(), projection.soaks(later));
            assertEquals(2, projection.causes(later).size());
            for (List<?> nothing : List.of(projection.tests(other), projection.causes(other), projection.measured(other))) {
                assertEquals(List.of(), nothing);
            }
        }
    }

    @Test
    void aTestThatWentOnTakesThePlaceOfWhatItWas() throws LedgerException {
        Path file = folder.resolve("bench.ledger.figures");
        try (Projection projection = Projection.open(file)) {
            projection.put(List.of(test("a", State.OPEN, Optional.empty())), Optional.of(MARK));
        }
        try (Projection again = Projection.open(file)) {
            assertEquals(Optional.of(MARK), again.mark());
            again.put(List.of(test("a", State.ACCEPTED, Optional.of(stopped(1, 2)))), Optional.empty());
            assertTrue(again.mark().isEmpty(), "it says itself that it is not complete");
            assertEquals(List.of(State.ACCEPTED), again.tests(ProjectionFilter.ALL).stream().map(ProjectionCounts.Tests::state).toList());
            assertEquals(1, again.measured(ProjectionFilter.ALL).get(0).count());
            again.clear();
            assertEquals(List.of(), again.tests(ProjectionFilter.ALL));
            assertEquals(List.of(), again.causes(ProjectionFilter.ALL));
        }
    }

    @Test
    void whatIsNoCacheIsMadeAnew() throws Exception {
        Path file = Files.writeString(folder.resolve("bench.ledger.figures"), "no database, and longer than the head of one would be ".repeat(10));
        try (Projection projection = Projection.open(file)) {
            assertTrue(projection.mark().isEmpty());
            projection.put(List.of(test("a", State.OPEN, Optional.empty())), Optional.of(MARK));
        }
        try (Projection again = Projection.open(file)) {
            assertEquals(Optional.of(MARK), again.mark());
        }
    }

    @Test
    void whereNothingCanBeWrittenItStaysInMemory() throws LedgerException {
        Path nowhere = folder.resolve("missing").resolve("bench.ledger.figures");
        try (Projection projection = Projection.open(nowhere)) {
            projection.put(List.of(test("a", State.OPEN, Optional.empty())), Optional.of(MARK));
            assertEquals(1, projection.tests(ProjectionFilter.ALL).size());
        }
        assertTrue(Files.notExists(nowhere.getParent()));
    }

    /** A view may never come to an end, and may answer otherwise each time. */
    @Test
    void aCacheWithOtherTablesThanOursIsNone() throws Exception {
        Path file = made();
        try (Tamper tamper = Tamper.with(file)) {
            tamper.run("ALTER TABLE mark RENAME TO marks").run("CREATE VIEW mark AS SELECT * FROM marks");
        }
        LedgerException told = assertThrows(LedgerDamagedException.class, () -> Projection.openReadOnly(file));
        assertTrue(told.getMessage().contains("made anew"), told.getMessage());
        try (Projection anew = Projection.open(file)) {
            assertEquals(Optional.empty(), anew.mark());
        }
    }

    /** Nobody's memory is filled by what stands in a cell. */
    @Test
    void aCellThatIsLongerThanAnEventIsNotRead() throws Exception {
        Path file = made();
        try (Tamper tamper = Tamper.with(file)) {
            tamper.run("UPDATE test SET test = replace(hex(zeroblob(3000000)), '0', 'x')");
        }
        try (Projection projection = Projection.openReadOnly(file).orElseThrow()) {
            LedgerException refused = assertThrows(LedgerException.class, projection::ids);
            assertTrue(refused.getMessage().contains(file.toString()), refused.getMessage());
        }
    }

    private Path made() throws LedgerException {
        Path file = folder.resolve("bench.ledger.figures");
        try (Projection projection = Projection.open(file)) {
            projection.put(List.of(test("a", State.OPEN, Optional.empty())), Optional.of(MARK));
        }
        try (Projection projection = Projection.openReadOnly(file).orElseThrow()) {
            assertEquals(Optional.of(MARK), projection.mark());
        }
        return file;
    }
}
