package org.benchwright.workshop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/**
 * The tests of one unit, found by how they were opened.
 *
 * @param ledger where they are
 */
public record TestsOfUnit(Ledger ledger) {

    /** How each test was opened, in order. */
    public List<Opening> openings() throws StoreException {
        return LedgerWork.of(() -> decoded(ledger.openings()));
    }

    /** How each test of a unit was opened, in order; the others are not decoded. */
    public List<Opening> of(String unit) throws StoreException {
        return LedgerWork.of(() -> {
            List<Opening> latestFirst = decoded(ledger.openingsNaming(unit, Long.MAX_VALUE, Integer.MAX_VALUE));
            List<Opening> openings = new ArrayList<>();
            for (int i = latestFirst.size() - 1; i >= 0; i--) {
                if (latestFirst.get(i).opened().serial().equals(unit)) {
                    openings.add(latestFirst.get(i));
                }
            }
            return List.copyOf(openings);
        });
    }

    /** What the first events of tests say; a record that does not begin as a test is left out. */
    public static List<Opening> decoded(List<LedgerEntry> first) {
        EventCodec codec = new EventCodec();
        List<Opening> openings = new ArrayList<>();
        for (LedgerEntry entry : first) {
            codec.opened(entry).ifPresent(opened -> openings.add(new Opening(entry.test(), entry, opened)));
        }
        return List.copyOf(openings);
    }

    /**
     * How a test was opened.
     *
     * @param test its id
     * @param entry its first event
     * @param opened what that says
     */
    public record Opening(TestId test, LedgerEntry entry, Fact.Opened opened) {

        /** Whether it is a later test of the same unit, and no rehearsal. */
        boolean follows(Opening other) {
            return entry.position() > other.entry().position() && opened.serial().equals(other.opened().serial()) && !opened.rehearsal();
        }
    }

    /** The last test of a unit that is no rehearsal. */
    public Optional<String> last(String unit) throws StoreException {
        return of(unit).stream().filter(each -> !each.opened().rehearsal()).reduce((earlier, later) -> later).map(each -> each.test().value());
    }

    /**
     * The unit of a test after which something can be mended: it is over, the unit did not pass it, and no other test followed it.
     *
     * @throws RefusedException if it is not so
     */
    public String requireMendable(TestId test) throws RefusedException, StoreException, FaultyRecordException {
        String unit = requireNotPassed(test, Long.MAX_VALUE);
        List<Opening> all = of(unit);
        Opening mended = all.stream().filter(each -> each.test().equals(test)).findFirst().orElseThrow();
        Optional<Opening> last = all.stream().filter(each -> each.follows(mended)).reduce((earlier, later) -> later);
        if (last.isPresent()) {
            throw new RefusedException(Message.REPAIR_RETESTED.text(test.value(), last.get().test().value()));
        }
        return unit;
    }

    /**
     * The unit of a test that is over and that the unit did not pass.
     *
     * @param before only what stands before that place of the ledger counts
     * @throws RefusedException if it is not so
     */
    String requireNotPassed(TestId test, long before) throws RefusedException, StoreException, FaultyRecordException {
        List<LedgerEntry> entries = entries(test).stream().filter(entry -> entry.position() < before).toList();
        if (entries.isEmpty()) {
            throw new RefusedException(Message.RETURN_NO_TEST.text(test.value()));
        }
        KeptTest kept = new KeptTests().derive(ledger, test, entries);
        if (kept.run().rehearsal()) {
            throw new RefusedException(Message.REPAIR_REHEARSAL.text(test.value()));
        }
        if (entries.stream().noneMatch(entry -> entry.kind().equals(EventKinds.SEALED))) {
            throw new RefusedException(Message.REPAIR_OPEN.text(test.value()));
        }
        if (kept.passed()) {
            throw new RefusedException(Message.REPAIR_ACCEPTED.text(test.value()));
        }
        return kept.run().opening().serial();
    }

    /** Whether a test is here and sealed. */
    boolean sealed(TestId test) throws StoreException {
        return LedgerWork.of(() -> ledger.sealed(test));
    }

    private List<LedgerEntry> entries(TestId test) throws StoreException {
        return LedgerWork.of(() -> ledger.entries(test));
    }
}
