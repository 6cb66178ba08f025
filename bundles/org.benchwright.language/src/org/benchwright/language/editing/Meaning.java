package org.benchwright.language.editing;

/** What a passage of a text means to its reader; editors give each a colour. */
public enum Meaning {
    /** A word of the language. */
    KEYWORD,
    /** A name where it is declared. */
    DECLARATION,
    /** A name where it is referred to. */
    REFERENCE,
    /** A text in quotation marks, which the technician will read. */
    TEXT,
    /** A number, or a unit of measure. */
    AMOUNT,
    /** A colour of a lamp, or how it is lit. */
    INDICATION,
    /** A signal word: danger, warning, caution, notice. */
    SIGNAL,
    /** accepted, rejected, undecided. */
    VERDICT,
    /** What the engineer noted for engineers. */
    COMMENT,
    /** Braces, commas, and what fits nowhere. */
    PLAIN
}
