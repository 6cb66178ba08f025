package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

import org.benchwright.cli.Surroundings;
import org.benchwright.language.FamilyChoice;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;

import picocli.CommandLine.ParseResult;

/**
 * What a command was given; paths are taken from the working folder.
 *
 * @param around everything around the command
 * @param parsed its arguments
 */
record Given(Surroundings around, ParseResult parsed) {

    /** A year of four digits: other ones are typing errors, and reach farther than instants do. */
    private static final DateTimeFormatter DAY = new DateTimeFormatterBuilder().appendValue(ChronoField.YEAR, 4).appendPattern("-MM-dd")
            .toFormatter(Locale.ROOT).withResolverStyle(ResolverStyle.STRICT);

    /** The ledger that was named, else the bench's own. */
    Path ledger() {
        return path("--ledger").map(Bench::itself).orElseGet(Bench::standardLedger);
    }

    /**
     * The same, for whatever makes no ledger: one that was named has to be there. The bench's own may not be there yet.
     *
     * @throws CannotStoreException when it is not there, or is an empty file
     */
    Path ledgerToRead() throws CannotStoreException {
        if (has("--ledger") && !Files.exists(ledger())) {
            throw new CannotStoreException(Message.NO_LEDGER.text(ledger().toString()),
                    new NoSuchFileException(ledger().toString()));
        }
        if (has("--ledger") && isEmpty(ledger())) {
            throw new CannotStoreException(Message.EMPTY_LEDGER.text(ledger().toString()), new NoSuchFileException(ledger().toString()));
        }
        return ledger();
    }

    /** An empty file would be taken for a ledger that nothing was written into yet. */
    private static boolean isEmpty(Path file) throws CannotStoreException {
        try {
            return Files.isRegularFile(file) && Files.size(file) == 0;
        } catch (IOException e) {
            throw new CannotStoreException(Message.NO_LEDGER.text(file.toString()), e);
        }
    }

    /** What has another command take the same ledger, as it was typed and with a blank before it; nothing where none was named. */
    String sameLedger() {
        return again("--ledger");
    }

    /** An option as it was typed, with a blank before it; nothing where it was left out. */
    String again(String option) {
        Object value = parsed.matchedOptionValue(option, null);
        return value == null ? "" : " " + option + " " + quoted(value.toString());
    }

    /** The file that stands without an option, as it was typed. */
    String fileAgain() {
        return quoted(parsed.<Path>matchedPositionalValue(0, null).toString());
    }

    private static String quoted(String word) {
        return word.chars().anyMatch(Character::isWhitespace) ? '"' + word + '"' : word;
    }

    /** Whether no ledger was named and the bench has none of its own yet. */
    boolean onFreshBench() {
        return !has("--ledger") && !Files.exists(ledger());
    }

    /** The initials that were given, else those of whoever is signed in on this machine. */
    String technician() {
        return text("--technician").orElseGet(around::user);
    }

    /** The bench's name that was given, else the machine's. */
    String station() {
        return text("--station").orElseGet(around::machine);
    }

    /** Who works on that unit, where. */
    Bench.Work work(String serial, boolean rehearsal) {
        return new Bench.Work(serial, technician(), station(), around.software(), rehearsal);
    }

    /**
     * The family that was named for a procedure.
     *
     * @param otherwise what chooses it where none was
     */
    FamilyChoice family(FamilyChoice otherwise) {
        return text("--family").<FamilyChoice>map(FamilyChoice.Called::new).orElse(otherwise);
    }

    Optional<Path> path(String option) {
        return Optional.ofNullable(parsed.<Path>matchedOptionValue(option, null)).map(this::resolved);
    }

    List<Path> paths(String option) {
        Path[] none = {};
        return List.of(parsed.matchedOptionValue(option, none)).stream().map(this::resolved).toList();
    }

    Optional<String> text(String option) {
        return Optional.ofNullable(parsed.<String>matchedOptionValue(option, null));
    }

    /**
     * The day that an option names.
     *
     * @throws EntryRefusedException if it is none, or in a year that no calendar on a wall has
     */
    Optional<LocalDate> day(String option) throws EntryRefusedException {
        Optional<String> text = text(option);
        try {
            return text.map(typed -> LocalDate.parse(typed, DAY));
        } catch (DateTimeException e) {
            throw new EntryRefusedException(Message.FIGURES_NO_DAY.text(text.orElse("")), e);
        }
    }

    List<String> texts(String option) {
        String[] none = {};
        return List.of(parsed.matchedOptionValue(option, none));
    }

    OptionalLong number(String option) {
        return has(option) ? OptionalLong.of(parsed.<Long>matchedOptionValue(option, 0L)) : OptionalLong.empty();
    }

    boolean has(String option) {
        return parsed.hasMatchedOption(option);
    }

    /** The files that stand without an option. */
    List<Path> files() {
        Path[] none = {};
        return List.of(parsed.matchedPositionalValue(0, none)).stream().map(this::resolved).toList();
    }

    /** The one file that stands without an option. */
    Optional<Path> file() {
        return Optional.ofNullable(parsed.<Path>matchedPositionalValue(0, null)).map(this::resolved);
    }

    /** The word that stands without an option. */
    Optional<String> word() {
        return Optional.ofNullable(parsed.<String>matchedPositionalValue(0, null));
    }

    /** The second word that stands without an option. */
    Optional<String> second() {
        return Optional.ofNullable(parsed.<String>matchedPositionalValue(1, null));
    }

    /** The words that stand without an option. */
    List<String> words() {
        String[] none = {};
        return List.of(parsed.matchedPositionalValue(0, none));
    }

    private Path resolved(Path path) {
        return around.workingFolder().resolve(path);
    }
}
