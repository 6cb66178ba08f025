package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Properties;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.benchwright.core.internal.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MessageTest {

    @Test
    void keysAndTextsMatchOneToOne() throws IOException {
        Properties texts = new Properties();
        try (InputStream file = Message.class.getResourceAsStream("messages.properties")) {
            texts.load(file);
        }
        assertEquals(Arrays.stream(Message.values()).map(Message::name).collect(Collectors.toCollection(TreeSet::new)),
                new TreeSet<>(texts.stringPropertyNames()));
    }

    @ParameterizedTest
    @EnumSource(Message.class)
    void everyTextCanBeShown(Message message) {
        String shown = message.text("<0>", "<1>", "<2>");
        assertFalse(shown.isBlank());
        assertFalse(shown.contains("{") || shown.contains("''"), shown);
    }
}
