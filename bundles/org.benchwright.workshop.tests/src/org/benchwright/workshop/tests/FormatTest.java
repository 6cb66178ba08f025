package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.revision.RevisionFact;
import org.benchwright.workshop.internal.TypeNames;
import org.junit.jupiter.api.Test;

/**
 * The ledger's format of events and plans is what {@code format-1.txt} says: records written by any release are read forever. A change of
 * a class, field or constant that changes the format fails here. Then take the change back, or give the format a new number and keep
 * reading the old one.
 */
class FormatTest {

    @Test
    void theFormatIsTheOneThatWasPinned() throws IOException {
        List<String> pinned = pinned().lines().toList();
        List<String> found = describe();
        assertEquals(List.of(), without(found, pinned), "in the classes, but not in format-1.txt");
        assertEquals(List.of(), without(pinned, found), "in format-1.txt, but not in the classes");
    }

    /** Whoever reads a ledger without this program finds every kind of event there. */
    @Test
    void thePageForStrangersTellsOfEveryKind() throws IOException {
        String page = Files.readString(Path.of("../../docs/record-format.md"));
        assertEquals(List.of(), Stream.of(TypeNames.events(), TypeNames.revisions(), TypeNames.records(), TypeNames.receipts(), TypeNames.instruments())
                .flatMap(names -> names.table().keySet().stream()).distinct().sorted().filter(kind -> !page.contains("`" + kind + "`")).toList());
    }

    private static List<String> without(List<String> lines, List<String> others) {
        return lines.stream().filter(line -> !others.contains(line)).toList();
    }

    private static List<String> describe() {
        Stream<String> kinds = names("kind", TypeNames.events());
        Stream<String> signed = Stream.concat(names("kind", TypeNames.revisions()), names("kind", TypeNames.records()));
        Stream<String> received = Stream.concat(names("kind", TypeNames.receipts()), names("kind", TypeNames.instruments()));
        Stream<String> variants = names("type", TypeNames.plan());
        Stream<String> types = Stream.of(EventBody.class, Plan.class, RevisionFact.class, RecordFact.class, ReceiptFact.class, InstrumentFact.class).flatMap(type -> Reach.from(type).stream()).distinct()
                .sorted(Comparator.comparing(FormatTest::name)).map(FormatTest::describe);
        return Stream.of(kinds, signed, received, variants, types).flatMap(lines -> lines).toList();
    }

    private static Stream<String> names(String what, TypeNames names) {
        return new TreeMap<>(names.table()).entrySet().stream().map(entry -> what + " " + entry.getKey() + " = " + name(entry.getValue()));
    }

    private static String describe(Class<?> type) {
        if (type.isEnum()) {
            return "words " + name(type) + ": "
                    + Arrays.stream(type.getEnumConstants()).map(c -> ((Enum<?>) c).name()).collect(Collectors.joining(" "));
        } else if (type.isSealed()) {
            return "one of " + name(type) + ": " + Reach.leaves(type).stream().map(FormatTest::name).sorted().collect(Collectors.joining(" "));
        }
        return "record " + name(type) + ": " + Arrays.stream(type.getRecordComponents()).map(FormatTest::describe)
                .collect(Collectors.joining(", "));
    }

    private static String describe(RecordComponent component) {
        String type = component.getGenericType().getTypeName().replaceAll("[a-z]+\\.", "").replace('$', '.');
        return component.getName() + " " + type;
    }

    private static String name(Class<?> type) {
        return type.getName().replaceAll("^.*\\.", "").replace('$', '.');
    }

    private static String pinned() throws IOException {
        try (InputStream in = FormatTest.class.getResourceAsStream("format-1.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
