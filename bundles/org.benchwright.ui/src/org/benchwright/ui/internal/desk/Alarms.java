package org.benchwright.ui.internal.desk;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.benchwright.present.UnitRow;

/** Which units have begun to need somebody. What was so already when the window first looked stands in it, and calls nobody. */
final class Alarms {

    private final Set<String> standing = new HashSet<>();
    private boolean first = true;

    /** Those that need somebody now and did not when it was asked before. */
    synchronized List<UnitRow> risen(List<UnitRow> units) {
        List<UnitRow> now = units.stream().filter(UnitRow::alarm).toList();
        List<UnitRow> risen = first ? List.of() : now.stream().filter(unit -> !standing.contains(unit.test())).toList();
        first = false;
        standing.clear();
        now.forEach(unit -> standing.add(unit.test()));
        return risen;
    }
}
