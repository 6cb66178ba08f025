package org.benchwright.cli.internal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.SheetTable;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Comparing;
import org.benchwright.present.Comparison;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Impact;
import org.benchwright.present.RecordRow;

import picocli.CommandLine.Model.CommandSpec;

/** Records beside each other: two tests of one unit, and all tests that an instrument touches which read wrong. */
final class CompareCommands {

    private final Surroundings around;

    CompareCommands(Surroundings around) {
        this.around = around;
    }

    static CommandSpec compareSpec() {
        return files(Specs.command("compare", Message.HELP_COMPARE).addPositional(Specs.word("TEST", true, Message.HELP_PROVE_TEST))
                .addOption(Specs.text("--with", "TEST", Message.HELP_COMPARE_WITH)).addOption(Specs.flag("--all", Message.HELP_COMPARE_ALL)));
    }

    static CommandSpec impactSpec() {
        return files(Specs.command("impact", Message.HELP_IMPACT).addPositional(Specs.word("ASSET", true, Message.HELP_IMPACT_ASSET))
                .addOption(Specs.neededText("--reads", "WORDS", Message.HELP_IMPACT_READS)).addOption(Specs.neededText("--from", "DATE", Message.HELP_IMPACT_FROM))
                .addOption(Specs.neededText("--to", "DATE", Message.HELP_IMPACT_TO)).addOption(Specs.file("--sheet", "FILE", Message.HELP_IMPACT_SHEET)));
    }

    private static CommandSpec files(CommandSpec command) {
        return command.addOption(Specs.file("--csv", "FILE", Message.HELP_DEVIATIONS_CSV)).addOption(Specs.file("--json", "FILE", Message.HELP_DEVIATIONS_JSON))
                .addOption(Specs.ledger());
    }

    /** Two tests of one unit. */
    int compare(Given given) throws CannotStoreException {
        try (Screen screen = Screens.printing(around)) {
            String test = given.word().orElseThrow();
            Optional<String> other = given.text("--with");
            Comparison comparison = Comparing.of(given.ledger(), test, other.isPresent() ? other.get() : before(given.ledger(), test));
            SheetTable table = new SheetTable("comparison", List.of("step", "what", "then", "now", "difference"), comparison.lines().stream()
                    .map(line -> List.of(line.step(), line.what(), line.then(), line.now(), word(line.difference()))).toList());
            if (!new Output(screen).writeAsked(given, table)) {
                print(comparison, given.has("--all"), screen);
            }
            return ExitStatus.OK;
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    private static String before(Path ledger, String test) throws CannotStoreException, EntryRefusedException {
        List<RecordRow> earlier = Comparing.earlier(ledger, test);
        if (earlier.isEmpty()) {
            throw new EntryRefusedException(Message.COMPARE_NONE.text(test));
        }
        return earlier.get(0).test();
    }

    private static String word(Comparison.Difference difference) {
        return switch (difference) {
            case OUTCOME -> Message.COMPARE_OUTCOME.text();
            case VALUE -> Message.COMPARE_READING.text();
            case NONE -> "";
        };
    }

    private static void print(Comparison comparison, boolean all, Screen screen) {
        screen.line(Message.COMPARE_HEAD.text(comparison.now().serial(), comparison.then().test(), comparison.then().state(), comparison.now().test(),
                comparison.now().state()));
        for (Comparison.Line line : comparison.lines()) {
            if (all || line.difference() != Comparison.Difference.NONE) {
                String lead = line.difference() == Comparison.Difference.OUTCOME ? "* " : "  ";
                String place = line.step().isEmpty() ? line.what() : line.step() + ", " + line.what();
                Wrap.lines(Message.COMPARE_LINE.text(place, shown(line.then()), shown(line.now())), screen.width(), lead, "    ").forEach(screen::line);
            }
        }
        screen.line(Message.COMPARE_DIFFER.text(comparison.differences(), comparison.lines().size()));
    }

    private static String shown(String words) {
        return words.isEmpty() ? Message.COMPARE_NOT_THERE.text() : words;
    }

    /** All tests that an instrument touches which read wrong. */
    int impact(Given given) throws CannotStoreException {
        try (Screen screen = Screens.printing(around)) {
            Impact impact = Impact.of(given.ledger(), new Impact.Question(given.word().orElseThrow(), given.text("--reads").orElse(""),
                    given.day("--from").orElseThrow(), given.day("--to").orElseThrow()), around.zone(), Progress.none(), Cancellation.never());
            Optional<Path> sheet = given.path("--sheet");
            boolean written = new Output(screen).writeAsked(given, impact.table());
            if (sheet.isPresent()) {
                String text = impact.signed(given.ledger(), around.software(), around.clocks().clock().instant());
                new Output(screen).write(sheet.get(), text.getBytes(StandardCharsets.UTF_8));
            }
            if (!written && sheet.isEmpty()) {
                print(impact, screen);
            }
            screen.line(impact.summary());
            return impact.changed() == 0 && impact.left().isEmpty() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    private static void print(Impact impact, Screen screen) {
        screen.line(impact.asked());
        for (Impact.Row row : impact.rows()) {
            screen.line(Message.IMPACT_ROW.text(row.changed() ? "*" : " ", row.test(), row.serial(), row.then(), row.now(), row.standing()));
            row.words().forEach(words -> Wrap.lines(words, screen.width(), "    ", "      ").forEach(screen::line));
        }
        impact.left().forEach(words -> Wrap.lines(words, screen.width(), "", "  ").forEach(screen::line));
    }
}
