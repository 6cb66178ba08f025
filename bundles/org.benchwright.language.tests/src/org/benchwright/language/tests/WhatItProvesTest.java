package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Verdict;
import org.benchwright.evidence.GlobalRisk;
import org.benchwright.evidence.GlobalRisk.Span;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.proof.FaultProof;
import org.benchwright.language.proof.FaultProof.How;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowPlace.Kind;
import org.benchwright.language.proof.FlowPlace.Mark;
import org.benchwright.language.proof.FlowWay;
import org.benchwright.language.proof.MeasurementProof;
import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.ProofSection;
import org.benchwright.language.proof.SoakProof;
import org.benchwright.language.proof.Telling;
import org.benchwright.language.proof.TimeSpan;
import org.benchwright.language.proof.Times;
import org.junit.jupiter.api.Test;

/** What the demo procedures prove, with values reckoned by hand. */
class WhatItProvesTest {

    private static final ProcedureReader READER = new ProcedureReader(Bench.LANGUAGE);

    private static ProcedureProof prove(String file) {
        Telling.Told told = (Telling.Told) READER.telling(DemoFolder.FOLDER.resolve(file));
        return told.procedures().get(0).prove(Cancellation.never());
    }

    private static TimeSpan span(int benchMinutes, int attendedMinutes) {
        return new TimeSpan(Duration.ofMinutes(benchMinutes), Duration.ofMinutes(attendedMinutes));
    }

    // ---- paths

    /**
     * Nothing is repeated in it: 6 preconditions that may not be met; 2 confirmations of the rack; supply rejected or
     * undecided, its slot
     * rejected, the meter not shown; fitting and its cover; 3 lamps; 1 log; 2 at the start; loaded volts rejected or
     * undecided; the soak
     * stopped inside or outside its conditions; and the straight path: 6 + 2 + 2 + 2 + 2 + 3 + 1 + 2 + 2 + 2 + 1 = 25.
     */
    @Test
    void pathsThatBranchOnceAreAddedUp() {
        ProcedureProof proof = prove("known-good-unit.procedure");
        assertEquals(Optional.of(BigInteger.valueOf(25)), proof.paths().count());
        assertEquals(Map.of(Verdict.ACCEPTED, BigInteger.ONE, Verdict.UNDECIDED, BigInteger.valueOf(24)), proof.paths()
                .ending());
        assertEquals(25, proof.paths().listed().size());
    }

    /**
     * Before the comparison 5 preconditions, 1 confirmation, supply twice, slot and meter, fitting and cover, 4 lamps: 16.
     * The comparison
     * may fail and be done again twice, so that what comes after it is met three times; after it the grid, 2 and 2 lamps,
     * and all well: 6.
     * A third failure ends: 16 + 3 * 6 + 1 = 35, of which 3 are accepted and 3 * 5 + 4 rejected.
     */
    @Test
    void aBoundedRepeatMultipliesWhatFollows() {
        ProcedureProof proof = prove("tarn-a8-acceptance.procedure");
        assertEquals(Map.of(Verdict.ACCEPTED, BigInteger.valueOf(3), Verdict.REJECTED, BigInteger.valueOf(19),
                Verdict.UNDECIDED,
                BigInteger.valueOf(13)), proof.paths().ending());
    }

    @Test
    void pathsAreListedByHowOftenTheyLeaveTheStraightWay() {
        ProcedureProof proof = prove("tarn-c16-acceptance.procedure");
        assertEquals(60, proof.paths().listed().size());
        assertEquals(proof.paths().count().orElseThrow().subtract(BigInteger.valueOf(60)), proof.paths().more()
                .orElseThrow());
        assertEquals(List.of(), proof.paths().listed().get(0).turns());
        assertEquals(Verdict.ACCEPTED, proof.paths().listed().get(0).verdict());
        assertEquals(1, proof.paths().listed().get(1).turns().size());
        assertEquals(2, proof.paths().listed().get(59).turns().size());
        assertTrue(proof.paths().listed().stream()
                .anyMatch(path -> path.turns().size() == 1 && path.turns().get(0).place().equals("lamps")
                && path.verdict() == Verdict.REJECTED
                && path.reason().startsWith("Power-up self-check failed")), "each lamp that fails is a path of its own");
    }

    // ---- the diagram

