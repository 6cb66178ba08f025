package org.benchwright.workshop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.Ticker;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.instrument.InstrumentBook;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionBook;
import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.ProofFormatException;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.people.KeyProtection;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.DecisionCheck;
import org.benchwright.workshop.internal.FaultCodes;
import org.benchwright.workshop.internal.InstrumentHistory;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PeopleKeys;
import org.benchwright.workshop.internal.ProjectionCheck;
import org.benchwright.workshop.internal.RevisionHistory;
import org.benchwright.workshop.internal.SharedBooks;
import org.benchwright.workshop.internal.SharedSettings;
import org.benchwright.workshop.internal.SignedNotes;
import org.benchwright.workshop.internal.TestsOfUnit;

/** The ledger of a bench with what the workshop does in it. */
public final class BenchLedger implements AutoCloseable {

    private final Ledger ledger;
    private final Path file;
    private final LedgerMemory memory;
    private final KeptTests reader = KeptTests.remembering();
    private Optional<Ledger> shared = Optional.empty();

    private BenchLedger(Ledger ledger, Path file, LedgerMemory memory) {
        this.ledger = ledger;
        this.file = file;
        this.memory = memory;
    }

    /** Where the ledger of this machine's user lies if nothing else is said. */
    public static Path standardFile() {
        return BenchFolder.standard().ledgerFile();
    }

    /** The ledger's file itself, where a link to it was named. */
    public static Path itself(Path ledger) {
        return BenchFolder.file(ledger);
    }

    /**
     * Opens the ledger for work, and makes it if there is none.
     *
     * @throws StoreException if it can't be made, read or written, or is none
     */
    public static BenchLedger open(Path file) throws StoreException {
        return open(file, new LedgerMemory());
    }

    /**
     * As {@link #open(Path)}, for whoever opens it again and again.
     *
     * @param memory what was read of this ledger before; it is added to
     */
    public static BenchLedger open(Path file, LedgerMemory memory) throws StoreException {
        return LedgerWork.of(() -> new BenchLedger(SqliteLedger.open(file), file, memory));
    }

    /**
     * Opens the ledger for work, and makes none: for whatever can't be done on an empty ledger.
     *
     * @throws StoreException if there is none, it can't be read or written, or is none
     */
    public static BenchLedger openExisting(Path file) throws StoreException {
        return LedgerWork.of(() -> new BenchLedger(SqliteLedger.openExisting(file), file, new LedgerMemory()));
    }

    /**
     * Opens the ledger for reading; nothing is made or changed.
     *
     * @throws StoreException if there is none or it can't be read
     */
    public static BenchLedger openReadOnly(Path file) throws StoreException {
        return openReadOnly(file, new LedgerMemory());
    }

    /**
     * As {@link #openReadOnly(Path)}, for whoever opens it again and again.
     *
     * @param memory what was read of this ledger before; it is added to
     */
    public static BenchLedger openReadOnly(Path file, LedgerMemory memory) throws StoreException {
        return LedgerWork.of(() -> new BenchLedger(SqliteLedger.openReadOnly(file), file, memory));
    }

    /**
     * A workshop that works in this ledger and seals with the bench key beside it, which is made if there is none.
     *
     * @throws StoreException if the bench key can't be had
     */
    public Workshop workshop(Station station, BenchTime time) throws StoreException {
        return new Workshop(ledger, memory, benchKey(), station, time, keys(time, KeyProtection.standard()));
    }

    /**
     * Signs somebody in at this station.
     *
     * @param who with the full password
     * @param pin by which they sign what they carry out, as long as the station stays unlocked
     * @throws RefusedException if there is no such person or key, the password is not taken, or the PIN is too short
     */
    public SignedIn signIn(SigningPerson who, char[] pin, BenchTime time) throws RefusedException, StoreException {
        return LedgerWork.of(() -> new SignedIn(who.id(), PeopleKeys.unlock(keys(time, KeyProtection.standard()), People.read(ledger), who), pin));
    }

    /**
     * The register of people, to enter something in it.
     *
     * @throws StoreException if the bench key can't be had
     */
    public Registrar registrar(BenchTime time) throws StoreException {
        return registrar(time, KeyProtection.standard().iterations());
    }

