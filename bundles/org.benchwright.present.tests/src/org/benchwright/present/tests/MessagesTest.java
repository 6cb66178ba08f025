package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.present.internal.Message;
import org.junit.jupiter.api.Test;

/** Every text is there, can be put together, and is used. */
class MessagesTest {

    @Test
    void everyTextIsThere() {
        String[] arguments = {"A", "B", "C", "D", "E"};
        for (Message message : Message.values()) {
            assertFalse(message.text(arguments).isEmpty(), message.name());
            assertFalse(message.text(arguments).contains("{"), message.name());
        }
    }

    @Test
    void noTextIsLeftOver() {
        ResourceBundle bundle = ResourceBundle.getBundle("org.benchwright.present.internal.messages", java.util.Locale.ROOT,
                Message.class.getClassLoader());
        Set<String> names = Arrays.stream(Message.values()).map(Enum::name).collect(Collectors.toSet());
        assertEquals(names, bundle.keySet());
    }
}
