package org.benchwright.present;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The pages of the manual that come with the program: the same as in its {@code docs} folder, opened by window and terminal alike. */
public enum HelpPage {
    /** What there is, for whom. */
    README(""),
    /** A new family and its procedure. */
    TEST_ENGINEER("tutorials/"),
    /** Receiving, walking through, soak and seal. */
    TECHNICIAN("tutorials/"),
    /** Deciding, verifying, proving. */
    AUDITOR("tutorials/"),
    /** Figures, instruments, watch and backup. */
    BENCH_OWNER("tutorials/"),
    /** All keys of the window, and what stands in which view. */
    WINDOW(""),
    /** The guide to the procedure language. */
    LANGUAGE(""),
    /** Every construct of the language. */
    LANGUAGE_REFERENCE(""),
    /** What the analysis of a procedure says. */
    WHAT_IT_PROVES(""),
    /** Files of answers for rehearsals. */
    ANSWERS(""),
    /** Unattended observation. */
    WATCH(""),
    /** What is behind the numbers. */
    MATHEMATICS(""),
    /** Proofs for people without the ledger. */
    PROOFS(""),
    /** What is written for spreadsheets and programs. */
    EXPORTS(""),
    /** What a record is, byte by byte. */
    RECORD_FORMAT(""),
    /** What tampering is found. */
    THREATS(""),
    /** One bench, many benches, backup, upgrade. */
    DEPLOYMENT(""),
    /** What was measured of speed. */
    PERFORMANCE(""),
    /** What was measured of reliability. */
    RELIABILITY("");

    private static final Pattern COMMENT = Pattern.compile("<!--.*?-->\\n*", Pattern.DOTALL);

    private final String folder;

    HelpPage(String folder) {
        this.folder = folder;
    }

    /** The page of a word, in any letter case. */
    public static Optional<HelpPage> of(String word) {
        return Stream.of(values()).filter(page -> page.word().equalsIgnoreCase(word)).findFirst();
    }

    /** What it is asked for by, such as {@code bench-owner}. */
    public String word() {
        return this == README ? "contents" : fileWord();
    }

    private String fileWord() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Its place below the folder {@code docs}, with a slash between folders. */
    public String path() {
        return folder + (this == README ? name() : fileWord()) + ".md";
    }

    /** Its heading. */
    public String title() {
        return text().lines().findFirst().orElseThrow().substring(2);
    }

    /** Its text in Markdown, without what only tests read. */
    public String text() {
        String page = ManualFile.text("docs/" + path()).orElseThrow(() -> new IllegalStateException("no page " + path()));
        return COMMENT.matcher(page).replaceAll("");
    }
}