    @Test
    void theDiagramHasEachStepWithItsEndsAndSaysWhatLeadsThere() {
        ProcedureProof proof = prove("tarn-c16-acceptance.procedure");
        FlowPlace lamps = place(proof, "lamps");
        assertEquals("Power up", lamps.stage());
        FlowWay failed = proof.flow().from(lamps).stream().filter(way -> way.kind() == FlowWay.Kind.FAILED).findFirst()
                .orElseThrow();
        assertEquals(Kind.REJECTED, proof.flow().places().get(failed.to()).kind());
        assertEquals(4, failed.reasons().size(), "four lamps are watched");
        FlowPlace matched = place(proof, "matched");
        FlowWay again = proof.flow().from(matched).stream().filter(way -> way.to() == matched.id()).findFirst()
                .orElseThrow();
        assertEquals(2, again.atMost().orElseThrow());
        FlowPlace soak = place(proof, "endurance");
        assertEquals(Kind.SOAK, soak.kind());
        Map<FlowWay.Kind, String> ways = proof.flow().from(soak).stream()
                .filter(way -> !proof.flow().places().get(way.to()).isEnd())
                .collect(Collectors.toMap(FlowWay::kind, way -> proof.flow().places().get(way.to()).name()));
        // Power was lost: the last step that began with everything off is the one that switches on.
        assertEquals(Map.of(FlowWay.Kind.NEXT, "as_left", FlowWay.Kind.STOPPED, "stop_log", FlowWay.Kind.STOPPED_OUTSIDE,
                "start",
                FlowWay.Kind.GAP, "lamps"), ways);
    }

    @Test
    void aPlaceLeadsToItsNameInTheText() {
        FolderSession session = DemoFolder.open();
        Telling.Told told = (Telling.Told) session.telling(DemoFolder.PROCEDURE, Cancellation.never()).orElseThrow();
        ProcedureProof proof = told.procedures().get(0).prove(Cancellation.never());
        String text = DemoFolder.text(session, DemoFolder.PROCEDURE);
        for (FlowPlace place : proof.flow().places()) {
            boolean written = place.kind() == Kind.STEP || place.kind() == Kind.SOAK || place.kind() == Kind.SAFE_STEP;
            if (written) {
                int at = place.text().orElseThrow().offset();
                assertEquals(place.name(), text.substring(at, at + place.text().get().length()));
            }
        }
    }

    @Test
    void whatIsLiveIsMarked() {
        ProcedureProof proof = prove("tarn-c16-acceptance.procedure");
        assertFalse(place(proof, "fit").marks().contains(Mark.LIVE));
        assertFalse(place(proof, "lamps").marks().contains(Mark.LIVE), "it switches on itself");
        assertTrue(place(proof, "start").marks().contains(Mark.LIVE));
        assertEquals(Set.of(Mark.ON_DEMAND, Mark.LIVE), place(proof, "stop_log").marks());
        assertTrue(proof.flow().places().stream().noneMatch(each -> each.marks().contains(Mark.ENDS_LIVE)
                || each.marks().contains(Mark.UNREACHABLE)));
    }

    private static FlowPlace place(ProcedureProof proof, String name) {
        return proof.flow().places().stream().filter(place -> place.name().equals(name)).findFirst().orElseThrow();
    }

    // ---- times

    /**
     * The steps take 5 + 3 + 6 + 5 + 1 + 3 + 30 + 45 + 2 + 1 = 101 min, making safe 1 + 6 + 3 = 10 min. The waits (5, 30 and
     * 5 min) and the
     * settling times (80 values of 2 s) lie within what their steps take. An unmet precondition leaves making safe alone;
     * two repeats of
     * the comparison add 2 * 3 min; a third failure comes after 5 + 3 + 6 + 5 + 1 + 3 * 3 = 29 min.
     */
    @Test
    void timesAreWhatTheStepsTake() {
        Times times = prove("tarn-a8-acceptance.procedure").times();
        assertEquals(Optional.of(span(111, 111)), times.typical());
        assertEquals(new Times.Range(span(111, 111), span(117, 117)), times.byVerdict().get(Verdict.ACCEPTED));
        assertEquals(new Times.Range(span(10, 10), span(39, 39)), times.byVerdict().get(Verdict.UNDECIDED));
        assertEquals(List.of(), times.without());
    }

    /** 58 min on the bench: 28 min of steps, making safe among them, and 30 min of soak with looks at 0, 15 and 30 min. */
    @Test
    void aSoakOccupiesTheBenchAndNobody() {
        Times times = prove("known-good-unit.procedure").times();
        assertEquals(Optional.of(span(58, 28)), times.typical());
        Times.StageTime soak = times.stages().stream().filter(stage -> stage.title().equals("Short run")).findFirst()
                .orElseThrow();
        assertEquals(new Times.StageTime("Short run", span(30, 0), Optional.empty(), 3), soak);
    }

    // ---- faults

    @Test
    void faultsAreRevealedByWhatIsSaidAndByWhatTheyShow() {
        FaultProof open = prove("tarn-a8-acceptance.procedure").faults().stream().filter(each -> each.code().equals("A01"))
                .findFirst().orElseThrow();
        assertEquals(List.of(new FaultProof.Reveal("lamps", How.SHOWN, "scanning", false),
                new FaultProof.Reveal("open_loop", How.DECLARED, "", false),
                new FaultProof.Reveal("closed_loop", How.SHOWN, "flt off", false)), open.reveals(),
                "open_loop expects just what the fault shows, so it is revealed there because the step says so");
    }

    // ---- risks

