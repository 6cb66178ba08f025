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
        Stream.of(HelpPage.values()).forEach(page -> screen.line(String.format("  %-20s %s", page.word(), page.title())));
        screen.line(Message.MANUAL_REMARKS.text());
    }

    private static Optional<String> page(String word) {
        return HelpPage.of(word).map(HelpPage::text)
                .or(() -> Stream.of(RemarkCode.values()).filter(code -> code.word().equalsIgnoreCase(word)).findFirst().map(RemarkPages::text));
    }
}
