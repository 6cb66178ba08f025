package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Verdict;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowPlace.Mark;
import org.benchwright.language.proof.MeasurementProof;
import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.Provable;
import org.benchwright.language.proof.Proving;
import org.benchwright.language.proof.Telling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Texts that are being written: what they prove can be told as soon as they say something, and never fails. */
class WhatBrokenTextsProveTest {

    @TempDir
    private Path folder;

    private static Telling telling(FolderSession session, Path file) {
        return session.telling(file, Cancellation.never()).orElseThrow();
    }

    private static ProcedureProof proof(Telling telling) {
        return ((Telling.Told) telling).procedures().get(0).prove(Cancellation.never());
    }

    /** A folder with the family and a procedure of the sound bench, changed. */
    private FolderSession session(String family, String procedure) throws Exception {
        Files.writeString(folder.resolve("lark.family"), family);
        Files.writeString(folder.resolve("lark.procedure"), procedure);
        return FolderSession.open(folder);
    }

    private ProcedureProof proof(String family, String procedure) throws Exception {
        return proof(telling(session(family, procedure), folder.resolve("lark.procedure")));
    }

    @Test
    void nothingIsToldUntilTheErrorsAreMendedAndThenItIs() throws Exception {
        FolderSession session = session(Bench.FAMILY, Bench.PROCEDURE);
        Path file = folder.resolve("lark.procedure");
        assertEquals("Lark acceptance", proof(telling(session, file)).title());
        session.change(file, Bench.PROCEDURE.replace("go to matched, at most 2", "go to mtched, at most 2"));
        assertFalse(((Telling.NotYet) telling(session, file)).errors().isEmpty());
        session.change(file, Bench.PROCEDURE.replace("lasting 72 h", "lasting 96 h"));
        assertEquals(96, proof(telling(session, file)).soaks().get(0).lasting().toHours());
    }

    @Test
    void anErrorInTheFamilyStandsInTheWay() throws Exception {
        FolderSession session = session(Bench.FAMILY, Bench.PROCEDURE);
        session.change(folder.resolve("lark.family"), Bench.FAMILY.replace("like lark_base", "like lark_bas"));
        assertTrue(telling(session, folder.resolve("lark.procedure")) instanceof Telling.NotYet);
    }

    @Test
    void whatIsWrongWithTheFlowIsShownInIt() throws Exception {
        ProcedureProof unreached = proof(Bench.FAMILY,
                Bench.PROCEDURE.replace("or go to read_log", "or conclude rejected \"Reads wrong.\"")
                .replace("otherwise go to read_log", "otherwise conclude rejected \"Never started.\"")
                        .replace("when stopped go to read_log", "when stopped conclude rejected \"Stopped.\""));
        assertEquals(Set.of(Mark.UNREACHABLE, Mark.ON_DEMAND), marks(unreached, "log"));
        ProcedureProof live = proof(Bench.FAMILY,
                Bench.PROCEDURE.replace("\"Switch off.\" { isolates supply }",
                "\"Switch off.\" { confirm \"It is off.\" or release by supervisor \"On.\" }"));
        assertTrue(live.flow().places().stream().anyMatch(place -> place.kind() == FlowPlace.Kind.OVER
                && place.marks().contains(Mark.ENDS_LIVE)));
        ProcedureProof endless = proof(Bench.FAMILY,
                Bench.PROCEDURE.replace("otherwise go to matched, at most 2, or conclude undecided \"Does not fit.\"",
                "otherwise go to matched"));
        assertTrue(endless.paths().endless());
        assertEquals(Optional.empty(), endless.paths().count());
        assertEquals(Optional.empty(), endless.times().typical());
        assertEquals(5, endless.sections(Optional.empty()).size());
    }

    /** 5000 V written for 5 mV: nothing can be accepted, and that is what is told. */
    @Test
    void anInstrumentThatIsFarTooCoarseIsReckonedWithToo() throws Exception {
        ProcedureProof proof = proof(Bench.FAMILY, Bench.PROCEDURE.replace("uncertainty at most 0.05 V", "uncertainty at most 5000 V"));
        MeasurementProof supply = proof.measurements().stream().filter(each -> each.name().equals("supply_volts")).findFirst().orElseThrow();
        assertEquals(0, supply.risks().orElseThrow().accept());
        assertTrue(supply.risks().orElseThrow().ratio().orElseThrow() < 1e-3);
    }

    /** Both lead back to the step's beginning, one twice and one three times at most: neither bound holds for both. */
    @Test
    void reasonsWithOtherBoundsAreAnotherWay() throws Exception {
        ProcedureProof proof = proof(Bench.FAMILY,
                Bench.PROCEDURE.replace("confirm same \"Type on the plate\" and \"Type configured\"",
                "confirm \"It is clean.\" or go to matched, at most 3, or conclude undecided \"Dirty.\" confirm same \"Type on the plate\" and \"Type configured\""));
        FlowPlace matched = proof.flow().places().stream().filter(place -> place.name().equals("matched")).findFirst()
                .orElseThrow();
        assertEquals(Map.of(3, 1, 2, 1), proof.flow().from(matched).stream().filter(way -> way.to() == matched.id())
                .collect(Collectors.toMap(way -> way.atMost().getAsInt(), way -> way.reasons().size())));
    }

