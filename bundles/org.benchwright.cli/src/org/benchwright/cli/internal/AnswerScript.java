package org.benchwright.cli.internal;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Takes answers out of a file: for a key that is asked again, its next line, and its last line from then on. A line that names the key
 * goes before a line with a wildcard; of those, the one that spells out more.
 */
public final class AnswerScript {

    private final List<AnswersFile.Line> lines;
    private final Map<String, Integer> asked;
    private final Set<Integer> used = new HashSet<>();

    /**
     * @param file     the answers
     * @param answered how often each key was answered already, before an interruption
     */
    public AnswerScript(AnswersFile file, Map<String, Integer> answered) {
        this.lines = file.answers();
        this.asked = new HashMap<>();
        answered.forEach((key, times) -> {
            for (int i = 0; i < times; i++) {
                next(key);
            }
        });
    }

    /** The answer to a key; empty if the file has none. */
    public Optional<AnswersFile.Line> next(String key) {
        List<AnswersFile.Line> fitting = fitting(key);
        if (fitting.isEmpty()) {
            return Optional.empty();
        }
        int times = asked.merge(key, 1, Integer::sum);
        AnswersFile.Line line = fitting.get(Math.min(times, fitting.size()) - 1);
        used.add(line.number());
        return Optional.of(line);
    }

    private List<AnswersFile.Line> fitting(String key) {
        List<AnswersFile.Line> exact = lines.stream().filter(line -> line.key().equals(key)).toList();
        if (!exact.isEmpty()) {
            return exact;
        }
        Optional<String> best = lines.stream().filter(line -> line.wildcard() && line.fits(key))
                .max(Comparator.comparingInt(AnswersFile.Line::literal)).map(AnswersFile.Line::key);
        return best.map(pattern -> lines.stream().filter(line -> line.key().equals(pattern)).toList()).orElse(List.of());
    }

    /** The keys of lines that were never needed, with their line numbers. */
    public List<String> unused() {
        return lines.stream().filter(line -> !used.contains(line.number()))
                .collect(Collectors.toMap(AnswersFile.Line::key, line -> String.valueOf(line.number()), (a, b) -> a + ", " + b,
                        LinkedHashMap::new))
                .entrySet().stream().map(entry -> Message.ANSWERS_UNUSED.text(entry.getKey(), entry.getValue())).toList();
    }
}
