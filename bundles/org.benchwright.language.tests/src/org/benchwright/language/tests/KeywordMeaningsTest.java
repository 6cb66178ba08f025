package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.benchwright.language.ide.ProcedureIdeSetup;
import org.benchwright.language.services.ProcedureGrammarAccess;
import org.eclipse.xtext.GrammarUtil;
import org.junit.jupiter.api.Test;

/** Every word of the language has a meaning that the editor can tell, and nothing else has. */
class KeywordMeaningsTest {

    @Test
    void everyWordHasAMeaning() throws Exception {
        ProcedureGrammarAccess grammar = new ProcedureIdeSetup().createInjectorAndDoEMFRegistration()
                .getInstance(ProcedureGrammarAccess.class);
        Set<String> words = GrammarUtil.getAllKeywords(grammar.getGrammar()).stream()
                .filter(word -> Character.isLetter(word.charAt(0)))
                .collect(Collectors.toCollection(TreeSet::new));
        Properties meanings = new Properties();
        meanings.load(ProcedureIdeSetup.class.getResourceAsStream("/org/benchwright/language/internal/editing/keywords.properties"));
        assertEquals(List.copyOf(words), List.copyOf(new TreeSet<>(meanings.stringPropertyNames())));
    }
}
