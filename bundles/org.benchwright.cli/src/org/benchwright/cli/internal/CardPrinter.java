package org.benchwright.cli.internal;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.present.Countdown;
import org.benchwright.present.Ending;
import org.benchwright.present.FaultExplanation;
import org.benchwright.present.HazardPanel;
import org.benchwright.present.StepCard;
import org.benchwright.present.TestDialogue;
import org.benchwright.present.TimelineLine;
import org.benchwright.present.WallTime;

/** Cards and what came of them, as lines of a screen. */
final class CardPrinter {

    private static final String INDENT = "  ";
    private static final DateTimeFormatter OF_THIS_YEAR = DateTimeFormatter.ofPattern("MM-dd HH:mm:ss", Locale.ROOT);

    private final Screen screen;
    private final ZoneId zone;

    CardPrinter(Screen screen, ZoneId zone) {
        this.screen = screen;
        this.zone = zone;
    }

    /** Prints a card. */
    void card(StepCard card) {
        screen.line("");
        rule('=');
        wrapped(card.unit(), "", "");
        wrapped(card.place().toUpperCase(Locale.ROOT), "", "");
        rule('-');
        if (!card.instruction().isBlank()) {
            screen.line("");
            wrapped(card.instruction(), INDENT, INDENT);
        }
        card.hazards().forEach(this::hazard);
        list("", card.reminders());
        list(Message.CARD_EXPECTED.text(), card.expected());
        list(Message.CARD_PRESERVED.text(), card.preserved());
        card.countdown().ifPresent(this::countdown);
        screen.line("");
        wrapped(card.question(), "", "");
    }

    private void hazard(HazardPanel hazard) {
        screen.line("");
        String head = "### " + hazard.word() + " ";
        screen.line(INDENT + head + "#".repeat(Math.max(3, screen.width() - INDENT.length() - head.length())));
        wrapped(hazard.what(), INDENT + "# ", INDENT + "# ");
        wrapped(Message.HAZARD_CAN.text(hazard.can()), INDENT + "# ", INDENT + "# ");
        wrapped(Message.HAZARD_SO.text(hazard.so()), INDENT + "# ", INDENT + "# ");
        screen.line(INDENT + "#".repeat(screen.width() - INDENT.length()));
        wrapped(Message.HAZARD_DEFERS.text(), INDENT, INDENT);
    }

    private void list(String heading, List<String> items) {
        if (items.isEmpty()) {
            return;
        }
        screen.line("");
        if (!heading.isEmpty()) {
            screen.line(INDENT + heading);
        }
        items.forEach(item -> wrapped(item, INDENT + "* ", INDENT + "  "));
    }

    private void countdown(Countdown countdown) {
        screen.line("");
        String at = new WallTime(zone).minute(countdown.at());
        wrapped(countdown.due() ? Message.COUNT_DUE.text(shown(countdown), at) : Message.COUNT_LEFT.text(countdown.what(), shown(countdown), at), INDENT, INDENT);
    }

    /** The time left in whole seconds. */
    static String shown(Countdown countdown) {
        return Durations.words(Durations.wholeSeconds(countdown.left()).abs());
    }

    /** Prints the keys, for help. */
    void keys(StepCard card) {
        screen.line("");
        card.keys().forEach(key -> wrapped(key.words(), INDENT + String.format(Locale.ROOT, "%-3s", key.key()), INDENT + "   "));
        wrapped(Message.KEY_CONTROL.text(), INDENT, INDENT);
    }

    /** Prints the keys in one line. */
    void keyLine(StepCard card) {
        wrapped(card.keys().stream().map(key -> key.key() + " " + key.words()).collect(Collectors.joining(" | ")), INDENT, INDENT);
    }

    /** Prints what came of an entry. */
    void told(TestDialogue.Told told) {
        told.news().forEach(words -> wrapped(words, INDENT + "-> ", INDENT + "   "));
        told.explanations().forEach(this::explanation);
    }

    private void explanation(FaultExplanation fault) {
        wrapped(fault.code() + ": " + fault.title(), INDENT + "-> ", INDENT + "   ");
        if (fault.known()) {
            part(Message.FAULT_MEANS, fault.means());
            part(Message.FAULT_OFTEN, fault.often());
            part(Message.FAULT_NEXT, fault.next());
        }
    }

    private void part(Message words, String text) {
        if (!text.isBlank()) {
            wrapped(words.text(text), INDENT + "   ", INDENT + "   ");
        }
    }

    /** Prints how a test ended: what its soaks proved, and last the line that scripts read. */
    void ending(Ending ending) {
        screen.line("");
        ending.proved().forEach(words -> wrapped(words, INDENT, INDENT));
        if (!ending.proved().isEmpty()) {
            screen.line("");
        }
        screen.line(ending.words());
    }

    /** Prints what happened so far. */
    void soFar(List<TimelineLine> lines) {
        screen.line("");
        for (TimelineLine line : lines) {
            String words = (line.struck() ? Message.STRUCK.text(line.words()) : line.words())
                    + (line.who().isEmpty() ? "" : " (" + line.who() + ")");
            String head = String.format(Locale.ROOT, "%4d %s  ", line.sequence(), OF_THIS_YEAR.format(line.instant().atZone(zone)));
            wrapped(words, head, " ".repeat(head.length()));
        }
    }

    /** Prints a line, wrapped. */
    void wrapped(String text, String first, String rest) {
        Wrap.lines(text, screen.width(), first, rest).forEach(screen::line);
    }

    private void rule(char of) {
        screen.line(String.valueOf(of).repeat(screen.width()));
    }
}
