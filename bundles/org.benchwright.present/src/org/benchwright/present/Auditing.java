package org.benchwright.present;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.core.Progress;
import org.benchwright.core.ScannedText;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Deviation;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.engine.revision.ReviewPlan;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.HouseWords;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.ReceivedRows;
import org.benchwright.present.internal.Standings;
import org.benchwright.workshop.AfterSeal;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/**
 * What waits for an auditor in a ledger, and what people sign about records after their seal. Passwords that are handed in are blanked out.
 */
public final class Auditing {

    private static final int SHORTEST_DIGEST = 8;

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

    /** At this machine: with the clocks that everybody's watch shows, and times by the clock on the wall. */
    public static Auditing here(Path ledger) {
        return new Auditing(ledger, Bench.Clocks.system(), ZoneId.systemDefault());
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

    /**
     * Sealed tests that were drawn for a review which is due, the longest waiting first.
     *
     * @throws CannotStoreException if the ledger can't be read, or it was cancelled
     */
    public List<ReviewRow> reviewsDue(Progress progress, Cancellation cancellation) throws CannotStoreException {
        try (Fleet fleet = Fleet.of(ledger, progress, cancellation)) {
            return fleet.reviewsDue().stream().map(each -> new ReviewRow(each.test(), each.serial(), each.family(), each.procedure(), each.technician(),
                    each.opened())).toList();
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }

    /** By which plan tests are drawn for a review, in words; that there is none, if there is none. */
    public String reviewPlan() throws CannotStoreException {
        return Asked.read(ledger, open -> open.revisions().reviews().map(Auditing::words).orElseGet(Message.REVIEWS_NOT_PLANNED::text));
    }

    private static String words(ReviewPlan plan) {
        return plan.sample() == plan.lot() ? Message.REVIEWS_ALL.text() : Message.REVIEWS_PLANNED.text(plan.sample(), plan.lot(), plan.quality().toPlainString());
    }

    /**
     * Plans how many of the tests that are opened from now on are drawn for a review.
     *
     * @param lot     for how many tests the sample is looked up, as typed
     * @param quality acceptable quality level in percent, as typed
     * @return the plan in words
     * @throws EntryRefusedException   if the tables have no such plan, the person may not, or the password is not taken
     * @throws TakenElsewhereException if somebody else signed something in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public String planReviews(String lot, String quality, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            BigDecimal level = new BigDecimal(quality.strip());
            int tests = Integer.parseInt(lot.strip());
            return Asked.of(() -> {
                try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                    BenchTime time = clocks.time();
                    return words(open.approvals(time).planReviews(tests, level, EntryReader.text(reason), by.person()));
                }
            });
        } catch (NumberFormatException unreadable) {
            throw new EntryRefusedException(Message.REFUSED_REVIEW_PLAN.text(lot, quality), unreadable);
        } finally {
            Arrays.fill(by.password(), ' ');
        }
    }

    /**
     * From now on no test is drawn for a review.
     *
     * @return so in words
     * @throws EntryRefusedException   if none is planned, the person may not, or the password is not taken
     * @throws TakenElsewhereException if somebody else signed something in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public String endReviews(String reason, PeopleDesk.Signing by) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            return Asked.of(() -> {
                try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                    open.approvals(clocks.time()).endReviews(EntryReader.text(reason), by.person());
                    return Message.REVIEWS_NOT_PLANNED.text();
                }
            });
        } finally {
            Arrays.fill(by.password(), ' ');
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
        boolean nonconformity = Deviation.of(kept.run()).stream().filter(each -> each.sequence() == event).findFirst()
                .orElseThrow(() -> new RefusedException(Message.REFUSED_NO_DEVIATION.text(event, kept.id()))).nonconformity();
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
        return signed(test, by, kept -> new RecordFact.Amended(event, EntryReader.text(entry), EntryReader.text(reason)));
    }

    /**
     * Reviews a record.
     *
     * @param remark what there is to say; may be empty where it is agreed
     */
    public RecordStanding review(String test, boolean agreed, String remark, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(test, by, kept -> new RecordFact.Reviewed(agreed, remark.isBlank() ? "" : EntryReader.text(remark)));
    }

    /** Hands the unit over with the certificate of now. */
    public RecordStanding handOver(String test, String to, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(test, by, kept -> new RecordFact.HandedOver(EntryReader.text(to), kept.record().map(TestRecord::number).orElse("")));
    }

    /**
     * Has another test take the place of this one.
     *
     * @param other id of that test
     */
    public RecordStanding supersede(String test, String other, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(test, by, kept -> new RecordFact.Superseded(other.strip(), EntryReader.text(reason)));
    }

    /** Calls a unit back that was handed over. */
    public RecordStanding recall(String test, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(test, by, kept -> new RecordFact.Recalled(EntryReader.text(reason)));
    }

    /** Voids a record. */
    public RecordStanding voidRecord(String test, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(test, by, kept -> new RecordFact.Voided(EntryReader.text(reason)));
    }

    /**
     * Takes the bytes of an attachment away, since they are personal; its digest stays.
     *
     * @param event number of the event that attached it
     */
    public RecordStanding withdrawAttachment(String test, long event, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return signed(test, by, kept -> new RecordFact.AttachmentWithdrawn(event, kept.record().stream().flatMap(record -> record.attachments().stream())
                .filter(each -> each.event() == event).map(TestRecord.Attachment::digest).findFirst()
                .orElseThrow(() -> new EntryRefusedException(Message.REFUSED_NO_ATTACHMENT.text(event))), EntryReader.text(reason)));
    }

    /**
     * Whether this names a test, and not a unit or a receipt of which files are kept; a serial number may begin as tests' ids do.
     *
     * @param typed a test's id, a serial number, a tag or a receipt
     * @throws CannotStoreException if the ledger can't be read, or a record is not sound
     */
    public boolean namesTest(String typed) throws CannotStoreException {
        String named = ScannedText.clean(typed);
        return Asked.read(ledger, open -> open.test(named).isPresent()
                || named.toUpperCase(Locale.ROOT).startsWith("T-") && open.receiptBook().of(named).isEmpty() && open.testsOf(named).isEmpty());
    }

    /**
     * Ends what {@link #withdrawAttachment} began, where it was broken off after the signature and before the bytes were gone.
     *
     * @return whether bytes were left
     */
    public boolean endWithdrawal(String test, long event) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return Asked.of(() -> {
            try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                return open.afterSeal(clocks.time()).endWithdrawal(test, event);
            }
        });
    }

