package org.benchwright.ledger;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.regex.Pattern;

/**
 * Names one test, on paper and aloud: {@code T-4K7M2-QXD9R}. Its letters and digits leave out those that are mistaken for one another
 * (0 and O, 1, I and L, U and V by ear). Ten of thirty symbols: about 49 bits.
 *
 * <p>A few names are no tests but the books that a ledger keeps beside its tests, one chain of signed events each: {@link #PEOPLE},
 * {@link #REVISIONS}, {@link #RECEIPTS} and {@link #INSTRUMENTS}.
 *
 * @param value the text, in capitals
 */
public record TestId(String value) implements Comparable<TestId> {

    private static final String TEST = "T-";
    private static final String SYMBOLS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";
    private static final Pattern BOOK = Pattern.compile("B-(PEOPLE|REVISIONS|RECEIPTS|INSTRUMENTS)");
    private static final int GROUP = 5;
    private static final int LENGTH = TEST.length() + GROUP + 1 + GROUP;

    /** The book of people: who they are, what they may do, which keys are theirs. */
    public static final TestId PEOPLE = new TestId("B-PEOPLE");
    /** The book of revisions: which were prepared, approved and withdrawn. */
    public static final TestId REVISIONS = new TestId("B-REVISIONS");
    /** The book of receipts: which units came in, in which condition, and what was replaced in them. */
    public static final TestId RECEIPTS = new TestId("B-RECEIPTS");
    /** The book of instruments: what they read or give, how accurately, and until when they are calibrated. */
    public static final TestId INSTRUMENTS = new TestId("B-INSTRUMENTS");

    /** All books, in the order of their names here. */
    public static final List<TestId> BOOKS = List.of(PEOPLE, REVISIONS, RECEIPTS, INSTRUMENTS);

    /**
     * @throws IllegalArgumentException when the text has not the shape of a test id
     */
    public TestId {
        Objects.requireNonNull(value);
        if (!isShape(value) && !BOOK.matcher(value).matches()) {
            throw new IllegalArgumentException("not a test id: " + value);
        }
    }

    /** A new id out of {@code random}, which should be unpredictable (a {@link java.security.SecureRandom}) outside of tests. */
    public static TestId create(RandomGenerator random) {
        StringBuilder text = new StringBuilder(TEST);
        appendGroup(text, random);
        text.append('-');
        appendGroup(text, random);
        return new TestId(text.toString());
    }

    private static void appendGroup(StringBuilder text, RandomGenerator random) {
        for (int i = 0; i < GROUP; i++) {
            text.append(SYMBOLS.charAt(random.nextInt(SYMBOLS.length())));
        }
    }

    /** Whether this names a test, and not one of the books. */
    public boolean isTest() {
        return value.startsWith(TEST);
    }

    /** Two groups of five symbols. */
    private static boolean isShape(String text) {
        if (text.length() != LENGTH || !text.startsWith(TEST) || text.charAt(TEST.length() + GROUP) != '-') {
            return false;
        }
        for (int i = TEST.length(); i < LENGTH; i++) {
            if (i != TEST.length() + GROUP && SYMBOLS.indexOf(text.charAt(i)) < 0) {
                return false;
            }
        }
        return true;
    }

    /** The test or book of that exact name. */
    public static Optional<TestId> stored(String text) {
        return isShape(text) || BOOK.matcher(text).matches() ? Optional.of(new TestId(text)) : Optional.empty();
    }

    /** The id of a test that a person typed: blanks around it and small letters are forgiven, nothing else. */
    public static Optional<TestId> parse(String typed) {
        String text = typed.strip().toUpperCase(Locale.ROOT);
        return isShape(text) ? Optional.of(new TestId(text)) : Optional.empty();
    }

    @Override
    public int compareTo(TestId other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
