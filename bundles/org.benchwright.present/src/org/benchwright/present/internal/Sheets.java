package org.benchwright.present.internal;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.core.Verdict;
import org.benchwright.engine.FieldReturn;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.record.Amendment;
import org.benchwright.engine.record.Standing;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSheet;
import org.benchwright.present.TimelineLine;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.SignedNote;

/** Kept tests as rows and sheets of the records. */
public final class Sheets {

    private Sheets() {
    }

    /** The row of a kept test. */
    public static RecordRow row(KeptTest test) {
        TestRun run = test.run();
        Fact.Opened opening = run.opening();
        return new RecordRow(test.id(), opening.serial(), run.plan().family().title(),
                Message.ROW_PROCEDURE.text(run.plan().title(), String.valueOf(opening.revision())),
                run.events().get(0).actor().id(), run.events().get(0).moment().instant(), state(test), opening.rehearsal(),
                Findable.of(run));
    }

    /**
     * The sheet of a kept test.
     *
     * @param notes what was signed after its seal
     * @param now   wall time
     */
    public static RecordSheet sheet(KeptTest test, List<SignedNote> notes, Instant now) {
        Set<Long> amended = test.record().map(record -> record.amendments().stream().map(Amendment::event).collect(Collectors.toSet())).orElse(Set.of());
        List<TimelineLine> story = new ArrayList<>();
        Timeline.of(test.run(), Times.here()).forEach(line -> story.add(amended.contains(line.sequence()) ? line.asStruck() : line));
        notes.forEach(note -> story.add(line(note)));
        return new RecordSheet(row(test), test.run().ended() ? test.run().reason() : "", SoakProof.of(test.run()), story, test.sealed(), test.run().opening().predecessor(),
                test.record().map(record -> Standings.of(test.id(), record, notes, now, ZoneId.systemDefault())),
                SoakCourse.of(test.run()),
                test.field().filter(field -> field.counts(test.run()) && field.returned().map(FieldReturn::fault)
                        .map(fault -> fault == FieldReturn.Fault.NOT_LOOKED_FOR).orElse(true)).isPresent());
    }

    private static TimelineLine line(SignedNote note) {
        String words = Message.TOLD_AFTER_SEAL.text(note.kind().replace('-', ' '), note.by(), note.words().isEmpty() ? 0 : 1, note.words());
        return new TimelineLine(note.sequence(), note.instant(), "", note.trusted() ? words : Message.TOLD_LOST_KEY.text(words), false, true);
    }

    /** A verdict that does not hold any more, or that nobody may rely on yet, is never told alone. */
    private static String state(KeptTest test) {
        String verdict = verdict(test.run());
        return test.record().map(TestRecord::standing).filter(standing -> standing.over() || standing == Standing.REVIEW_DUE).map(end -> Message.STATE_OVER.text(verdict, end.word())).orElse(verdict);
    }

    private static String verdict(TestRun run) {
        return run.verdict().map(Verdict::word)
                .or(() -> run.wouldBe().map(v -> Message.STATE_WOULD_BE.text(v.word())))
                .orElseGet(Message.STATE_OPEN::text);
    }
}