    /**
     * As {@link #registrar(BenchTime)}, with another cost of trying a password on a stolen key file.
     *
     * @param iterations rounds of PBKDF2 for keys that are made
     */
    public Registrar registrar(BenchTime time, int iterations) throws StoreException {
        return new Registrar(books(time), benchKey(), keys(time, new KeyProtection(iterations)), time);
    }

    /**
     * Everybody in the register of people; nobody where it was not begun.
     *
     * @throws StoreException if it can't be read, or is not as it was signed
     */
    public List<RegisteredPerson> people() throws StoreException {
        return LedgerWork.of(() -> People.read(ledger).all().stream().map(Registrar::shown).toList());
    }

    /**
     * What was prepared, approved and withdrawn, to sign more.
     *
     * @throws StoreException if the bench key can't be had
     */
    public Approvals approvals(BenchTime time) throws StoreException {
        return new Approvals(books(time), benchKey(), keys(time, KeyProtection.standard()), time);
    }

    /**
     * What people sign about records after their seal.
     *
     * @throws StoreException if the bench key can't be had
     */
    public AfterSeal afterSeal(BenchTime time) throws StoreException {
        return new AfterSeal(ledger, benchKey(), keys(time, KeyProtection.standard()), time,
                () -> books(time) instanceof SharedBooks sharing ? Optional.of(sharing.ofAllBenches()) : Optional.empty());
    }

    /**
     * All revisions that were prepared, as they stand.
     *
     * @throws StoreException if the ledger can't be read, or its books are not as they were signed
     */
    public RevisionBook revisions() throws StoreException {
        return LedgerWork.of(() -> RevisionHistory.trusted(ledger, memory.books()).now());
    }

    /**
     * The register of instruments, to sign something about them.
     *
     * @throws StoreException if the bench key can't be had
     */
    public InstrumentRegister instrumentRegister(BenchTime time) throws StoreException {
        return new InstrumentRegister(books(time), benchKey(), keys(time, KeyProtection.standard()), time);
    }

    /**
     * All instruments as they stand.
     *
     * @throws StoreException if the ledger can't be read, or the book is not as it was signed
     */
    public InstrumentBook instruments() throws StoreException {
        return LedgerWork.of(() -> InstrumentHistory.trusted(ledger, memory.books()).now());
    }

    /**
     * The codes of all fault logs, those that were entered most often first.
     *
     * @throws StoreException if the ledger can't be read
     */
    public List<FaultCode> faultCodes() throws StoreException {
        return FaultCodes.of(ledger);
    }

    /**
     * The book of receipts, to receive units and to write down repairs.
     *
     * @throws StoreException if the bench key can't be had
     */
    public Receipts receipts(Station station, BenchTime time) throws StoreException {
        return receipts(station, time, new LedgerMemory());
    }

    /**
     * As {@link #receipts(Station, BenchTime)}, for whoever receives again and again.
     *
     * @param known what was read of this ledger before; it is added to
     */
    public Receipts receipts(Station station, BenchTime time, LedgerMemory known) throws StoreException {
        Ledger books = books(time);
        // What was read of this bench's own ledger says nothing of places in a shared one.
        return new Receipts(books, benchKey(), station, time, books == ledger ? known : new LedgerMemory());
    }

    /**
     * Photos and papers of receipts and repairs, to withdraw one that shows a person.
     *
     * @throws StoreException if the bench key can't be had
     */
    public HouseFiles houseFiles(BenchTime time) throws StoreException {
        return new HouseFiles(books(time), ledger, benchKey(), keys(time, KeyProtection.standard()), time);
    }

    /**
     * All receipts and repairs, as they stand.
     *
     * @throws StoreException if the ledger can't be read, or the book is not as it was signed
     */
    public ReceiptBook receiptBook() throws StoreException {
        return LedgerWork.of(() -> memory.receipts(ledger).now());
    }

    /**
     * Every unit that came in with where it stands, in the order in which they came.
     *
     * @param known what was found out before; it is added to
     * @throws FaultyRecordException if the record of a test cannot be what happened
     */
    public List<ReceivedUnit> received(LedgerMemory known) throws StoreException, FaultyRecordException {
        return LedgerWork.of(() -> new ReceivedUnits(ledger, known.receipts(ledger).now(), known).all());
    }

