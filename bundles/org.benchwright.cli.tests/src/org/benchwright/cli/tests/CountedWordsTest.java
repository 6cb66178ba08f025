package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.cli.BenchCommandLine;
import org.benchwright.present.Bench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One of something is told as one: no text has a number with words for many behind it, unless there are always many. */
class CountedWordsTest {

    /** A number, perhaps a word, and a word that ends as those for many do; behind the number inside a choice it is told by the choice. */
    private static final Pattern MANY = Pattern.compile("(?<![<#])\\{\\d(?:,number[^}]*)?\\} (?:[a-z]+ )?(?!is\\b|was\\b|has\\b|does\\b|this\\b|as\\b|its\\b)[a-z]+s\\b");

    /** Not a number, but what somebody or something does. */
    private static final Set<String> DOES = Set.of("ASK_NEW_PIN", "NOT_ON_TEST", "LEAVING", "CHANGE_AGAINST", "CHANGE_AGAINST_EARLIER", "IMPACT_ASKED", "IMPACT_OPEN", "SOAK_DAY",
            "FAMILY", "MODE_SHOWS", "NOT_ONE_PROCEDURE", "TIME_SKIPPED", "RECEIVE_CORRECTED", "SELF_CHECK_REHEARSAL", "DIFF_NO_PLAN", "PROVES_NO_PROCEDURE");
    /** Never said of fewer than two. */
    private static final Set<String> ALWAYS_MANY = Set.of("COLUMN_ENDED", "COLUMN_GAP", "COLUMN_QUESTIONED", "COLUMN_BLOCK", "REFUSED_TOO_LONG", "REVIEWS_PLANNED",
            "AGE_DAYS", "YIELD_BY_SAYS", "CAPACITY_SAYS", "REVIEW_ALL", "REVIEW_SAYS", "RETURNS_WITHIN", "RETURNS_TOO_EARLY", "SPREAD_MEANS", "SPREAD_RANGES",
            "SPREAD_SAYS", "READING_SAYS", "READING_LATEST", "READINGS", "PROVES_NOT_YET");

    static Stream<String> files() {
        return Stream.of("cli.internal.messages", "present.internal.messages", "present.internal.hands", "present.internal.house",
                "present.internal.figures", "present.internal.evidence", "present.internal.course", "present.internal.printed.words");
    }

    private static ResourceBundle texts(String file) {
        ClassLoader loader = (file.startsWith("cli.") ? BenchCommandLine.class : Bench.class).getClassLoader();
        return ResourceBundle.getBundle("org.benchwright." + file, Locale.ROOT, loader);
    }

    private static Stream<String> tellingMany(ResourceBundle texts) {
        return texts.keySet().stream().filter(key -> MANY.matcher(texts.getString(key)).find());
    }

    @ParameterizedTest
    @MethodSource("files")
    void followTheirNumber(String file) {
        ResourceBundle texts = texts(file);
        assertEquals(List.of(), tellingMany(texts).filter(key -> !DOES.contains(key) && !ALWAYS_MANY.contains(key)).sorted()
                .map(key -> key + ": " + texts.getString(key)).toList());
    }

    /** A text that was changed since, or is gone, would be passed over for ever. */
    @Test
    void onlyTextsThatNeedItArePassedOver() {
        Set<String> found = files().map(CountedWordsTest::texts).flatMap(CountedWordsTest::tellingMany).collect(Collectors.toSet());
        Set<String> inVain = new TreeSet<>(DOES);
        inVain.addAll(ALWAYS_MANY);
        inVain.removeAll(found);
        assertEquals(Set.of(), inVain);
    }
}
