package org.benchwright.workshop.internal;

import java.math.BigDecimal;
import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.ledger.DocumentReference;

/**
 * Values that are written as one string. Numbers are strings too: a number of JSON is a binary double to most readers, and
 * {@code 23.90} would lose its digit. Each value has exactly one spelling, and reading refuses every other.
 */
final class Scalars {

    private record Form<T>(Function<T, String> writer, Function<String, T> reader) {
        String write(Object value) {
            @SuppressWarnings("unchecked") // the table below pairs each class with its own form
            T typed = (T) value;
            return writer.apply(typed);
        }
    }

    private static final Map<Class<?>, Form<?>> FORMS = Map.ofEntries(
            Map.entry(String.class, new Form<String>(text -> Normalizer.normalize(text, Normalizer.Form.NFC), text -> text)),
            Map.entry(int.class, new Form<Integer>(String::valueOf, Integer::valueOf)),
            Map.entry(long.class, new Form<Long>(String::valueOf, Long::valueOf)),
            Map.entry(BigDecimal.class, new Form<>(BigDecimal::toString, BigDecimal::new)),
            Map.entry(Duration.class, new Form<>(Duration::toString, Duration::parse)),
            Map.entry(Instant.class, new Form<>(Instant::toString, Instant::parse)),
            Map.entry(LocalDate.class, new Form<>(LocalDate::toString, LocalDate::parse)),
            Map.entry(UnitOfMeasure.class, new Form<>(UnitOfMeasure::word, UnitOfMeasure::of)),
            Map.entry(Quantity.class, new Form<>(Quantity::toString, Scalars::quantity)),
            Map.entry(Digest.class, new Form<>(DocumentReference::of, text -> DocumentReference.parse(text).orElseThrow(IllegalArgumentException::new))));

    private Scalars() {
    }

    static boolean knows(Class<?> type) {
        return FORMS.containsKey(type) || type.isEnum();
    }

    static String write(Object value, Class<?> type) {
        return type.isEnum() ? ((Enum<?>) value).name() : FORMS.get(type).write(value);
    }

    /** The value; empty if the text is not the spelling that {@link #write} gives. */
    static Optional<Object> read(String text, Class<?> type) {
        try {
            Object value = type.isEnum() ? constant(text, type) : FORMS.get(type).reader().apply(text);
            return write(value, type).equals(text) ? Optional.of(value) : Optional.empty();
        } catch (IllegalArgumentException | DateTimeException refused) {
            return Optional.empty();
        }
    }

    private static Object constant(String text, Class<?> type) {
        for (Object constant : type.getEnumConstants()) {
            if (((Enum<?>) constant).name().equals(text)) {
                return constant;
            }
        }
        throw new IllegalArgumentException(text);
    }

    private static Quantity quantity(String text) {
        int gap = text.lastIndexOf(' ');
        return Quantity.of(text.substring(0, Math.max(gap, 0)), text.substring(gap + 1));
    }
}
