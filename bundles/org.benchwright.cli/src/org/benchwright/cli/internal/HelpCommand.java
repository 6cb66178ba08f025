package org.benchwright.cli.internal;

import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.RemarkPages;
import org.benchwright.present.HelpPage;

import picocli.CommandLine.Model.CommandSpec;

/** Prints a page of the manual, or which there are. */
final class HelpCommand {

    private static final String REMARKS = "remarks";

    private final Surroundings around;

    HelpCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("help", Message.HELP_MANUAL).addPositional(Specs.word("TOPIC", false, Message.HELP_MANUAL_TOPIC));
    }

    int run(Given given) {
        try (Screen screen = Screens.printing(around)) {
            Optional<String> word = given.word();
            if (word.isEmpty()) {
                list(screen);
                return ExitStatus.OK;
            }
            Optional<String> page = page(word.get());
            page.ifPresentOrElse(text -> text.lines().forEach(screen::line), () -> screen.remark(Message.MANUAL_NO_PAGE.text(word.get())));
            return page.isPresent() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        }
    }

    private static void list(Screen screen) {
        Stream.of(HelpPage.values()).forEach(page -> topic(screen, page.word(), page.title()));
        topic(screen, REMARKS, remarks().lines().findFirst().orElseThrow().substring(2));
        screen.line(Message.MANUAL_REMARKS.text());
    }

    private static void topic(Screen screen, String word, String title) {
        screen.line(String.format("  %-20s %s", word, title));
    }

    /** All remarks, and the frame in which their examples stand. */
    private static String remarks() {
        return RemarkPages.at("docs/remarks/README.md").orElseThrow();
    }

    private static Optional<String> page(String word) {
        return HelpPage.of(word).map(HelpPage::text)
                .or(() -> word.equalsIgnoreCase(REMARKS) ? Optional.of(remarks()) : Optional.empty())
                .or(() -> Stream.of(RemarkCode.values()).filter(code -> code.word().equalsIgnoreCase(word)).findFirst().map(RemarkPages::text));
    }
}