    /**
     * Guarded with U at k = 2 a unit on a limit is accepted, and rejected, with 1 - Phi(2) = 2.275 %. Half of 23.5 .. 24.5 V
     * over 0.05 V is
     * 10. For 95 % of the units to lie within 24 V +- 0.5 V they scatter by 0.5 / 1.95996 V.
     */
    @Test
    void risksOfOneReadingAreThoseOfTheHandbook() {
        MeasurementProof supply = prove("tarn-a8-acceptance.procedure").measurements().get(0);
        assertEquals("supply_volts", supply.name());
        MeasurementProof.Risks risks = supply.risks().orElseThrow();
        assertEquals(0.0227501, risks.acceptBeyond(), 1e-7);
        assertEquals(0.0227501, risks.rejectInside(), 1e-7);
        assertEquals(10, risks.ratio().orElseThrow(), 1e-12);
        GlobalRisk accepting = GlobalRisk.of(24, 0.5 / 1.959963985, 0.025, new Span(23.5, 24.5), new Span(23.55, 24.45));
        GlobalRisk rejecting = GlobalRisk.of(24, 0.5 / 1.959963985, 0.025, new Span(23.5, 24.5), new Span(23.45, 24.55));
        assertEquals(accepting.falseAccept(), risks.accept(), 1e-9);
        assertEquals(rejecting.falseReject(), risks.reject(), 1e-9);
    }

    /**
     * Guarded with two outcomes: a unit on the limit is rejected unless accepted. Each of 8 * 5 * 2 values is decided by
     * itself.
     */
    @Test
    void aGridIsToldForEachOfItsValues() {
        MeasurementProof shown = prove("tarn-a8-acceptance.procedure").measurements().get(2);
        assertEquals(80, shown.cells());
        assertEquals(1 - 0.0227501, shown.risks().orElseThrow().rejectInside(), 1e-7);
        assertEquals(8, shown.risks().orElseThrow().ratio().orElseThrow(), 1e-12, "0.016 mA over 0.002 mA");
    }

    @Test
    void repeatsRaiseTheRisk() {
        MeasurementProof bond = prove("tarn-p24-acceptance.procedure").measurements().stream()
                .filter(each -> each.name().equals("earth_path"))
                .findFirst().orElseThrow();
        assertEquals(3, bond.mostTimes());
        MeasurementProof.Risks risks = bond.risks().orElseThrow();
        assertEquals(0.0227501, risks.acceptBeyondOnce(), 1e-7);
        assertTrue(risks.acceptBeyond() > 1.1 * risks.acceptBeyondOnce());
        assertFalse(risks.ratio().isPresent(), "one limit has no middle");
    }

    // ---- soak

    /** 72 h / ln 10 = 31.269 h; 1 - exp(-72/31) = 0.90198; 1 - exp(-96/31) = 0.95481. */
    @Test
    void theSoakDetectsWhatTheExponentialModelSays() {
        SoakProof soak = prove("tarn-c16-acceptance.procedure").soaks().get(0);
        assertTrue(soak.supportsClaim());
        assertEquals(Duration.ofMinutes(31 * 60 + 16),
                Duration.ofMinutes(soak.what(soak.lasting()).longestRevealed().toMinutes()));
        assertEquals(0.90198, soak.what(soak.lasting()).revealed(), 1e-5);
        assertEquals(1 - 0.95481, soak.what(Duration.ofHours(96)).hidden(), 1e-5);
        assertEquals(List.of(24L, 36L, 48L, 72L, 96L, 120L), soak.lengths(Optional.of(Duration.ofHours(36))).stream()
                .map(each -> each.length().toHours())
                .toList());
        assertEquals(4, soak.what(soak.lasting()).looks(), "at 0, 24, 48 and 72 h");
        assertEquals(5, soak.what(Duration.ofHours(73)).looks());
    }

    @Test
    void everyFaceGetsTheSameSections() {
        List<ProofSection> sections = prove("tarn-c16-acceptance.procedure").sections(Optional.of(Duration.ofHours(96)));
        assertEquals(List.of(ProofSection.Subject.values()), sections.stream().map(ProofSection::subject).toList());
        ProofSection soak = sections.get(ProofSection.Subject.SOAK.ordinal());
        assertEquals("\"Endurance\", 72 h: with 90 % probability it reveals any fault that stops a unit at least once in 31 h 16 min on average.",
                soak.sentences().get(0));
        assertEquals(2, soak.plots().size());
        assertEquals(List.of("72 h", "96 h", "90 %", "claim"), soak.plots().get(0).series().stream()
                .map(series -> series.name()).toList());
    }

    @Test
    void aFamilyFileHasNothingToProve() {
        Telling.Told told = (Telling.Told) READER.telling(DemoFolder.FAMILY);
        assertEquals(List.of(), told.procedures());
        Telling.NotYet missing = (Telling.NotYet) READER.telling(Path.of("no-such.procedure"));
        assertEquals(1, missing.errors().size());
    }
}
