package org.benchwright.evidence.tests;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Reference data kept beside the tests; where they come from is in data/ORIGIN.md. */
final class Datasets {

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