    /**
     * All tests of a unit in the order in which they were opened, rehearsals too.
     *
     * @param unit serial number or tag
     * @throws FaultyRecordException if the record of one cannot be what happened
     */
    public List<KeptTest> testsOf(String unit) throws StoreException, FaultyRecordException {
        List<KeptTest> tests = new ArrayList<>();
        for (TestsOfUnit.Opening opening : new TestsOfUnit(ledger).of(unit)) {
            tests.add(reader.read(ledger, opening.test()));
        }
        return List.copyOf(tests);
    }

    /**
     * The plan of a revision, as the ledger keeps it.
     *
     * @throws StoreException if it can't be read
     */
    public Plan plan(Revision revision) throws StoreException {
        return Approvals.plan(ledger, revision);
    }

    private PersonKeyStore keys(BenchTime time, KeyProtection protection) {
        return new PersonKeyStore(BenchFolder.of(file).path(), protection, time::now);
    }

    /** The ledger with the books that are entered into: the shared ledger's, where this bench shares one. */
    private Ledger books(BenchTime time) throws StoreException {
        Optional<Sharing> sharing = Sharing.of(file, System.getenv(), time);
        if (sharing.isEmpty() || !(ledger instanceof SqliteLedger own)) {
            return ledger;
        }
        if (shared.isEmpty()) {
            shared = Optional.of(LedgerWork.of(() -> new SharedBooks(own, sharing.get().open(), benchKey())));
        }
        return shared.get();
    }

    /**
     * A watch over the units on soak of this ledger, which stays open when it ends.
     *
     * @param endpoints  where the units are reached
     * @param longestRun how often it is written down, at least, that a unit is as it must be
     * @param listener   hears what is written
     */
    public WatchRound watch(BenchEndpoints endpoints, Clock clock, Ticker ticker, Duration longestRun, WatchListener listener) {
        Path certificates = BenchFolder.of(file).path().resolve("watch-certificates");
        return new WatchRound(ledger, endpoints, new WatchRound.Means(clock, ticker, certificates, longestRun), listener);
    }

    /** Where it stands how the units of this bench are reached. */
    public Path endpointsFile() {
        return BenchFolder.of(file).path().resolve(BenchEndpoints.FILE);
    }

    private Signer benchKey() throws StoreException {
        return LedgerWork.of(() -> BenchKeyStore.openOrCreate(BenchFolder.of(file).path()));
    }

    /**
     * The tests that are not sealed, in the order in which they were opened.
     *
     * @throws FaultyRecordException if the record of one cannot be what happened
     */
    public List<KeptTest> openTests() throws StoreException, FaultyRecordException {
        return LedgerWork.of(() -> memory.open(ledger));
    }

    /** The ids of all tests, in the order in which they were opened. */
    public List<String> tests() throws StoreException {
        return LedgerWork.of(() -> ledger.tests().stream().map(TestId::value).toList());
    }

    /**
     * A test of this ledger; empty if there is none of that id.
     *
     * @throws FaultyRecordException if its record cannot be what happened
     */
    public Optional<KeptTest> test(String id) throws StoreException, FaultyRecordException {
        Optional<TestId> test = TestId.parse(id);
        return LedgerWork.of(() -> test.isEmpty() || ledger.lastSequence(test.get()) == 0 ? Optional.empty()
                    : Optional.of(reader.read(ledger, test.get())));
    }

    /** Number of a test's last event, 0 for an unknown test. */
    public long lastSequence(String id) throws StoreException {
        Optional<TestId> test = TestId.parse(id);
        return LedgerWork.of(() -> test.isEmpty() ? 0 : ledger.lastSequence(test.get()));
    }

    /** What was signed after a test's seal, in order; nothing for an unknown test. */
    public List<SignedNote> signedAfterSeal(String id) throws StoreException {
        Optional<TestId> test = TestId.parse(id);
        return LedgerWork.of(() -> test.isEmpty() ? List.of() : new SignedNotes().of(ledger, test.get()));
    }

    /** What can be shown of this ledger to people who don't have it. */
    public BenchProofs proofs() {
        return new BenchProofs(ledger);
    }

    /**
     * Verifies a ledger: links, signatures, decisions derived again. Nothing is made or changed.
     *
     * @throws StoreException if there is none, or it can't be read as a ledger at all
     */
    public static LedgerReport verify(Path file) throws StoreException {
        return verify(file, Progress.none(), Cancellation.never());
    }

