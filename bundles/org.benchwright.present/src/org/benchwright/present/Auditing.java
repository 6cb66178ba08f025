package org.benchwright.present;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Deviation;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.Standings;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/**
 * What waits for an auditor in a ledger, and what people sign about records after their seal. Passwords that are handed in are blanked out.
 */
public final class Auditing {

    private final Path ledger;
    private final Bench.Clocks clocks;
    private final ZoneId zone;

    /**
     * @param ledger the ledger's file
     * @param clocks the bench's clocks
     * @param zone   the zone in which times are shown
     */
    public Auditing(Path ledger, Bench.Clocks clocks, ZoneId zone) {
        this.ledger = ledger;
        this.clocks = clocks;
        this.zone = zone;
    }

    // ---- what there is

    /**
     * Departures or nonconformities of all tests: those that wait for an auditor, oldest first, and behind them the others, latest first.
     *
     * @param nonconformities false for departures
     * @param waitingOnly     only what waits for an auditor
     * @throws CannotStoreException if the ledger can't be read, or it was cancelled
     */
    public List<DeviationRow> deviations(boolean nonconformities, boolean waitingOnly, Progress progress, Cancellation cancellation)
            throws CannotStoreException {
        Instant now = clocks.clock().instant();
        try (Fleet fleet = Fleet.of(ledger, progress, cancellation)) {
            return fleet.deviations(nonconformities, waitingOnly).stream().map(each -> Standings.row(each, now)).toList();
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }

    /** What can be decided, the usual first. */
    public static List<String> choices(boolean nonconformity) {
        return nonconformity ? Arrays.stream(Disposition.values()).map(Disposition::word).toList()
                : Arrays.stream(DepartureDecision.values()).map(DepartureDecision::word).toList();
    }

    // ---- what is signed

    /**
     * Decides on a departure or a nonconformity.
     *
     * @param event    number of the event that noted it
     * @param decision one of {@link #choices}
     * @return where the record stands then
     * @throws EntryRefusedException   if the record does not take it, the person may not, or the password is not taken
     * @throws TakenElsewhereException if somebody else wrote to the record in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public RecordStanding decide(String test, long event, String decision, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(test, by, kept -> decided(kept, event, decision, EntryReader.text(reason)));
    }

    private static RecordFact decided(KeptTest kept, long event, String decision, String reason) throws RefusedException {
        boolean nonconformity = Deviation.of(kept.run()).stream().anyMatch(each -> each.sequence() == event && each.nonconformity());
        String word = decision.strip().toLowerCase(Locale.ROOT).replace('-', ' ');
        if (nonconformity) {
            return new RecordFact.NonconformityDecided(event, Disposition.find(word).orElseThrow(() -> no(decision, true)), reason);
        }
        return new RecordFact.DepartureDecided(event, DepartureDecision.find(word).orElseThrow(() -> no(decision, false)), reason);
    }

    private static RefusedException no(String decision, boolean nonconformity) {
        return new RefusedException(Message.REFUSED_DECISION.text(decision, String.join(", ", choices(nonconformity))));
    }

    /** Corrects an entry; what was entered first stays readable. */
    public RecordStanding amend(String test, long event, String entry, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        RecordFact fact = new RecordFact.Amended(event, EntryReader.text(entry), EntryReader.text(reason));
        return signed(test, by, kept -> fact);
    }

    /**
     * Reviews a record.
     *
     * @param remark what there is to say; may be empty where it is agreed
     */
    public RecordStanding review(String test, boolean agreed, String remark, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        RecordFact fact = new RecordFact.Reviewed(agreed, remark.isBlank() ? "" : EntryReader.text(remark));
        return signed(test, by, kept -> fact);
    }

    /** Hands the unit over with the certificate of now. */
    public RecordStanding handOver(String test, String to, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        String whom = EntryReader.text(to);
        return signed(test, by, kept -> new RecordFact.HandedOver(whom, kept.record().map(TestRecord::number).orElse("")));
    }

    /**
     * Has another test take the place of this one.
     *
     * @param other id of that test
     */
    public RecordStanding supersede(String test, String other, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        RecordFact fact = new RecordFact.Superseded(other.strip(), EntryReader.text(reason));
        return signed(test, by, kept -> fact);
    }

    /** Calls a unit back that was handed over. */
    public RecordStanding recall(String test, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        RecordFact fact = new RecordFact.Recalled(EntryReader.text(reason));
        return signed(test, by, kept -> fact);
    }

    /** Voids a record. */
    public RecordStanding voidRecord(String test, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        RecordFact fact = new RecordFact.Voided(EntryReader.text(reason));
        return signed(test, by, kept -> fact);
    }

    @FunctionalInterface
    private interface Telling {
        RecordFact of(KeptTest kept) throws RefusedException, EntryRefusedException;
    }

    private RecordStanding signed(String test, PeopleDesk.Signing by, Telling telling)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            return Asked.of(() -> {
                try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                    KeptTest kept = open.test(test).orElseThrow(() -> new EntryRefusedException(Message.REFUSED_NO_TEST.text(test)));
                    BenchTime time = BenchTime.of(clocks.clock(), clocks.ticker(), clocks.pause());
                    TestRecord record = open.afterSeal(time).sign(test, telling.of(kept), by.person());
                    return Standings.of(test, record, open.signedAfterSeal(test), clocks.clock().instant(), zone);
                }
            });
        } finally {
            Arrays.fill(by.password(), ' ');
        }
    }
}
