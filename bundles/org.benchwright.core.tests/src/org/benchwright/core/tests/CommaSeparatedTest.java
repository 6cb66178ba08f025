package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.core.CommaSeparated;
import org.benchwright.testkit.PropertyTest;
import org.junit.jupiter.api.Test;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class CommaSeparatedTest implements PropertyTest {

    private static final List<List<String>> TWO_LINES = List.of(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));

    /** The examples of RFC 4180, section 2. */
    @Test
    void readsTheExamplesOfTheStandard() {
        assertEquals(TWO_LINES, CommaSeparated.read("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"));
        assertEquals(TWO_LINES, CommaSeparated.read("aaa,bbb,ccc\r\nzzz,yyy,xxx"));
        assertEquals(TWO_LINES, CommaSeparated.read("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"));
        assertEquals(List.of(List.of("aaa", "b\r\nbb", "ccc"), List.of("zzz", "yyy", "xxx")),
                CommaSeparated.read("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"));
        assertEquals(List.of(List.of("aaa", "b\"bb", "ccc")), CommaSeparated.read("\"aaa\",\"b\"\"bb\",\"ccc\""));
    }

    @Test
    void lineEndsOfAnyKindEndALineAndBlankOnesAreLeftOut() {
        assertEquals(TWO_LINES, CommaSeparated.read("aaa,bbb,ccc\nzzz,yyy,xxx\n"));
        assertEquals(TWO_LINES, CommaSeparated.read("\uFEFFaaa,bbb,ccc\r\r  \rzzz,yyy,xxx"));
        assertEquals(List.of(List.of("", "")), CommaSeparated.read(","));
        assertEquals(List.of(), CommaSeparated.read(""));
    }

    @Test
    void aQuoteInTheMidstOfACellIsACharacterAndAnOpenOneEndsWithTheText() {
        assertEquals(List.of(List.of("3\" disk", "x")), CommaSeparated.read("3\" disk,x"));
        assertEquals(List.of(List.of("a", "b,c\nd")), CommaSeparated.read("a,\"b,c\nd"));
    }

    @Provide
    Arbitrary<List<List<String>>> sheets() {
        Arbitrary<String> cell = Arbitraries.strings().withChars("ab ,;\"'\r\n=\u00e4").ofMaxLength(6);
        return cell.list().ofMinSize(2).ofMaxSize(4).list().ofMaxSize(5);
    }

    @Property
    void whatIsQuotedIsReadBack(@ForAll("sheets") List<List<String>> sheet) {
        String written = sheet.stream().map(line -> line.stream().map(cell -> '"' + cell.replace("\"", "\"\"") + '"').collect(Collectors.joining(",")))
                .collect(Collectors.joining("\r\n"));
        assertEquals(sheet, CommaSeparated.read(written));
    }
}
