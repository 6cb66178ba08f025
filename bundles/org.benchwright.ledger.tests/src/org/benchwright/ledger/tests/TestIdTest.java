package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.security.SecureRandom;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.benchwright.ledger.TestId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TestIdTest {

    @Test
    void hasNoLettersThatAreMistakenForOthersAndDoesNotRepeat() {
        Set<TestId> ids = new HashSet<>();
        SecureRandom random = new SecureRandom();
        for (int i = 0; i < 2000; i++) {
            TestId id = TestId.create(random);
            assertTrue(id.value().matches("T-[2-9A-HJKMNP-TV-Z]{5}-[2-9A-HJKMNP-TV-Z]{5}"), id.value());
            ids.add(id);
        }
        assertEquals(2000, ids.size());
    }

    @Test
    void forgivesBlanksAndSmallLettersWhenTyped() {
        assertEquals(Optional.of(new TestId("T-4K7M2-QXD9R")), TestId.parse("  t-4k7m2-qxd9r "));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "T-4K7M2", "T-4K7M2-QXD9O", "T-4K7M2-QXD9R\n-", "4K7M2-QXD9R", "../T-4K7M2-QXD9R"})
    void refusesOtherTexts(String text) {
        assertEquals(Optional.empty(), TestId.parse(text));
        assertThrows(IllegalArgumentException.class, () -> new TestId(text));
    }
}