    /**
     * Verifies a ledger while somebody watches, see {@link #verify(Path)}. A report of what was cancelled is never sound.
     *
     * @throws StoreException if there is none, or it can't be read as a ledger at all
     */
    public static LedgerReport verify(Path file, Progress progress, Cancellation cancellation) throws StoreException {
        return verified(file, List.of(), progress, cancellation);
    }

    /**
     * Verifies a ledger and compares it with checkpoints that were kept elsewhere, see {@link #verify(Path)}.
     *
     * @param kept texts of the kept checkpoints
     * @throws RefusedException if one of the texts is no checkpoint
     * @throws StoreException   if there is no ledger, or it can't be read as one at all
     */
    public static LedgerReport verify(Path file, List<String> kept) throws RefusedException, StoreException {
        List<SignedCheckpoint> checkpoints = new ArrayList<>();
        for (String text : kept) {
            try {
                checkpoints.add(SignedCheckpoint.read(text));
            } catch (ProofFormatException malformed) {
                throw new RefusedException(malformed.getMessage());
            }
        }
        return verified(file, checkpoints, Progress.none(), Cancellation.never());
    }

    private static LedgerReport verified(Path file, List<SignedCheckpoint> kept, Progress progress, Cancellation cancellation)
            throws StoreException {
        try (Ledger documents = SqliteLedger.openReadOnly(file)) {
            VerificationRequest request = VerificationRequest.of(file);
            try (ProjectionCheck cache = ProjectionCheck.beside(file, documents)) {
                return verified(request.against(kept).with(progress, cancellation), cache, new DecisionCheck(documents, cache,
                        request.benchKey().map(SignerKey::fingerprint), Files.exists(BenchFolder.of(file).path().resolve(SharedSettings.FILE))));
            }
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }

    private static LedgerReport verified(VerificationRequest request, ProjectionCheck cache, DecisionCheck decisions) throws LedgerException {
        Verification found = LedgerVerifier.verify(request.with(decisions));
        List<String> signers = found.signers().stream().map(key -> key.fingerprint().hex()).toList();
        List<RecordFault> derived = new ArrayList<>(faults(found, 3));
        if (!cache.readable()) {
            derived.add(new RecordFault("", 0, Message.FAULT_CACHE.text()));
        }
        if (!request.cancellation().requested()) {
            // Tests in which the first lines found something were not derived again.
            Set<String> tests = found.tests().stream().map(test -> test.test().value()).collect(Collectors.toSet());
            decisions.madeUp().stream().filter(id -> !tests.contains(id)).forEach(id -> derived.add(new RecordFault(id, 0, Message.FAULT_MADE_UP.text())));
        }
        return new LedgerReport(found.tests().size(), found.events(), found.documents(), decisions.derived(), signers, faults(found, 1),
                faults(found, 2), List.copyOf(derived), found.faultsLeftOut(), decisions.open(), late(found, decisions),
                decisions.reviewsDue(), withdrawn(found), found.withdrawn().stream().anyMatch(each -> !each.gone()), request.benchKey().isPresent(),
                found.clean() && derived.isEmpty());
    }

    private static List<RecordFault> withdrawn(Verification found) {
        return found.withdrawn().stream().map(each -> new RecordFault(each.test().value(), each.sequence(),
                (each.gone() ? Message.WITHDRAWN : Message.WITHDRAWN_STILL_HERE).text(each.attachment().hex(), each.by(), each.reason()))).toList();
    }

    private static List<RecordFault> late(Verification found, DecisionCheck decisions) {
        return Stream.concat(found.late().stream(), decisions.late().stream())
                .map(arrival -> new RecordFault(arrival.test().value(), arrival.sequence(), arrival.words())).toList();
    }

    private static List<RecordFault> faults(Verification found, int line) {
        return found.faults().stream().filter(fault -> fault.kind().line() == line)
                .map(fault -> new RecordFault(fault.test().map(TestId::value).orElse(""), fault.sequence().orElse(0), fault.words()))
                .toList();
    }

    @Override
    public void close() throws StoreException {
        LedgerWork.to(() -> {
            if (shared.isPresent()) {
                shared.get().close();
            }
            ledger.close();
        });
    }
}
