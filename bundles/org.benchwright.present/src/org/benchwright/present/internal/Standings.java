package org.benchwright.present.internal;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.record.Amendment;
import org.benchwright.engine.record.Correction;
import org.benchwright.engine.record.Decision;
import org.benchwright.engine.record.Deed;
import org.benchwright.engine.record.Deviation;
import org.benchwright.engine.record.RecordEvent;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.Replay;
import org.benchwright.engine.record.Standing;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.present.AuditDeed;
import org.benchwright.present.DeviationRow;
import org.benchwright.present.RecordStanding;
import org.benchwright.present.TimelineLine;
import org.benchwright.present.WallTime;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.SignedNote;

/** Where sealed records stand, for people. */
public final class Standings {

    private Standings() {
    }

    /**
     * A record's standing.
     *
     * @param test  the test's id
     * @param notes what was signed after its seal
     * @param now   wall time
     */
    public static RecordStanding of(String test, TestRecord record, List<SignedNote> notes, Instant now, ZoneId zone) {
        Map<AuditDeed, String> objections = new EnumMap<>(AuditDeed.class);
        Optional<String> lost = notes.stream().filter(note -> !note.trusted()).findFirst()
                .map(note -> Message.STANDING_LOST_KEY.text(String.valueOf(note.sequence()), note.by()));
        lost.ifPresent(words -> objections.put(AuditDeed.HAND_OVER, words));
        for (Deed deed : Deed.values()) {
            record.objection(deed).ifPresent(words -> objections.put(AuditDeed.valueOf(deed.name()), words));
        }
        return new RecordStanding(words(record), record.number(), end(record, zone), lost.or(record::uncertified),
                record.deviations().stream().map(each -> row(test, record, each, now)).toList(), corrections(record), entries(record),
                attachments(record, zone), objections);
    }

    private static List<TimelineLine> entries(TestRecord record) {
        Set<Long> possible = record.run().holding().stream().filter(event -> event.body() instanceof Fact fact && Correction.possible(fact))
                .map(TestEvent::sequence).collect(Collectors.toSet());
        return Timeline.every(record.run(), Times.here()).stream().filter(line -> possible.contains(line.sequence())).toList();
    }

    private static List<RecordStanding.Attachment> attachments(TestRecord record, ZoneId zone) {
        return record.attachments().stream().map(each -> new RecordStanding.Attachment(each.event(), each.name(), record.withdrawn(each.event())
                .map(event -> Message.STANDING_WITHDRAWN.text(event.person(), new WallTime(zone).minute(event.instant()),
                        ((RecordFact.AttachmentWithdrawn) event.fact()).reason())))).toList();
    }

    private static String words(TestRecord record) {
        if (record.run().rehearsal()) {
            return Message.STANDING_REHEARSAL.text();
        }
        String word = record.standing().word();
        return record.handedOver().filter(over -> record.standing() == Standing.HANDED_OVER)
                .map(over -> over.certificate().equals(record.number()) ? Message.STANDING_OVER.text(over.to(), over.certificate())
                        : Message.STANDING_AMENDED.text(over.to(), over.certificate(), record.number())).orElse(word);
    }

    /** How a record ended, in words; empty if it did not. */
    public static Optional<String> end(TestRecord record, ZoneId zone) {
        return record.end().map(event -> Message.STANDING_END.text(record.standing().word(), event.person(), new WallTime(zone).minute(event.instant()),
                said(event)));
    }

    private static String said(RecordEvent event) {
        return event.fact().words();
    }

    // ---- deviations

    private static DeviationRow row(String test, TestRecord record, Deviation found, Instant now) {
        TestRun run = record.run();
        Optional<Decision> decision = record.decision(found.sequence());
        boolean waiting = decision.isEmpty() && !record.standing().over();
        Fleet.Stand stand = waiting ? Fleet.Stand.WAITING : decision.isPresent() ? Fleet.Stand.DECIDED : Fleet.Stand.PASSED_OVER;
        return row(new Fleet.Deviated(test, run.opening().serial(), run.opening().family(), run.opening().procedure(), found.sequence(),
                found.nonconformity(), found.stage(), found.step(), found.instant(), found.words(), stand,
                decision.map(each -> new Fleet.Decided(each.word(), each.reason(), each.person(), each.instant()))), now);
    }

