package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Plot;
import org.benchwright.core.Progress;
import org.benchwright.core.SheetTable;
import org.benchwright.ledger.ProjectedTest;
import org.benchwright.ledger.ProjectedTest.Soak;
import org.benchwright.ledger.ProjectedTest.State;
import org.benchwright.ledger.Projection;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Figure;
import org.benchwright.present.FigureFilter;
import org.benchwright.present.Figures;
import org.benchwright.workshop.Fleet;
import org.junit.jupiter.api.Test;

class FiguresTest {

    private static final FigureFilter ALL = FigureFilter.all(ZoneOffset.UTC, LocalDate.of(2027, 5, 1));
    private static final Instant MAY = Instant.parse("2026-05-01T08:00:00Z");

    private final List<ProjectedTest> tests = new ArrayList<>();

    private void add(State state, Optional<Soak> soak, double volts) {
        int number = tests.size();
        tests.add(new ProjectedTest("t" + number, MAY.plusSeconds(86_400L * number), "tarn_c16", "c16_acceptance", "C16-" + number,
                number % 2 == 0 ? "QN" : "TB", "bench 1", state, true, soak,
                List.of(new ProjectedTest.Reading("supply_volts", "V", volts, "M-1")),
                state == State.REJECTED ? List.of(new ProjectedTest.Cause(false, "endurance")) : List.of(), Optional.empty(),
                Optional.empty()));
    }

    private Figures figures(FigureFilter filter) throws Exception {
        try (Projection projection = Projection.inMemory()) {
            projection.put(tests, Optional.of(new Projection.Mark(1, "", 1)));
            return Figures.of(Fleet.of(projection), filter);
        }
    }

    private static Figure figure(Figures figures, String title) {
        return figures.figures().stream().filter(figure -> figure.title().equals(title)).findFirst().orElseThrow();
    }

    @Test
    void anEmptyLedgerSaysSoInsteadOfDrawing() throws Exception {
        Figures figures = figures(ALL);
        assertTrue(figures.figures().stream().allMatch(figure -> figure.plot().isEmpty()));
        assertEquals(List.of("No first test has ended with a verdict."), figure(figures, "First-pass yield").sentences());
        assertEquals(List.of("No nonconformity was noted."), figure(figures, "Nonconformities").sentences());
        assertEquals(List.of("No soak of a family whose stop stays has told anything yet."), figure(figures, "What the soak finds").sentences());
        assertEquals("0 tests count: 0 ended with a verdict, 0 still open.", figures.basis().get(0));
        assertTrue(figures.basis().contains("Left out: 0 rehearsals."));
    }

    @Test
    void tinySamplesAreToldButNotDrawn() throws Exception {
        for (int i = 0; i < 3; i++) {
            add(i == 2 ? State.REJECTED : State.ACCEPTED, Optional.of(new Soak(259_200, Optional.empty())), 24);
        }
        Figures figures = figures(ALL);
        assertTrue(figures.figures().stream().allMatch(figure -> figure.plot().isEmpty()));
        assertEquals("2 of 3 units were accepted in their first test: 66.7 %, limits 9.4 .. 99.2 %.",
                figure(figures, "First-pass yield").sentences().get(0));
        assertTrue(figure(figures, "First-pass yield by person").sentences().contains("Too few to draw: 3, at least 5 are needed."));
        assertTrue(figure(figures, "supply volts, c16_acceptance").sentences().contains("Too few to draw: 3, at least 10 are needed."));
        List<String> soak = figure(figures, "What the soak finds").sentences();
        assertTrue(soak.contains("No unit stopped within 216 h witnessed in all."), soak::toString);
        assertTrue(soak.contains("Day 3 found nothing in 3 units; it may find up to 708 per 1,000."), soak::toString);
        assertTrue(soak.contains("These are the stops seen within 72 h; later ones can't show."), soak::toString);
    }

