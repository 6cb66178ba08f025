package org.benchwright.ledger.internal.verify;

import java.util.ArrayList;
import java.util.List;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.internal.Messages;

/** The faults found so far; a hostile file must not fill the memory with them. */
final class FaultList {

    private static final int MOST = 1000;

    private final List<Fault> faults = new ArrayList<>();
    private long leftOut;

    void add(Fault fault) {
        if (faults.size() < MOST) {
            faults.add(fault);
        } else {
            leftOut++;
        }
    }

    void addAll(List<Fault> more) {
        more.forEach(this::add);
    }

    void add(FaultKind kind, String key, Object... values) {
        add(Fault.ofLedger(kind, Messages.text(key, values)));
    }

    /** These and then those of {@code more}. */
    FaultList with(FaultList more) {
        FaultList both = new FaultList();
        both.addAll(faults);
        both.addAll(more.faults);
        both.leftOut += leftOut + more.leftOut;
        return both;
    }

    List<Fault> list() {
        return List.copyOf(faults);
    }

    long leftOut() {
        return leftOut;
    }
}
