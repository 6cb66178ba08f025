package org.benchwright.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** How many units failed at each time, and how many were at risk just before: one sorted pass. */
record RiskTable(List<Row> rows) {

    /** A time with failures. */
    record Row(double time, int atRisk, int failed) {
    }

    static RiskTable of(List<Lifetime> lifetimes) {
        List<Lifetime> sorted = new ArrayList<>(lifetimes);
        sorted.sort(Comparator.comparingDouble(Lifetime::time));
        List<Row> rows = new ArrayList<>();
        int before = 0;
        while (before < sorted.size()) {
            double time = sorted.get(before).time();
            int after = before;
            int failed = 0;
            while (after < sorted.size() && sorted.get(after).time() == time) {
                failed += sorted.get(after).failed() ? 1 : 0;
                after++;
            }
            if (failed > 0) {
                rows.add(new Row(time, sorted.size() - before, failed));
            }
            before = after;
        }
        return new RiskTable(rows);
    }
}
