package org.benchwright.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** How many units failed at each time, and how many were at risk just before. */
record RiskTable(List<Row> rows) {

    /** A time with failures. */
    record Row(double time, int atRisk, int failed) {
    }

    static Map<Lifetime, Long> counted(List<Lifetime> lifetimes) {
        Map<Lifetime, Long> counted = new HashMap<>();
        lifetimes.forEach(each -> counted.merge(each, 1L, Long::sum));
        return counted;
    }

    static RiskTable of(Map<Lifetime, Long> lifetimes) {
        // at each time those that failed and those that left
        TreeMap<Double, long[]> times = new TreeMap<>();
        lifetimes.forEach((each, units) -> times.computeIfAbsent(each.time(), any -> new long[2])[each.failed() ? 0 : 1] += units);
        long atRisk = lifetimes.values().stream().mapToLong(Long::longValue).sum();
        List<Row> rows = new ArrayList<>();
        for (Map.Entry<Double, long[]> time : times.entrySet()) {
            long failed = time.getValue()[0];
            if (failed > 0) {
                rows.add(new Row(time.getKey(), Math.toIntExact(atRisk), Math.toIntExact(failed)));
            }
            atRisk -= failed + time.getValue()[1];
        }
        return new RiskTable(rows);
    }
}
