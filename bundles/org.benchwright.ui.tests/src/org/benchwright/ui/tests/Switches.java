package org.benchwright.ui.tests;

import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** What switches of one kind took in the window's thread. All times in ms. */
final class Switches {

    private final String kind;
    private final List<Taken> all = new ArrayList<>();

    /** Something that is switched to; over when it has been drawn. */
    @FunctionalInterface
    interface Switching {
        void run() throws Exception;
    }

    /**
     * One switch.
     *
     * @param what      what was switched to
     * @param clock     by the clock
     * @param processor of the processor, in the window's thread
     * @param collected of the clock's time, collecting garbage
     */
    private record Taken(String kind, String what, double clock, double processor, long collected) {

        String line() {
            return String.format(Locale.ROOT, "  %-62s %9.1f %9.1f %9d%n", kind + ": " + what, clock, processor, collected);
        }
    }

    /** @param kind what the switches have in common */
    Switches(String kind) {
        this.kind = kind;
    }

    void take(String what, Switching switching) throws Exception {
        long begin = System.nanoTime();
        long busy = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        long collected = collecting();
        switching.run();
        all.add(new Taken(kind, what, (System.nanoTime() - begin) / 1e6, (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - busy) / 1e6,
                collecting() - collected));
    }

    private static long collecting() {
        return ManagementFactory.getGarbageCollectorMXBeans().stream().mapToLong(GarbageCollectorMXBean::getCollectionTime).sum();
    }

    double most() {
        return at(Taken::clock, 1);
    }

    static String heading() {
        return String.format(Locale.ROOT, "%-34s %29s %19s%n%-34s %9s %9s %9s %9s %9s %9s%n", "", "by the clock", "of the processor", "", "median", "95 %", "most",
                "median", "most", "count");
    }

    String line() {
        return String.format(Locale.ROOT, "%-34s %9.1f %9.1f %9.1f %9.1f %9.1f %9d%n", kind, at(Taken::clock, 0.5), at(Taken::clock, 0.95), most(),
                at(Taken::processor, 0.5), at(Taken::processor, 1), all.size());
    }

    /** The longest of all kinds, so that whoever mends knows which they were. */
    static String longest(int count, Switches... kinds) {
        StringBuilder lines = new StringBuilder(String.format(Locale.ROOT, "the longest %-52s %9s %9s %9s%n", "", "clock", "processor", "garbage"));
        Stream.of(kinds).flatMap(each -> each.all.stream()).sorted(Comparator.comparingDouble(Taken::clock).reversed()).limit(count)
                .forEach(taken -> lines.append(taken.line()));
        return lines.toString();
    }

    private double at(ToDoubleFunction<Taken> time, double part) {
        double[] sorted = all.stream().mapToDouble(time).sorted().toArray();
        return sorted[(int) Math.min(sorted.length - 1, Math.round(part * (sorted.length - 1)))];
    }
}
