package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.present.internal.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every text is there, can be put together, and is used. */
class MessagesTest {

    @Test
    void everyTextIsThere() {
        Object[] arguments = {1, 2, 3, 4, 5, 6};
        for (Message message : Message.values()) {
            assertFalse(message.text(arguments).isEmpty(), message.name());
            assertFalse(message.text(arguments).contains("{"), message.name());
        }
    }

    @Test
    void wordsFollowTheirNumber() {
        assertEquals("Links: 0 events of 1 test, 2 documents, no fault", Message.LINE_LINKS.text(0, 1, 2, "no fault"));
        assertEquals("Links: 1 event of 2 tests, 1 document, 1 fault", Message.LINE_LINKS.text(1L, 2, 1, Message.FAULTS.text(1)));
        assertEquals("Signatures: 1 key, 12345 faults", Message.LINE_SIGNATURES.text(1, Message.FAULTS.text(12345)));
        assertEquals("Decisions: 0 of 1 test derived again, no fault", Message.LINE_DECISIONS.text(0, 1, "no fault"));
        assertEquals("1 more fault is not listed.", Message.FAULTS_LEFT_OUT.text(1));
        assertEquals("2 more faults are not listed.", Message.FAULTS_LEFT_OUT.text(2));
        assertTrue(Message.REFUSED_LOOK_PARTS.text(1).contains("and 1 reading, with"));
    }

    /** The words of figures and of what is proved are enums of their own beside {@link Message}. */
    @ParameterizedTest
    @CsvSource({"FigureWords, figures", "EvidenceWords, evidence", "HouseWords, house"})
    void noOtherTextIsLeftOverOrMissing(String words, String file) throws Exception {
        String place = Message.class.getPackageName();
        ResourceBundle bundle = ResourceBundle.getBundle(place + "." + file, java.util.Locale.ROOT, Message.class.getClassLoader());
        Set<String> names = Arrays.stream(Class.forName(place + "." + words, true, Message.class.getClassLoader()).getEnumConstants())
                .map(each -> ((Enum<?>) each).name()).collect(Collectors.toSet());
        assertEquals(names, bundle.keySet());
    }

    @Test
    void noTextIsLeftOver() {
        ResourceBundle bundle = ResourceBundle.getBundle("org.benchwright.present.internal.messages", java.util.Locale.ROOT,
                Message.class.getClassLoader());
        Set<String> names = Arrays.stream(Message.values()).map(Enum::name).collect(Collectors.toSet());
        assertEquals(names, bundle.keySet());
    }
}
