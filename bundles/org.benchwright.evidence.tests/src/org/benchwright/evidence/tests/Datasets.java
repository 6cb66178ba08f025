package org.benchwright.evidence.tests;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Reference data of several tests; where those kept in files come from is in data/ORIGIN.md. */
final class Datasets {

    /**
     * Weeks in remission, 6-MP: Freireich 1963 in Gehan's form, as the Python package lifelines holds it; + marks those still well when last
     * seen.
     */
    static final String TREATED = "6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+";

    /** Millions of revolutions that ball bearings lasted, Lieblein and Zelen 1956 (from memory). */
    static final String BEARINGS = "17.88 28.92 33.00 41.52 42.12 45.60 48.48 51.84 51.96 54.12 55.56 67.80 68.64 68.64 68.88 84.12 93.12 98.64 "
            + "105.12 105.84 127.92 128.04 173.40";

    /** Minutes to the breakdown of an insulating fluid at 34 kV, as tests of the R package survival hold them (verified). */
    static final String FLUID_AT_34_KV = "0.19 .78 .96 1.31 2.78 3.16 4.15 4.67 4.85 6.50 7.35 8.01 8.27 12.06 31.75 32.52 33.91 36.71 72.89";

    /** Flow rates of ten batches, NIST/SEMATECH e-Handbook 6.3.2.2 (from memory). */
    static final List<Double> BATCHES = List.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);

    private Datasets() {
    }

    /** A set with one reading to a line, after the last line of dashes. */
    static List<Double> readings(String set) throws IOException {
        List<String> lines = lines(set);
        int dashes = 0;
        for (int i = 0; i < lines.size(); i++) {
            dashes = lines.get(i).matches("-{5,}") ? i : dashes;
        }
        return lines.subList(dashes + 1, lines.size()).stream().filter(line -> !line.isEmpty()).map(Double::valueOf)
                .toList();
    }

    /** A set with one group to a column, after the line that numbers the columns. */
    static List<List<Double>> columns(String set) throws IOException {
        List<String> lines = lines(set);
        int heading = 0;
        for (int i = 0; i < lines.size(); i++) {
            heading = lines.get(i).matches("1(\\s+\\d)+") ? i : heading;
        }
        List<List<Double>> columns = new ArrayList<>();
        for (String line : lines.subList(heading + 1, lines.size())) {
            List<Double> row = line.isEmpty() ? List.of() : Arrays.stream(line.split("\\s+")).map(Double::valueOf).toList();
            for (int i = 0; i < row.size(); i++) {
                if (columns.size() == i) {
                    columns.add(new ArrayList<>());
                }
                columns.get(i).add(row.get(i));
            }
        }
        return columns;
    }

    private static List<String> lines(String set) throws IOException {
        try (InputStream file = Datasets.class.getResourceAsStream("data/" + set + ".dat")) {
            return new String(file.readAllBytes(), StandardCharsets.US_ASCII).lines().map(String::strip).toList();
        }
    }
}