    /** A departure or nonconformity out of the whole ledger. */
    public static DeviationRow row(Fleet.Deviated found, Instant now) {
        Instant until = found.decided().map(Fleet.Decided::instant).orElse(now);
        String owner = switch (found.stand()) {
            case TEST_OPEN -> Message.OWNER_TEST_OPEN.text();
            case WAITING -> Message.OWNER_AUDITOR.text();
            case DECIDED -> "";
            case PASSED_OVER -> Message.OWNER_PASSED.text();
        };
        return new DeviationRow(found.test(), found.serial(), found.family(), found.procedure(), found.sequence(), found.nonconformity(),
                place(found.stage(), found.step()), found.noted(), age(Duration.between(found.noted(), until)), WholeSeconds.in(found.words()), owner,
                found.stand() == Fleet.Stand.WAITING,
                found.decided().map(each -> new DeviationRow.Decision(each.word(), each.reason(), each.by(), each.instant())));
    }

    private static String place(String stage, String step) {
        return Questions.spaced(step.isEmpty() ? stage : stage + " / " + step);
    }

    /** Days as long as it is more than one, else hours, else minutes; seconds only within the first one. */
    private static String age(Duration waited) {
        Duration age = waited.isNegative() ? Duration.ZERO : waited;
        if (age.toDays() > 1) {
            return Message.AGE_DAYS.text(age.toDays());
        }
        return Durations.words(Durations.cutDown(age));
    }

    // ---- amendments

    /** What was amended, in order. */
    public static List<RecordStanding.Correction> corrections(TestRecord record) {
        List<RecordStanding.Correction> corrections = new ArrayList<>();
        for (Amendment each : record.amendments()) {
            CheckNames names = new CheckNames(record.run().plan());
            EventBody first = record.run().events().get((int) (each.event() - 1)).body();
            for (TestEvent event : record.run().events().subList(0, (int) each.event())) {
                names.follow(event.body());
            }
            corrections.add(new RecordStanding.Correction(each.event(), EventWords.of(first, names, Times.here()), EventWords.of(right(record, each), names, Times.here()),
                    each.reason(), each.person(), each.instant(), decided(record, each)));
        }
        return corrections;
    }

    private static EventBody right(TestRecord record, Amendment amendment) {
        try {
            return Correction.read(record.run(), amendment.event(), amendment.entry());
        } catch (RefusedException impossible) {
            throw new IllegalStateException("it was read when it was taken", impossible);
        }
    }

    /** A decision on record and the one that would have been made, in a sentence each. */
    public static String decidedAgain(Replay.Change change) {
        return Message.AMENDED_DECIDED.text(Questions.spaced(change.step()), Questions.spaced(change.check()),
                change.then().map(then -> unstopped(then.words())).orElseGet(Message.AMENDED_NOT_THEN::text), unstopped(change.now().words()));
    }

    /** Without the full stop, where more is to follow. */
    static String unstopped(String words) {
        return words.endsWith(".") ? words.substring(0, words.length() - 1) : words;
    }

    private static List<String> decided(TestRecord record, Amendment amendment) {
        List<String> sentences = new ArrayList<>();
        for (Replay.Change change : amendment.replay().changes()) {
            sentences.add(decidedAgain(change));
        }
        if (!amendment.replay().verdict().equals(record.run().verdict())) {
            sentences.add(amendment.replay().verdict().map(now -> Message.AMENDED_VERDICT.text(record.run().verdict().orElseThrow().word(), now.word()))
                    .orElseGet(Message.AMENDED_UNKNOWN::text));
        }
        amendment.replay().beside().forEach(words -> sentences.add(Message.AMENDED_BESIDE.text(unstopped(words))));
        return sentences;
    }
}
