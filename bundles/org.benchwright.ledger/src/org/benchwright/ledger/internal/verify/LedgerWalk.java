package org.benchwright.ledger.internal.verify;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchwright.core.Digest;
import org.benchwright.ledger.CompactRange;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.LateArrival;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.TestCheck;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.VerifiedTest;
import org.benchwright.ledger.Withdrawal;
import org.benchwright.ledger.internal.Attachments;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.SignaturePart;

/** One verification: goes once through all events in ledger order, then hands the tests that are in order to the third line. */
public final class LedgerWalk {

    private static final int MOST_ORDER_FAULTS = 5;
    private static final int MOST_LATE = 1000;

    private final Connection connection;
    private final Optional<Connection> second;
    private final VerificationRequest request;
    private final FaultList faults = new FaultList();
    private final Map<TestId, TestPoint> points = new LinkedHashMap<>();
    private final DocumentCheck documents;
    private final KeptCheck kept;
    private final List<LateArrival> late = new ArrayList<>();
    private final Map<Digest, Withdrawal> withdrawn = new LinkedHashMap<>();
    private Map<String, SignerKey> signers = Map.of();
    private SignatureInspector signatures;
    private Optional<CompactRange> tree = Optional.of(CompactRange.empty());
    private long position = 1;
    private long events;
    private int orderFaults;

    /** Prepares to verify the ledger behind {@code connection}, whose file is {@code path}; a {@code second} connection sees the same. */
    public LedgerWalk(Connection connection, Optional<Connection> second, Path path, VerificationRequest request) {
        this.connection = connection;
        this.second = second;
        this.request = request;
        this.documents = new DocumentCheck(connection, Attachments.beside(path), faults);
        this.kept = new KeptCheck(request.kept(), request.benchKey(), faults);
        this.signatures = new SignatureInspector(Map.of(), request.benchKey(), KnownRegister.none(), Set.of());
    }

    /** Does it. */
    public Verification run() {
        request.progress().begin(Messages.text("verifying"), expected());
        try (StoreCheck store = new StoreCheck(connection, second)) {
            StoreCheck.guarded(faults, "event, signer", this::signers);
            StoreCheck.guarded(faults, "document", () -> documents.run(request.cancellation()));
            kept.signatures();
            StoreCheck.guarded(faults, "document", () -> kept.documents(documents));
            StoreCheck.guarded(faults, "checkpoint, event", this::walk);
            missing();
            List<VerifiedTest> tests = verifiedTests();
            FaultList all = store.found().with(faults);
            return new Verification(all.list(), all.leftOut(), events, documents.count(), tests,
                    List.copyOf(signers.values()), late, List.copyOf(withdrawn.values()), !request.cancellation().requested());
        } finally {
            request.progress().end();
        }
    }

    /** The register of people first, as it stands: a key that is revoked at the end says something about what it signed at the beginning. */
    private void signers() throws SQLException {
        KnownRegister register = new RegisterCheck(connection, faults).run();
        SignerCheck check = new SignerCheck(connection, request.benchKey(), register.people(), faults);
        check.run();
        signers = check.sound();
        signatures = new SignatureInspector(signers, request.benchKey(), register, check.brought());
    }