    /** Every number of this sentence by hand: 200 units, 20 stopped on the first day, 10 on the second, 5 on the third. */
    @Test
    void theSoakRecommendsItsLength() throws Exception {
        for (int i = 0; i < 200; i++) {
            Optional<Soak> soak = i < 20 ? stopped(0, 24) : i < 30 ? stopped(24, 48) : i < 35 ? stopped(48, 72)
                    : Optional.of(new Soak(259_200, Optional.empty()));
            add(i < 35 ? State.REJECTED : State.ACCEPTED, soak, 24 + i % 7 * 0.01);
        }
        Figure soak = figure(figures(ALL), "What the soak finds");
        assertEquals("200 units soaked, 35 of them stopped by themselves.", soak.sentences().get(0));
        String third = soak.sentences().stream().filter(sentence -> sentence.startsWith("Day 3")).findFirst().orElseThrow();
        // 5 of 170; 165 units for 24 h and 5 for 12 h make 4020 station-hours
        assertTrue(third.startsWith("Day 3 finds 29.4 per 1,000 units that reach it (limits ") && third.endsWith("804 station-hours each."), third);
        Plot plot = soak.plot().orElseThrow();
        List<Double> heights = plot.series().get(0).y();
        assertEquals(100, heights.get(0));
        assertEquals(90, heights.get(1), 1e-6);
        assertEquals(85, heights.get(2), 1e-6);
        assertEquals(82.5, heights.get(3), 1e-6);
        assertTrue(soak.sentences().stream().anyMatch(sentence -> sentence.startsWith("Stops do not come at a constant rate (p ")));
    }

    private static Optional<Soak> stopped(long afterHours, long byHours) {
        return Optional.of(new Soak(3600 * afterHours, Optional.of(3600 * byHours)));
    }

    @Test
    void rehearsalsAndFaultyRecordsCountNowhereAndAreTold() throws Exception {
        for (int i = 0; i < 12; i++) {
            add(i < 6 ? State.ACCEPTED : i < 10 ? State.REHEARSAL : State.FAULTY, Optional.of(new Soak(259_200, Optional.empty())), 24 + i);
        }
        Figures figures = figures(ALL);
        assertTrue(figures.basis().contains("Left out: 4 rehearsals."), figures.basis()::toString);
        assertTrue(figures.basis().stream().anyMatch(sentence -> sentence.startsWith("Left out: 2 records of this ledger")));
        assertTrue(figure(figures, "First-pass yield").sentences().get(0).startsWith("6 of 6 units"));
        assertTrue(figure(figures, "What the soak finds").sentences().get(0).startsWith("6 units soaked"));
        assertTrue(figure(figures, "supply volts, c16_acceptance").sentences().contains("Too few to draw: 6, at least 10 are needed."));
    }

    @Test
    void filtersAreToldAndObeyed() throws Exception {
        for (int i = 0; i < 12; i++) {
            add(State.ACCEPTED, Optional.empty(), 24);
        }
        FigureFilter filter = new FigureFilter(Optional.of("tarn_c16"), Optional.of("C16-4"), Optional.of(LocalDate.of(2026, 5, 2)),
                Optional.of(LocalDate.of(2026, 5, 5)), ZoneOffset.UTC, LocalDate.of(2027, 5, 1));
        Figures figures = figures(filter);
        assertEquals("1 test counts: 1 ended with a verdict, 0 still open.", figures.basis().get(0));
        for (String told : List.of("Family: tarn_c16.", "Unit: C16-4.", "Opened from 2026-05-02 to 2026-05-05.")) {
            assertTrue(figures.basis().contains(told), told);
        }
        FigureFilter days = new FigureFilter(Optional.empty(), Optional.empty(), Optional.of(LocalDate.of(2026, 5, 2)),
                Optional.of(LocalDate.of(2026, 5, 5)), ZoneOffset.UTC, LocalDate.of(2027, 5, 1));
        assertTrue(figures(days).basis().get(0).startsWith("4 tests"), "both days are in");
        FigureFilter other = new FigureFilter(Optional.of("tarn_a8"), Optional.empty(), Optional.empty(), Optional.empty(), ZoneOffset.UTC,
                LocalDate.of(2027, 5, 1));
        assertTrue(figures(other).basis().get(0).startsWith("0 tests"));
    }

    /** A step of three standard deviations after 20 readings breaks a rule; the drift is told with its limits. */
    @Test
    void aSupplyThatMovesIsTold() throws Exception {
        for (int i = 0; i < 30; i++) {
            add(State.ACCEPTED, Optional.empty(), 24 + (i % 2 == 0 ? 0.01 : -0.01) - (i < 20 ? 0 : 0.08));
        }
        Figure supply = figure(figures(ALL), "supply volts, c16_acceptance");
        assertTrue(supply.sentences().stream().anyMatch(sentence -> sentence.startsWith("Run rules are broken at ")), supply.sentences()::toString);
        assertTrue(supply.sentences().stream().anyMatch(sentence -> sentence.startsWith("It drifts: -0.00")), supply.sentences()::toString);
        assertEquals(30, supply.tables().get(0).rows().size());
        assertFalse(supply.plot().orElseThrow().series().get(4).x().isEmpty(), "what breaks a rule stands out");
    }

