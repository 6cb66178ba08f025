package org.benchwright.engine.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What has happened in an {@link ObviousModel}, as a list to look through. */
final class ModelLog {

    /** One line. */
    record Line(String what, String about, Duration age, int sitting) {
    }

    private final List<Line> lines = new ArrayList<>();

    void add(String what, String about, Duration age, int sitting) {
        lines.add(new Line(what, about, age, sitting));
    }

    int count(String what, String about) {
        return (int) lines.stream().filter(l -> l.what().equals(what) && l.about().equals(about)).count();
    }

    Optional<Line> last(String what) {
        return lines.stream().filter(l -> l.what().equals(what)).reduce((a, b) -> b);
    }

    Optional<Line> last(String what, String about) {
        return lines.stream().filter(l -> l.what().equals(what) && l.about().equals(about)).reduce((a, b) -> b);
    }

    /** The last line of that kind, if none of {@code since} comes after it. */
    Optional<Line> lastSince(String what, String about, Set<String> since) {
        int from = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (since.contains(lines.get(i).what())) {
                from = i;
            }
        }
        return lines.subList(from, lines.size()).stream().filter(l -> l.what().equals(what) && l.about().equals(about))
                .reduce((a, b) -> b);
    }
}
