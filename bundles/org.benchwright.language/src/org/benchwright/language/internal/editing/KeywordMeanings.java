package org.benchwright.language.internal.editing;

import java.util.Optional;

import org.benchwright.core.Texts;

/** What each word of the language means, in a few words. */
final class KeywordMeanings {

    private static final Texts TEXTS = Texts.beside(KeywordMeanings.class, "keywords");

    private KeywordMeanings() {
    }

    /** The meaning of a word; empty for braces and the like. */
    static Optional<String> of(String keyword) {
        return TEXTS.find(keyword);
    }

    /** What several words mean together: what the last of them says, mostly. */
    static String ofPhrase(String phrase) {
        return of(phrase.substring(phrase.lastIndexOf(' ') + 1)).orElse("");
    }
}