    /** Two zones that have no hour of the same day in common. */
    @Test
    void daysAreThoseOfTheWorkshop() throws Exception {
        for (int i = 0; i < 30; i++) {
            add(State.ACCEPTED, Optional.empty(), 24 + (i % 2 == 0 ? 0.01 : -0.01) - (i < 20 ? 0 : 0.08));
        }
        List<LocalDate> first = List.of(-12, 14).stream().map(hours -> firstSignal(ZoneOffset.ofHours(hours))).toList();
        LocalDate utc = firstSignal(ZoneOffset.UTC);
        assertTrue(first.get(0).isBefore(first.get(1)) && !first.get(0).isAfter(utc) && !utc.isAfter(first.get(1)), first + " " + utc);
    }

    private LocalDate firstSignal(ZoneOffset zone) {
        try {
            String words = figure(figures(FigureFilter.all(zone, LocalDate.of(2027, 5, 1))), "supply volts, c16_acceptance").sentences().stream()
                    .filter(sentence -> sentence.startsWith("Run rules are broken at ")).findFirst().orElseThrow();
            return LocalDate.parse(words.replaceAll("(?s)^[^:]*: (\\S+) .*$", "$1"));
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void manyInventedTestsGiveEveryFigure() throws Exception {
        try (Projection projection = Projection.inMemory()) {
            new InventedFleet(7, 600).fill(projection);
            Figures figures = Figures.of(Fleet.of(projection), ALL);
            assertEquals(13, figures.figures().size());
            assertEquals(11, figures.figures().stream().filter(figure -> figure.plot().isPresent()).count());
            List<String> names = figures.figures().stream().flatMap(figure -> figure.tables().stream()).map(SheetTable::name).toList();
            assertEquals(names.size(), names.stream().distinct().count(), "each table has a file of its own");
        }
    }

    /** A unit that is out, came back (or not) after so many days. */
    private void out(int number, long since, Optional<Long> back, int fault) {
        tests.add(new ProjectedTest("o" + number, MAY, "tarn_c16", number % 2 == 0 ? "c16_acceptance" : "c16_retest", "C16-" + number, "QN",
                "bench 1", State.ACCEPTED, true, Optional.empty(), List.of(), List.of(), Optional.empty(),
                Optional.of(new ProjectedTest.Field(since, back, fault))));
    }

    @Test
    void noUnitOutAndNoneOutLongEnoughAreTold() throws Exception {
        assertEquals(List.of("No unit has gone out yet: none was accepted."), figure(figures(ALL), "What comes back").sentences());
        long today = LocalDate.of(2027, 5, 1).toEpochDay();
        out(0, today - 10, Optional.empty(), -1);
        Figure tiny = figure(figures(ALL), "What comes back");
        assertTrue(tiny.plot().isEmpty());
        assertTrue(tiny.sentences().contains("No unit has been out for 30 days yet: nothing can be said."), tiny.sentences().toString());
        assertEquals("", tiny.tables().get(0).rows().get(0).get(6), "no number where nothing can be said");
    }

    /** Ten units out for 100 days, one of them back on day 20, and ten out for 10 days only, which are not counted as good for 30. */
    @Test
    void unitsThatAreNotOutLongEnoughAreNotCountedAsGood() throws Exception {
        long today = LocalDate.of(2027, 5, 1).toEpochDay();
        for (int i = 0; i < 10; i++) {
            out(2 * i, today - 100, i == 0 ? Optional.of(today - 80) : Optional.empty(), i == 0 ? 0 : -1);
            out(2 * i + 1, today - 10, Optional.empty(), -1);
        }
        Figure figure = figure(figures(ALL), "What comes back");
        assertEquals("20 units went out accepted, 1 of them came back; a fault was confirmed in 1, not found in 0, not looked for yet in 0.",
                figure.sentences().get(0));
        // Kaplan and Meier: 1 of the 10 at risk on day 20 is 10.0 %, not 1 of 20; the limits on the scale ln(-ln S) are 1.5 .. 52.7 %
        assertTrue(figure.sentences().stream().anyMatch(words -> words.startsWith("Within 30 days 10.0 % come back (limits 1.5 .. 52.7 %)")
                && words.endsWith("10 units have not been out for so long.")), figure.sentences().toString());
        assertTrue(figure.sentences().contains("No unit has been out for 365 days yet: nothing can be said."));
        assertEquals(List.of("c16 retest", "30", "10", "0", "0", "0", "", "", ""), figure.tables().get(0).rows().get(2));
        assertEquals(List.of(0.0, 20.0, 20.0, 100.0), figure.plot().orElseThrow().series().get(0).x());
    }

    /** 24 units soaked 72 h each in 23 days at one station: 24 x 72 h of work in 552 h, more than three stations can do. */
    @Test
    void stationsAreHeldAgainstWhatComes() throws Exception {
        for (int i = 0; i < 24; i++) {
            add(State.ACCEPTED, Optional.of(new Soak(259_200, Optional.empty())), 24 + i % 3 * 0.01);
        }
        Figure figure = figure(figures(ALL), "Are there enough stations");
        assertEquals("24 units soaked in 23 days at 1 station, 72 h each on average: that is 313.0 % of what the station can do.",
                figure.sentences().get(0));
        assertEquals("The stations cannot keep up with what comes; 4 would be busy up to 85 % of the time.", figure.sentences().get(1));
        List<List<String>> rows = figure.tables().get(0).rows();
        assertEquals(List.of("1", "2", "3", "4", "5"), rows.stream().map(row -> row.get(0)).toList());
        // Erlang B(4, a) with a = 3.1304: (a^4/24) / (1 + a + a^2/2 + a^3/6 + a^4/24) = 4.0014 / 18.1446 = 0.2205
        assertEquals("22.1", rows.get(3).get(3));
        assertEquals("", rows.get(0).get(2), "no wait where the bench can't keep up");
    }

    /** 24 records at quality level 1.0 %: letter C, the arrow leads to 13 with none faulty; drawn from 24, 10 % (2) faulty pass with 19.9 %. */
    @Test
    void theSampleOfRecordsIsThatOfTheTableAndItsChancesAreWithoutPuttingBack() throws Exception {
        for (int i = 0; i < 24; i++) {
            add(State.ACCEPTED, Optional.empty(), 24 + i % 3 * 0.01);
        }
        Figure figure = figure(figures(ALL), "How many records to review");
        assertTrue(figure.sentences().get(0).startsWith("Of 24 tests that ended, review 13 drawn by chance, and accept the rest with up to 0"),
                figure.sentences().get(0));
        // C(22, 13) / C(24, 13) = 11 * 10 / (24 * 23)
        assertEquals("19.9", figure.tables().get(0).rows().get(1).get(5));
        assertEquals(List.of("4.0", "3", "0"), figure.tables().get(0).rows().get(3).subList(0, 3));
        assertTrue(figure(figures(new FigureFilter(Optional.of("tarn_a8"), Optional.empty(), Optional.empty(), Optional.empty(), ZoneOffset.UTC,
                LocalDate.of(2027, 5, 1))), "How many records to review").plot().isEmpty());
    }

    @Test
    void movingRangesAndMeansOfFiveHaveFiguresOfTheirOwn() throws Exception {
        for (int i = 0; i < 27; i++) {
            add(State.ACCEPTED, Optional.empty(), 24 + i % 2 * 0.02 + (i == 20 ? 1 : 0));
        }
        Figure moving = figure(figures(ALL), "supply volts, c16_acceptance: moving range");
        assertTrue(moving.sentences().get(0).startsWith("26 points;"), moving.sentences().get(0));
        assertEquals("Rules are broken at 2 points.", moving.sentences().get(1));
        Figure means = figure(figures(ALL), "supply volts, c16_acceptance: means of 5 readings");
        assertEquals(5, means.tables().get(0).rows().size(), "two that fill no group are left out");
        assertEquals(5, figure(figures(ALL), "supply volts, c16_acceptance: ranges of 5 readings").tables().get(0).rows().size());
    }

    @Test
    void aMissingLedgerIsTold() {
        Path missing = Path.of("missing", "bench.ledger");
        assertThrows(CannotStoreException.class, () -> Figures.read(missing, ALL, Progress.none(), Cancellation.never()));
    }
}
