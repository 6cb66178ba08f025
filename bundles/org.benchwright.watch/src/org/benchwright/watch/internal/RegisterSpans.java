package org.benchwright.watch.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.benchwright.core.PointAddress;
import org.benchwright.core.PointAddress.Table;

/** Points as spans of addresses, each to be read by one request. Only what touches is read together: addresses between may not exist. */
final class RegisterSpans {

    private static final int MOST_REGISTERS = 125;
    private static final int MOST_BITS = 2000;

    private RegisterSpans() {
    }

    /** Addresses of one table, one after the other. */
    record Span(Table table, int first, int count, List<PointAddress.Register> points) {
    }

    static List<Span> of(List<PointAddress.Register> points) {
        List<PointAddress.Register> sorted = points.stream().distinct()
                .sorted(Comparator.comparing(PointAddress.Register::table).thenComparingInt(PointAddress.Register::number)).toList();
        List<Span> spans = new ArrayList<>();
        for (PointAddress.Register point : sorted) {
            Span last = spans.isEmpty() ? null : spans.get(spans.size() - 1);
            int end = point.number() + point.form().registers();
            if (last != null && last.table() == point.table() && point.number() <= last.first() + last.count()
                    && Math.max(end, last.first() + last.count()) - last.first() <= (point.table().bits() ? MOST_BITS : MOST_REGISTERS)) {
                List<PointAddress.Register> more = new ArrayList<>(last.points());
                more.add(point);
                spans.set(spans.size() - 1, new Span(last.table(), last.first(), Math.max(end, last.first() + last.count()) - last.first(), more));
            } else {
                spans.add(new Span(point.table(), point.number(), point.form().registers(), List.of(point)));
            }
        }
        return List.copyOf(spans);
    }
}
