package org.benchwright.report.tests;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Actor;
import org.benchwright.core.Plot;
import org.benchwright.core.Role;
import org.benchwright.core.SheetTable;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.report.Page;
import org.benchwright.report.TestReport;
import org.benchwright.report.TestReport.Amendment;
import org.benchwright.report.TestReport.Attachment;
import org.benchwright.report.TestReport.Certainty;
import org.benchwright.report.TestReport.Heading;
import org.benchwright.report.TestReport.Instrument;
import org.benchwright.report.TestReport.Numbers;
import org.benchwright.report.TestReport.Result;
import org.benchwright.report.TestReport.StoryLine;

/** Invented tests of invented units, on paper; the proof is of a real ledger. */
final class SampleReport {

    static final TestId TEST = new TestId("T-4K7M2-QXD9R");
    static final Instant BEGAN = Instant.parse("2026-03-02T07:30:00Z");
    static final Instant PRINTED = Instant.parse("2026-03-05T16:00:00Z");
    private static final String DIGEST = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";

    private SampleReport() {
    }

    static Heading heading(boolean rehearsal, boolean sealed, Optional<String> verdict) {
        return new Heading(TEST.value(), "C16-004711", "Tarn C16 modular controller", "C16 acceptance on the bench", 1,
                "Shows whether a C16 may go back on a plant.", DIGEST, Optional.empty(), "Millbrook Bench Works, bench 2", "Benchwright 0.1.0",
                List.of("technician QN", "auditor KM"), BEGAN, Optional.of(BEGAN.plus(Duration.ofHours(74))), Optional.of("T-B2GKX-JFFG2"),
                rehearsal, sealed, verdict, "Every step conforms.", Optional.empty(), List.of());
    }

    /** An accepted unit, measured, soaked, with a departure. */
    static TestReport accepted(Path folder) throws Exception {
        return with(heading(false, true, Optional.of("accepted")), List.of(), Optional.of(proof(folder)), 40);
    }

    /** The same after the auditor has decided on the departure. */
    static TestReport decided(Path folder) throws Exception {
        Amendment amendment = new Amendment(5, BEGAN.plus(Duration.ofHours(76)), "departure-decided", "auditor LW",
                "Accepted: the look was late by four minutes in 72 hours.", true);
        return with(heading(false, true, Optional.of("accepted")), List.of(amendment), Optional.of(proof(folder)), 40);
    }

    /** The same after a reading was amended: the second certificate, for the unit that went out with the first. */
    static TestReport amended(Path folder) throws Exception {
        Amendment over = new Amendment(6, BEGAN.plus(Duration.ofHours(80)), "handed-over", "technician QN", "to the owner with certificate "
                + TEST.value() + "/1", false);
        Amendment amended = new Amendment(7, BEGAN.plus(Duration.ofHours(90)), "amended", "technician QN",
                "event 2 is to read \"24.10\": read from the photo", true);
        TestReport like = with(heading(false, true, Optional.of("accepted")), List.of(over, amended), Optional.of(proof(folder)), 40);
        return like.with(new TestReport.Standing("handed over to the owner with certificate " + TEST.value() + "/1; amended since, certificate "
                + TEST.value() + "/2 is to take its place", Optional.empty(), Optional.empty(),
                List.of(new TestReport.Correction(2, "supply volts: 23.90 V", "supply volts: 24.10 V", "read from the photo", "QN",
                        List.of("bench, supply volts. On record: 23.90 V accepted: 0.40 V inside With what is right: 24.10 V accepted: 0.40 V inside")))));
    }

    /** The same after its record was ended, or with something that waits. */
    static TestReport ended(Path folder, String word) throws Exception {
        return accepted(folder).with(new TestReport.Standing(word,
                Optional.of(new TestReport.End(word, word + " by auditor LW, 2026-03-09 08:00: mixed up")),
                Optional.of("This record is " + word + "."), List.of()));
    }

    /** The same while a departure waits. */
    static TestReport waiting(Path folder) throws Exception {
        return accepted(folder).with(new TestReport.Standing("waiting for a decision", Optional.empty(),
                Optional.of("1 to decide first. An auditor who had no hand in the test decides departure 12: look 4 min later than due"), List.of()));
    }