    @Test
    void whateverLeavesTheStraightWaySaysWhy() throws Exception {
        ProcedureProof proof = proof(Bench.FAMILY.replace("stop stays until \"somebody restarts the unit\"",
                "stop restarts by itself"), Bench.PROCEDURE);
        assertEquals(List.of(), proof.flow().ways().stream()
                .filter(way -> !way.kind().isStraight() && way.reasons().isEmpty()).toList());
        proof.flow().places().forEach(place -> assertFalse(proof.flow().told(place).isEmpty()));
    }

    @Test
    void verdictsComeInTheirOwnOrderInEveryRun() throws Exception {
        ProcedureProof proof = proof(Bench.FAMILY, Bench.PROCEDURE);
        assertEquals(List.of(Verdict.values()), List.copyOf(proof.paths().ending().keySet()));
        assertEquals(List.of(Verdict.values()), List.copyOf(proof.times().byVerdict().keySet()));
        assertThrows(UnsupportedOperationException.class, () -> proof.times().byVerdict().clear());
        assertThrows(UnsupportedOperationException.class, () -> proof.paths().ending().clear());
    }

    @Test
    void anUnsupportedClaimIsToldWithWhatHolds() throws Exception {
        ProcedureProof proof = proof(Bench.FAMILY,
                Bench.PROCEDURE.replace("every 31 h is revealed", "every 60 h is revealed"));
        assertFalse(proof.soaks().get(0).supportsClaim());
        // 1 - exp(-72/60) = 0.69880
        assertEquals(0.69880, proof.soaks().get(0).what(proof.soaks().get(0).lasting()).revealed(), 1e-5);
    }

    /** As the engine carries it out: where a stop does not stay, looks witness nothing, so that no test can end accepted. */
    @Test
    void aSoakOfUnitsThatRestartProvesNothingByLooks() throws Exception {
        ProcedureProof proof = proof(Bench.FAMILY.replace("stop stays until \"somebody restarts the unit\"",
                "stop restarts by itself"), Bench.PROCEDURE
                .replace("watch every 10 s, stop after 2 bad, silent after 3 missed\n", "").replace(", unless watched", ""));
        assertEquals(0, proof.soaks().get(0).what(proof.soaks().get(0).lasting()).revealed());
        assertFalse(proof.soaks().get(0).supportsClaim());
        assertFalse(proof.paths().ending().containsKey(Verdict.ACCEPTED));
        assertEquals(Optional.of(Verdict.UNDECIDED), proof.times().verdict());
    }

    @Test
    void aSoakOfUnitsThatRestartProvesWhatItsWatchSees() throws Exception {
        ProcedureProof proof = proof(Bench.FAMILY.replace("stop stays until \"somebody restarts the unit\"",
                "stop restarts by itself"), Bench.PROCEDURE);
        // 1 - exp(-72/31) = 0.90198
        assertEquals(0.90198, proof.soaks().get(0).what(proof.soaks().get(0).lasting()).revealed(), 1e-5);
        assertTrue(proof.soaks().get(0).supportsClaim());
        assertTrue(proof.paths().ending().containsKey(Verdict.ACCEPTED));
    }

    /** Two stages made of one shared stage of another folder: apart in the diagram, one text behind both. */
    @Test
    void sharedStagesOfOtherFoldersAreFoundInTheirOwnText() throws Exception {
        Path shared = Files.createDirectory(folder.resolve("shared"));
        Files.writeString(shared.resolve("lark.family"), Bench.FAMILY);
        String stage = "shared stage rest \"Rest\" for lark (time in s) { step pause \"Wait.\" { wait time } }";
        Files.writeString(shared.resolve("rest.procedure"), stage);
        Files.writeString(folder.resolve("p.procedure"), """
                import "shared/lark.family"
                import "shared/rest.procedure"
                procedure p "P" revision 1 {
                    applies to lark
                    carry out rest(time = 60 s)
                    carry out rest(time = 120 s) as second
                    make safe "Make safe" { step off "Off." { isolates supply } }
                    conclude accepted
                }
                """);
        FolderSession session = FolderSession.open(folder);
        ProcedureProof proof = proof(telling(session, folder.resolve("p.procedure")));
        assertEquals(Optional.of(BigInteger.ONE), proof.paths().count());
        assertEquals(180, proof.times().typical().orElseThrow().bench().toSeconds());
        assertEquals(List.of("pause", "second_pause", "off"), proof.times().without());
        for (String name : List.of("pause", "second_pause")) {
            FlowPlace place = proof.flow().places().stream().filter(each -> each.name().equals(name)).findFirst()
                    .orElseThrow();
            assertEquals(shared.resolve("rest.procedure").toRealPath(), place.text().orElseThrow().file().toRealPath());
            assertEquals(stage.indexOf("pause"), place.text().get().offset());
        }
        Files.writeString(shared.resolve("lark.family"), Bench.FAMILY.replace("lamp pwr", "lamp flt"));
        session.refresh();
        assertTrue(telling(FolderSession.open(folder), folder.resolve("p.procedure")) instanceof Telling.NotYet,
                "an imported family with an error");
    }