    /**
     * Ends what {@link #withdrawFile} began, where it was broken off after the signature and before the bytes were gone.
     *
     * @return the file, if bytes were left of it
     */
    public Optional<HouseFile> endWithdrawal(String typed, String file) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return Asked.of(() -> {
            try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                ReceiptBook book = open.receiptBook();
                String unit = unit(typed, book);
                HouseFile found = file(unit, file.strip(), ReceivedRows.files(unit, book));
                return found.withdrawn().isPresent() && open.houseFiles(clocks.time()).endWithdrawals() > 0 ? Optional.of(found) : Optional.empty();
            }
        });
    }

    /**
     * Ends all that {@link #withdrawAttachment} and {@link #withdrawFile} began, where it was broken off. Nothing is signed, so it takes no password.
     *
     * @return how many files had bytes left in this bench's own ledger
     */
    public int endWithdrawals() throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return Asked.of(() -> {
            try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                return open.afterSeal(clocks.time()).endWithdrawals() + open.houseFiles(clocks.time()).endWithdrawals();
            }
        });
    }

    /**
     * Takes the bytes of a file away that was kept with a receipt or a repair, since they are personal; its digest stays.
     *
     * @param typed the unit's serial number or tag, or one of its receipts, such as {@code R-17}
     * @param file  the file's name, or the beginning of its digest with at least 8 digits
     * @return the file after it
     * @throws EntryRefusedException   if there is no such file, the person may not, or the password is not taken
     * @throws TakenElsewhereException if somebody else wrote in the book of receipts in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public HouseFile withdrawFile(String typed, String file, String reason, PeopleDesk.Signing by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            String why = EntryReader.text(reason);
            return Asked.of(() -> {
                try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                    ReceiptBook book = open.receiptBook();
                    String unit = unit(typed, book);
                    HouseFile found = file(unit, file.strip(), ReceivedRows.files(unit, book));
                    ReceiptBook after = open.houseFiles(BenchTime.of(clocks.clock(), clocks.ticker(), clocks.pause()))
                            .withdraw(found.event(), Digest.parse(found.digest()), why, by.person());
                    return ReceivedRows.files(unit, after).stream().filter(each -> each.digest().equals(found.digest())).findFirst().orElseThrow();
                }
            });
        } finally {
            Arrays.fill(by.password(), ' ');
        }
    }

    private static String unit(String typed, ReceiptBook book) {
        OptionalLong number = Receipt.number(typed);
        Optional<Receipt> receipt = number.isPresent() ? book.receipt(number.getAsLong()) : Optional.empty();
        return receipt.map(found -> found.said().unit()).orElseGet(() -> ScannedText.clean(typed));
    }

    private static HouseFile file(String unit, String asked, List<HouseFile> files) throws EntryRefusedException {
        List<HouseFile> named = files.stream().filter(each -> each.name().equals(asked)
                || asked.length() >= SHORTEST_DIGEST && each.digest().startsWith(asked.toLowerCase(Locale.ROOT))).toList();
        List<HouseFile> there = named.stream().filter(each -> each.withdrawn().isEmpty()).toList();
        List<String> digests = there.stream().map(HouseFile::digest).distinct().toList();
        if (named.isEmpty()) {
            throw new EntryRefusedException(HouseWords.NO_FILE.text(unit, asked, files.size(),
                    files.stream().map(HouseFile::name).distinct().collect(Collectors.joining(", "))));
        } else if (digests.size() > 1) {
            throw new EntryRefusedException(HouseWords.SEVERAL_FILES.text(unit, asked, digests.stream().map(each -> each.substring(0, SHORTEST_DIGEST))
                    .collect(Collectors.joining(", "))));
        }
        return there.isEmpty() ? named.get(0) : there.get(0);
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
                    AfterSeal afterSeal = open.afterSeal(clocks.time());
                    RecordFact fact = telling.of(kept);
                    // Asked before the password is, so that nobody types one in vain.
                    afterSeal.require(test, fact, by.id());
                    TestRecord record = afterSeal.sign(test, fact, by.person());
                    return Standings.of(test, record, open.signedAfterSeal(test), clocks.clock().instant(), zone);
                }
            });
        } finally {
            Arrays.fill(by.password(), ' ');
        }
    }
}
