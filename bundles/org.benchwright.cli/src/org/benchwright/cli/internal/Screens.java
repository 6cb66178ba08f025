package org.benchwright.cli.internal;

import java.io.IOException;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.Command;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;

/** Chooses the screen that fits the surroundings. */
public final class Screens {

    private Screens() {
    }

    /** A screen that only prints. */
    static Screen printing(Surroundings around) {
        return PlainScreen.silent(around.out(), around.err());
    }

    /** Says why a command is refused, and ends it so. */
    static int refused(Surroundings around, String why) {
        try (Screen screen = printing(around)) {
            screen.remark(why);
            return ExitStatus.BAD_INPUT;
        }
    }

    /** A screen to answer at: the terminal if a person sits at one, else lines of standard input. */
    public static Screen answering(Surroundings around) {
        if (around.terminal() && !"dumb".equals(around.environment().get("TERM"))) {
            try {
                Terminal terminal = TerminalBuilder.builder().system(true).dumb(false).build();
                return new TerminalScreen(terminal, around.err());
            } catch (IOException | IllegalStateException noTerminal) {
                // Lines will do: a console that the library does not know still reads and prints.
                return PlainScreen.reading(around);
            }
        }
        return PlainScreen.reading(around);
    }

    /** True for what is heard during a countdown: make safe, and leaving. */
    static boolean heardAtOnce(String typed) {
        return Command.parse(typed).filter(c -> c instanceof Command.MakeSafe || c instanceof Command.Leave).isPresent();
    }
}