    @Test
    void fittedOptionsAreAnsweredOnce() throws Exception {
        String family = Bench.FAMILY.replace("serial \"LK-####\"", "serial \"LK-####\" option fan \"Fan\"");
        String head = "procedure p \"P\" revision 1 { applies to lark stage a \"A\" {";
        String tail = "} make safe \"M\" { step off \"Off.\" { isolates supply } } conclude accepted }";
        String fan = "step %s \"Look.\" only if fitted fan { confirm \"It turns.\" or conclude rejected \"No.\" }";
        String noFan = "step %s \"Look.\" only if not fitted fan { confirm \"A cover is on.\" or conclude rejected \"No.\" }";
        ProcedureProof proof = proof(family, head + fan.formatted("one") + fan.formatted("two") + noFan.formatted("three")
                + tail);
        // With a fan: it fails at one, at two, or neither; without: the cover is missing, or not.
        assertEquals(Map.of(Verdict.ACCEPTED, BigInteger.valueOf(2), Verdict.REJECTED, BigInteger.valueOf(3)), proof.paths()
                .ending());
        assertEquals(Set.of(Mark.CONDITIONAL), marks(proof, "one"));
    }

    /** Of a stage it is asked once what is seen, of a step each time. */
    @Test
    void whatIsSeenIsAskedOnceForAStageAndEachTimeForAStep() throws Exception {
        String head = "procedure p \"P\" revision 1 { applies to lark ";
        String tail = " make safe \"M\" { step off \"Off.\" { isolates supply } } conclude accepted }";
        String step = "step %s \"Look.\" %s { confirm \"It turns.\" or conclude rejected \"No.\" } ";
        ProcedureProof stage = proof(Bench.FAMILY, head + "stage a \"A\" only if seen \"A fan.\" {"
                + step.formatted("one", "") + step.formatted("two", "") + "}" + tail);
        // Not seen; or seen: it fails at one, at two, or neither.
        assertEquals(Map.of(Verdict.ACCEPTED, BigInteger.valueOf(2), Verdict.REJECTED, BigInteger.valueOf(2)), stage.paths()
                .ending());
        String seen = "only if seen \"A fan.\"";
        ProcedureProof each = proof(Bench.FAMILY, head + "stage a \"A\" {" + step.formatted("one", seen)
                + step.formatted("two", seen) + "}" + tail);
        // At one it fails, or it does not or is not seen; then at two the same again.
        assertEquals(Map.of(Verdict.ACCEPTED, BigInteger.valueOf(4), Verdict.REJECTED, BigInteger.valueOf(3)), each.paths()
                .ending());
    }

    private static Set<Mark> marks(ProcedureProof proof, String name) {
        return proof.flow().places().stream().filter(place -> place.name().equals(name)).findFirst().orElseThrow().marks();
    }

    @Test
    void whoeverCancelsIsHeard() throws Exception {
        Provable provable = ((Telling.Told) telling(session(Bench.FAMILY, Bench.PROCEDURE),
                folder.resolve("lark.procedure"))).procedures().get(0);
        assertThrows(CancellationException.class, () -> provable.prove(() -> true));
    }

    /** Lines taken out, doubled, swapped and cut: whatever remains, there is an answer. */
    @Test
    void noTextMakesItFail() throws Exception {
        FolderSession session = session(Bench.FAMILY, Bench.PROCEDURE);
        Random random = new Random(11);
        Proving proving = new Proving();
        int told = 0;
        for (int i = 0; i < 150; i++) {
            boolean family = random.nextInt(4) == 0;
            session.change(folder.resolve("lark.family"), family ? broken(Bench.FAMILY, random) : Bench.FAMILY);
            session.change(folder.resolve("lark.procedure"), family ? Bench.PROCEDURE : broken(Bench.PROCEDURE, random));
            if (telling(session, folder.resolve("lark.procedure")) instanceof Telling.Told some) {
                some.procedures().forEach(each -> assertEquals(5, proving.prove(each, Cancellation.never())
                        .sections(Optional.empty()).size()));
                told++;
            }
        }
        assertTrue(told > 15, "too few of the texts still say anything: " + told);
    }

    private static String broken(String text, Random random) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int at = random.nextInt(lines.size() - 1);
        switch (random.nextInt(4)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(at));
            case 2 -> lines.add(at, lines.remove(at + 1));
            default -> lines.set(at, lines.get(at).substring(0, random.nextInt(lines.get(at).length() + 1)));
        }
        return String.join("\n", lines);
    }
}
