package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

import org.benchwright.language.LanguageServices;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The parser looks ahead and never goes back: neither the one that reads nor the one that proposes backtracks or guesses.
 */
class GrammarTest {

    @ParameterizedTest
    @ValueSource(strings = { "/org/benchwright/language/parser/antlr/internal/InternalProcedure.g",
            "/org/benchwright/language/ide/contentassist/antlr/internal/InternalProcedure.g" })
    void theGeneratedGrammarNeitherBacktracksNorGuesses(String name) throws IOException {
        try (InputStream file = LanguageServices.class.getResourceAsStream(name)) {
            assertNotNull(file, name);
            String grammar = new String(file.readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(-1, grammar.indexOf("backtrack"));
            assertEquals(-1, grammar.indexOf("memoize"));
            assertFalse(grammar.contains(")=>"), "a syntactic predicate");
        }
    }
}
