package org.benchwright.language.internal.editing;

import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;

/** What each word of the language means, in a few words. */
final class KeywordMeanings {

    private static final String BUNDLE = "org.benchwright.language.internal.editing.keywords";

    private KeywordMeanings() {
    }

    /** The meaning of a word; empty for braces and the like. */
    static Optional<String> of(String keyword) {
        ResourceBundle meanings = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), KeywordMeanings.class.getClassLoader());
        return meanings.containsKey(keyword) ? Optional.of(meanings.getString(keyword)) : Optional.empty();
    }

    /** What several words mean together: what the last of them says, mostly. */
    static String ofPhrase(String phrase) {
        return of(phrase.substring(phrase.lastIndexOf(' ') + 1)).orElse("");
    }
}
