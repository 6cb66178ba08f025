package org.benchwright.present;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.Observed;
import org.benchwright.present.internal.Sheets;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.StoreException;

/** Comparing two tests of one unit. */
public final class Comparing {

    private static final int MOST_EARLIER = 1000;

    private Comparing() {
    }

    /**
     * The tests of the same unit before a test, the latest first, as each names the one before it.
     *
     * @throws CannotStoreException if the ledger can't be read, or a record is not sound
     */
    public static List<RecordRow> earlier(Path ledger, String test) throws CannotStoreException {
        return Asked.read(ledger, open -> {
            List<RecordRow> earlier = new ArrayList<>();
            Optional<KeptTest> at = open.test(test);
            while (at.isPresent() && earlier.size() < MOST_EARLIER) {
                Optional<String> before = at.get().run().opening().predecessor();
                at = before.isPresent() ? open.test(before.get()) : Optional.empty();
                at.ifPresent(found -> earlier.add(Sheets.row(found)));
            }
            return List.copyOf(earlier);
        });
    }

    /**
     * Two tests side by side, the earlier one first, whichever way round they are named.
     *
     * @throws EntryRefusedException if there is no such test, or they are of different units
     * @throws CannotStoreException  if the ledger can't be read, or a record is not sound
     */
    public static Comparison of(Path ledger, String one, String other) throws EntryRefusedException, CannotStoreException {
        return Asked.read(ledger, open -> {
            KeptTest first = test(open, one);
            KeptTest second = test(open, other);
            String serial = first.run().opening().serial();
            if (!serial.equals(second.run().opening().serial())) {
                throw new EntryRefusedException(Message.COMPARE_OTHER_UNIT.text(one, serial, other, second.run().opening().serial()));
            }
            // The ledger's order, since clocks can be set back.
            List<String> opened = open.tests();
            boolean inOrder = opened.indexOf(one) <= opened.indexOf(other);
            KeptTest then = inOrder ? first : second;
            KeptTest now = inOrder ? second : first;
            return new Comparison(Sheets.row(then), Sheets.row(now), Observed.compared(Observed.of(then), Observed.of(now)));
        });
    }

    private static KeptTest test(BenchLedger open, String id) throws EntryRefusedException, StoreException, FaultyRecordException {
        return open.test(id).orElseThrow(() -> new EntryRefusedException(Message.REFUSED_NO_TEST.text(id)));
    }
}
