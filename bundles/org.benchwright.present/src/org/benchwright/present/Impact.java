package org.benchwright.present;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.SheetTable;
import org.benchwright.core.Verdict;
import org.benchwright.engine.record.InstrumentImpact;
import org.benchwright.engine.record.Replay;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.ErrorWords;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.Standings;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.SignedSheet;
import org.benchwright.workshop.StoreException;

/**
 * Whom an instrument that read wrong touches: every sealed test in which something was read with it, decided again with the corrected reading.
 *
 * @param asked what was asked, in words
 * @param rows  every test, those that come to something else first
 * @param left  what could not be looked at: open tests, records that are not sound
 */
public record Impact(String asked, List<Row> rows, List<String> left) {

    /** First line of every sheet, and the domain of its signature. */
    public static final String FORMAT = "benchwright.impact/1";

    public Impact {
        rows = List.copyOf(rows);
        left = List.copyOf(left);
    }

    /**
     * What is asked.
     *
     * @param asset the instrument's asset number
     * @param reads how it reads wrong, such as {@code 0.12 V too high} or {@code 0.3 % low}
     * @param from  first day on which it did
     * @param to    last day
     */
    public record Question(String asset, String reads, LocalDate from, LocalDate to) {
    }

    /**
     * A test.
     *
     * @param test     its id
     * @param serial   the unit's serial number
     * @param standing where the record stands, in words
     * @param readings how many readings were corrected
     * @param then     the verdict on record
     * @param now      the verdict with the corrected readings; in words where it can't be told
     * @param changed  whether it is another, or can't be told
     * @param words    decisions that come out otherwise, or with another margin, a sentence each
     */
    public record Row(String test, String serial, String standing, int readings, String then, String now, boolean changed, List<String> words) {
        public Row {
            words = List.copyOf(words);
        }
    }

    /**
     * Looks at every test of a ledger.
     *
     * @param progress     is told of tests
     * @param cancellation stops it between tests
     * @throws EntryRefusedException if the question can't be read
     * @throws CannotStoreException  if the ledger can't be read, or it was cancelled
     */
    public static Impact of(Path ledger, Question question, ZoneId zone, Progress progress, Cancellation cancellation)
            throws EntryRefusedException, CannotStoreException {
        if (question.asset().isBlank() || question.to().isBefore(question.from())) {
            throw new EntryRefusedException(Message.IMPACT_ASK.text());
        }
        InstrumentImpact.Wrong wrong = new InstrumentImpact.Wrong(question.asset().strip(), ErrorWords.read(question.reads()),
                question.from().atStartOfDay(zone).toInstant(), question.to().plusDays(1).atStartOfDay(zone).toInstant());
        List<Row> rows = new ArrayList<>();
        List<String> left = new ArrayList<>();
        try (BenchLedger open = BenchLedger.openReadOnly(ledger)) {
            List<String> tests = open.tests();
            progress.begin(Message.IMPACT_PROGRESS.text(), tests.size());
            for (String id : tests) {
                if (cancellation.requested()) {
                    throw new CannotStoreException(Message.IMPACT_CANCELLED.text(), new InterruptedException());
                }
                look(open, id, wrong, rows, left);
                progress.advance(1);
            }
            progress.end();
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
        rows.sort((one, other) -> Boolean.compare(other.changed(), one.changed()));
        return new Impact(Message.IMPACT_ASKED.text(wrong.asset(), question.reads().strip(), question.from(), question.to()), rows, left);
    }

    private static void look(BenchLedger open, String id, InstrumentImpact.Wrong wrong, List<Row> rows, List<String> left) throws StoreException {
        try {
            KeptTest kept = open.test(id).orElseThrow();
            if (kept.run().rehearsal()) {
                return;
            }
            boolean named = InstrumentImpact.assets(kept.run()).stream().anyMatch(wrong.asset()::equalsIgnoreCase);
            if (kept.record().isEmpty() && named) {
                left.add(Message.IMPACT_OPEN.text(id, kept.run().opening().serial()));
            } else if (kept.record().isPresent()) {
                InstrumentImpact.of(kept.run(), kept.record().get().corrections(), wrong).ifPresent(impact -> rows.add(row(kept, kept.record().get(), impact)));
            }
        } catch (FaultyRecordException faulty) {
            left.add(Message.IMPACT_FAULTY.text(id, faulty.getMessage()));
        }
    }

    private static Row row(KeptTest kept, TestRecord record, InstrumentImpact impact) {
        String then = kept.run().verdict().map(Verdict::word).orElse("");
        List<String> words = new ArrayList<>();
        for (Replay.Change change : impact.replay().map(Replay::changes).orElse(List.of())) {
            words.add(Standings.decidedAgain(change));
        }
        if (impact.left() > 0) {
            words.add(Message.IMPACT_LEFT.text(impact.left()));
        }
        Optional<String> verdict = impact.readings() == 0 ? Optional.of(then) : impact.replay().flatMap(Replay::verdict).map(Verdict::word);
        return new Row(kept.id(), kept.run().opening().serial(), record.standing().word(), impact.readings(), then,
                verdict.orElseGet(Message.IMPACT_UNKNOWN::text), !verdict.equals(Optional.of(then)), words);
    }

    /** How many tests come to something else. */
    public long changed() {
        return rows.stream().filter(Row::changed).count();
    }

    /** What it comes to, in a sentence. */
    public String summary() {
        return Message.IMPACT_SUMMARY.text(rows.size(), changed());
    }

    /** All tests as a table. */
    public SheetTable table() {
        return new SheetTable("impact", List.of("test", "serial", "standing", "readings", "verdict", "corrected", "decisions"),
                rows.stream().map(row -> List.of(row.test(), row.serial(), row.standing(), String.valueOf(row.readings()), row.then(), row.now(),
                        String.join(" ", row.words()))).toList());
    }

    /**
     * The list as a sheet with the bench's signature.
     *
     * @param ledger   the bench's ledger, beside which its key lies
     * @param software name and version of this program
     * @throws CannotStoreException if the bench's key can't be had
     */
    public String signed(Path ledger, String software, Instant now) throws CannotStoreException {
        StringBuilder text = new StringBuilder(FORMAT + "\n");
        text.append(Message.IMPACT_HEAD.text(software, now.toString())).append('\n').append(asked).append('\n').append(summary()).append('\n');
        for (Row row : rows) {
            text.append((row.changed() ? Message.IMPACT_CHANGED : Message.IMPACT_SAME).text()).append("  ")
                    .append(Message.IMPACT_ROW.text(row.test(), row.serial(), row.then(), row.now(), row.standing())).append('\n');
            row.words().forEach(words -> text.append("    ").append(words.replace('\n', ' ')).append('\n'));
        }
        left.forEach(words -> text.append(words.replace('\n', ' ')).append('\n'));
        return Asked.read(() -> SignedSheet.sign(ledger, text.toString()));
    }
}
