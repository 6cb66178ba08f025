package org.benchwright.core;

import java.text.MessageFormat;
import java.util.Arrays;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.Set;

/**
 * A file of texts that people read. Each text has a key and is a {@link MessageFormat} pattern; numbers in it look the same in every
 * language. Immutable.
 */
public final class Texts {

    private static final ResourceBundle.Control NO_FALLBACK = ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private final Class<?> owner;
    private final String file;
    private final Optional<Locale> language;

    private Texts(Class<?> owner, String file, Optional<Locale> language) {
        this.owner = owner;
        this.file = file;
        this.language = language;
    }

    /**
     * Texts in the language of the machine, or in English where there are none; looked up whenever one is shown, so that the first
     * language that was asked for does not win.
     *
     * @param owner a class of the bundle and package in which the file lies
     * @param file  the file's name, without ending
     */
    public static Texts beside(Class<?> owner, String file) {
        return new Texts(owner, file, Optional.empty());
    }

    /** Texts that must come out the same on every machine, because they are kept or derived again. Parameters as in {@link #beside}. */
    public static Texts fixed(Class<?> owner, String file) {
        return new Texts(owner, file, Optional.of(Locale.ROOT));
    }

    /**
     * The pattern under a key.
     *
     * @throws MissingResourceException if there is none
     */
    public String pattern(String key) {
        return bundle().getString(key);
    }

    /** The pattern under a key, if there is one. */
    public Optional<String> find(String key) {
        ResourceBundle bundle = bundle();
        return bundle.containsKey(key) ? Optional.of(bundle.getString(key)) : Optional.empty();
    }

    /** The keys of all texts. */
    public Set<String> keys() {
        return bundle().keySet();
    }

    private ResourceBundle bundle() {
        return ResourceBundle.getBundle(owner.getPackageName() + "." + file, language.orElseGet(Locale::getDefault), owner.getClassLoader(), NO_FALLBACK);
    }

    /**
     * The text under a key.
     *
     * @param arguments what {0}, {1} ... stand for: texts, and numbers where the words depend on how many there are
     * @throws MissingResourceException if there is none
     */
    public String text(String key, Object... arguments) {
        return new MessageFormat(pattern(key), Locale.ROOT).format(arguments);
    }

    /** The text under a key, with the arguments exactly as they print: no marks between thousands, nothing rounded. */
    public String plain(String key, Object... arguments) {
        return text(key, Arrays.stream(arguments).map(String::valueOf).toArray());
    }
}