    /** The same with the course of its soak: a stop, and a condition that left its limits. */
    static TestReport soaked(Path folder) throws Exception {
        TestReport like = accepted(folder);
        Plot state = new Plot("Endurance", "hours since the soak began", "unit", Plot.Scale.NUMBERS, List.of(), List.of(
                new Plot.Series("state", Plot.Role.LINE, List.of(0.0, 40.0, 40.5), List.of(1.0, 1.0, 0.0)),
                new Plot.Series("the stop lies between", Plot.Role.ENDS, List.of(40.0, 40.5), List.of(1.0, 0.0))));
        Plot room = new Plot("ambient", "hours since the soak began", "ambient, degC", Plot.Scale.NUMBERS, List.of(), List.of(
                new Plot.Series("read", Plot.Role.POINTS, List.of(0.0, 20.0, 41.0), List.of(22.0, 23.5, 29.0)),
                new Plot.Series("upper limit", Plot.Role.LIMIT, List.of(0.0, 41.0), List.of(28.0, 28.0))));
        SheetTable changes = new SheetTable("endurance", List.of("from, h", "to, h", "by", "what"),
                List.of(List.of("40.0000", "40.5000", "watch", "mode faulted"), List.of("20.0000", "41.0000", "watch", "ambient outside: 29 degC")));
        return like.with(new TestReport.Shown(List.of(new StoryLine(3, BEGAN, "watch", "as it must be from 07:30 to 23:30, entries 1 to 3", false)),
                List.of(new Page.Section("Endurance", List.of("What came first can be told only where the intervals do not overlap."),
                Optional.of(state), List.of(changes)), new Page.Section("ambient", List.of(), Optional.of(room), List.of()))));
    }

    /** A rehearsal with a long record. */
    static TestReport rehearsal(Path folder, int lines) throws Exception {
        return with(heading(true, true, Optional.of("rejected")), List.of(), Optional.of(proof(folder)), lines);
    }

    /** A test that is still open. */
    static TestReport open() {
        return with(heading(false, false, Optional.empty()), List.of(), Optional.empty(), 3);
    }

    static TestReport with(Heading heading, List<Amendment> amendments, Optional<InclusionProof> proof, int lines) {
        Numbers volts = new Numbers("guarded both ways", "23.90 V", "23.5 .. 24.5 V", "0.02 V", "0.40 V",
                Optional.of(new Certainty("0.02 V", "> 99.99 %", "5.96 %", "1 of at most 3")));
        Numbers ripple = new Numbers("simple", "41 mV", "at most 50 mV", "5 mV", "9 mV",
                Optional.of(new Certainty("0 mV", "99.98 %", "50.00 %", "1 of at most 1")));
        List<Result> results = List.of(
                new Result("measure", "supply volts", "conforms", "23.90 V accepted: 0.40 V inside", Optional.of(volts)),
                new Result("measure", "ripple \u2264 50 mV at 25 \u00b0C, \u03a9 load", "conforms", "41 mV accepted", Optional.of(ripple)),
                new Result("power up: lamps", "pwr", "conforms", "PWR (Power) green steady: seen as expected within 2 s.", Optional.empty()),
                new Result("match", "types", "is released", "Released by KM: the type plate was replaced by the owner.", Optional.empty()));
        List<StoryLine> story = story(lines);
        return new TestReport(heading, results,
                List.of("endurance: 72 h witnessed, 0 stops: would have revealed, with 90 % probability, any fault that stops a unit at least"
                        + " once in 31 h on average. Assumed: such a fault stops the unit at a constant rate. One that shows with age, with"
                        + " warmth or when switched on is another matter."),
                List.of(new Instrument("meter", "M-17", "0.02 V (coverage factor 2)", "2027-03-01")),
                List.of("look 4 min later than due; tolerance 2 min"), List.of(),
                List.of(new Attachment("plate.jpg", "type plate", DIGEST)), amendments, story, proof, TestReport.Standing.NONE,
                new TestReport.Shown(story, List.of()));
    }

    private static List<StoryLine> story(int lines) {
        List<StoryLine> story = new ArrayList<>();
        for (int i = 1; i <= lines; i++) {
            story.add(new StoryLine(i, BEGAN.plusSeconds(i * 37L), i % 3 == 0 ? "" : "QN",
                    i == 2 ? "supply volts: 2.39 V" : "Look " + i + " at the lamps: as expected", i == 2));
        }
        return story;
    }

    /** The proof of a sealed test of three events in a new ledger; the same bytes each time. */
    static InclusionProof proof(Path folder) throws Exception {
        Actor technician = new Actor("QN", Role.TECHNICIAN);
        try (Ledger ledger = SqliteLedger.open(folder.resolve("bench.ledger"))) {
            if (ledger.lastSequence(TEST) == 0) {
                ledger.append(TEST, 0, List.of(new EntryDraft(TEST, BEGAN, 1, Duration.ZERO, technician, "opened", "{}"),
                        new EntryDraft(TEST, BEGAN.plusSeconds(60), 1, Duration.ofMinutes(1), technician, "observed", "{\"value\":\"23.90\"}")));
                ledger.seal(TEST, 2, BEGAN.plusSeconds(90), 1, Duration.ofSeconds(90), technician, FixedKey.key(), "Millbrook Bench Works");
            }
            return new LedgerProofs(ledger).inclusion(TEST, OptionalLong.empty(), true);
        }
    }
}