    /** How many events there seem to be; 0 where the table can't be counted, which the walk itself will tell. */
    private long expected() {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("SELECT count(*) FROM event")) {
            return row.next() ? row.getLong(1) : 0;
        } catch (SQLException uncountable) {
            return 0;
        }
    }

    private void walk() throws SQLException {
        try (CheckpointCheck checkpoints = new CheckpointCheck(connection, signatures, documents, faults);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(StoredRow.query());
                RowStream stream = new RowStream(rows)) {
            Optional<List<DecodedRow>> batch = stream.next();
            while (batch.isPresent() && !request.cancellation().requested()) {
                for (DecodedRow row : batch.get()) {
                    step(row, checkpoints);
                }
                request.progress().advance(batch.get().size());
                batch = stream.next();
            }
            if (!request.cancellation().requested()) {
                checkpoints.finish(events);
                kept.finish(events);
            }
        }
    }

    private void step(DecodedRow row, CheckpointCheck checkpoints) throws SQLException {
        events++;
        EventInspector.Result result = EventInspector.inspect(row,
                new EventInspector.Before(position, this::point, tree));
        List<Fault> found = new ArrayList<>(result.faults());
        tree = result.tree();
        long here = row.position().orElse(position);
        if (here != position) {
            // Rows lack or were added: what the tree should be from here on can't be known.
            tree = Optional.empty();
        }
        boolean met = checkpoints.meets(here, tree);
        tree.ifPresent(kept::meets);
        if (result.event().isPresent()) {
            found.addAll(signature(row, met, here));
            found.addAll(references(result.event().get(), row.references()));
            if (found.isEmpty()) {
                withdrawal(result.event().get(), row);
            }
        }
        result.test().ifPresent(test -> points.put(test, found.isEmpty() ? result.point().orElseThrow()
                : result.point().orElseThrow().faulty()));
        report(found);
        position = Math.max(position, here) + 1;
    }

    /** A signed event of a sealed test takes an attachment away; whether its signer may is for the third line. */
    private void withdrawal(Event event, DecodedRow row) {
        if (row.signed() && event.kind().equals(EventKinds.ATTACHMENT_WITHDRAWN)) {
            for (Digest attachment : row.references()) {
                withdrawn.putIfAbsent(attachment, new Withdrawal(event.test(), event.sequence(), attachment,
                        SignaturePart.in(event.payload()).map(SignaturePart::printedName).orElse(""), event.payload().text("reason").orElse(""),
                        documents.gone(attachment)));
            }
        }
    }

    /** What is not there and was not withdrawn. */
    private void missing() {
        documents.missing().forEach((digest, words) -> {
            if (!withdrawn.containsKey(digest)) {
                faults.add(Fault.ofLedger(FaultKind.DOCUMENT_MISSING, words));
            }
        });
    }

    private TestPoint point(TestId test) {
        TestPoint known = points.get(test);
        return known == null ? TestPoint.before(test) : known;
    }

    private List<Fault> signature(DecodedRow row, boolean checkpointMet, long here) {
        Event event = row.event().orElseThrow();
        TestPoint before = point(event.test());
        SignatureInspector.Result inspected = signatures.inspect(event, before, here);
        inspected.late().filter(arrival -> late.size() < MOST_LATE).ifPresent(late::add);
        List<Fault> found = new ArrayList<>(inspected.faults());
        if (row.signed() && !checkpointMet) {
            found.add(fault(event, FaultKind.CHECKPOINT_MISSING, "fault.checkpointMissing"));
        }
        return found;
    }

    private List<Fault> references(Event event, List<Digest> named) throws SQLException {
        List<Fault> found = new ArrayList<>();
        for (Digest digest : named) {
            if (!documents.lists(digest)) {
                found.add(fault(event, FaultKind.DOCUMENT_MISSING, "fault.documentMissing", digest));
            }
        }
        return found;
    }

    private static Fault fault(Event event, FaultKind kind, String key, Object... values) {
        return Fault.of(event.test(), event.sequence(), kind,
                Messages.text("fault.event", event.test(), event.sequence(), Messages.text(key, values)));
    }

    /** Once rows were moved, nearly every place after them is wrong: a few are told. */
    private void report(List<Fault> found) {
        for (Fault fault : found) {
            if (fault.kind() == FaultKind.ORDER_CHANGED && ++orderFaults == MOST_ORDER_FAULTS) {
                tree = Optional.empty();
            }
            faults.add(fault);
        }
    }

    private List<VerifiedTest> verifiedTests() {
        List<VerifiedTest> tests = new ArrayList<>();
        points.forEach((test, point) -> {
            VerifiedTest verified = new VerifiedTest(test, point.sequence(), point.sealed(), point.clean() && decisionsHold(test));
            if (test.isTest()) {
                tests.add(verified);
            }
        });
        return tests;
    }

    private boolean decisionsHold(TestId test) {
        if (request.cancellation().requested()) {
            return false;
        }
        List<Fault> found = request.testCheck().map(check -> decisions(check, test)).orElse(List.of());
        faults.addAll(found);
        return found.isEmpty();
    }

    private List<Fault> decisions(TestCheck check, TestId test) {
        try {
            return check.check(test, Chain.entries(connection, test));
        } catch (SQLException | PayloadException | RuntimeException failure) {
            // A check that fails is a finding of its own; the other tests are still looked at.
            return List.of(Fault.of(test, 1, FaultKind.DECISION_DIFFERS,
                    Messages.text("fault.decision", test, Messages.plain(failure))));
        }
    }
}
