package org.benchwright.ui.internal.bench;

import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.present.Ending;
import org.benchwright.present.ExpectedIndication;
import org.benchwright.present.HazardPanel;
import org.benchwright.present.WallTime;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.Deadline;
import org.benchwright.ui.internal.desk.Last;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.IndicationPainter;
import org.benchwright.ui.internal.look.Palette;
import org.eclipse.swt.graphics.Color;

/** Draws the card itself, large enough to be read from three metres. All sizes are pixels at 1920 x 1080. */
final class CardPainter {

    private static final Duration SECONDS_SHOWN_BELOW = Duration.ofMinutes(2);

    private final Fonts fonts;
    private final Palette palette;

    CardPainter(Fonts fonts, Palette palette) {
        this.fonts = fonts;
        this.palette = palette;
    }

    // ---- the card

    /** What the technician looks at; scrolls where it is too long. */
    void card(Flow flow, Face face) {
        if (face instanceof Face.Here here) {
            alarm(flow, here.alarm());
            shown(flow, here);
        } else if (face instanceof Face.NotHere not) {
            alarm(flow, Face.alarm(not.unit()));
            String where = String.join(", ", not.unit().procedure(), not.unit().stage(), not.unit().state());
            flow.text(where, CardSizes.PLACE, true, palette.quiet());
            flow.gap(30);
            flow.text(Message.CARD_NOT_HERE.text(not.unit().serial()), CardSizes.LARGE, false, palette.text());
        } else {
            flow.gap(40);
            flow.text(Message.CARD_NONE.text(), CardSizes.QUESTION, false, palette.quiet());
        }
    }

    /** Above all else: whoever passes by has to see that this unit needs somebody. */
    private void alarm(Flow flow, Optional<String> words) {
        words.ifPresent(text -> {
            flow.band("\u26A0  " + text, CardSizes.HAZARD_WORD, palette.urgent(), palette.ground());
            flow.gap(14);
        });
    }

    private void shown(Flow flow, Face.Here here) {
        Shown shown = here.shown();
        flow.text(shown.card().unit(), CardSizes.UNIT, false, palette.quiet());
        flow.text(here.stopped() ? "" : shown.card().place(), CardSizes.PLACE, true, palette.text());
        // Above all that may be too long for the screen.
        shown.card().reminders().forEach(reminder -> flow.text("\u26A0  " + reminder, CardSizes.NEWS, false, palette.text()));
        flow.gap(6);
        if (here.takenUpFirst()) {
            flow.text((here.stopped() ? Message.CARD_STOPPED : Message.CARD_ELSEWHERE).text(shown.serial()), CardSizes.LARGE, false,
                    palette.urgent());
            return;
        }
        if (shown.ending().isPresent()) {
            ending(flow, shown.ending().get());
        }
        shown.deadline().ifPresent(deadline -> countdown(flow, deadline));
        shown.card().hazards().forEach(hazard -> hazard(flow, hazard));
        flow.text(shown.card().instruction(), CardSizes.LARGE, false, palette.text());
        indications(flow, shown.drawings());
        preserved(flow, shown);
    }

    private void ending(Flow flow, Ending ending) {
        Message words = ending.rehearsal() ? Message.CARD_WOULD_BE : Message.CARD_VERDICT;
        flow.text(words.text(ending.outcome().word()).toUpperCase(Locale.ROOT), CardSizes.LARGE, true, palette.text());
        flow.gap(16);
        flow.text(ending.reason(), CardSizes.QUESTION, false, palette.text());
        flow.gap(16);
        ending.proved().forEach(sentence -> {
            flow.text(sentence, CardSizes.QUESTION, false, palette.text());
            flow.gap(16);
        });
        flow.text(Message.CARD_ENDED.text(ending.test()), CardSizes.NEWS, false, palette.quiet());
    }

    private void countdown(Flow flow, Deadline deadline) {
        Duration left = deadline.left();
        boolean due = left.isZero() || left.isNegative();
        String overdue = (deadline.audible() ? Message.CARD_NOW : Message.CARD_OVERDUE).text();
        // Words in capitals, but not the unit: a small s is a second.
        String words = due ? overdue : left(left) + "  " + deadline.what().toUpperCase(Locale.ROOT);
        flow.text(words, CardSizes.LARGE, true, due ? palette.urgent() : palette.text());
        if (left.compareTo(SECONDS_SHOWN_BELOW) >= 0) {
            String at = WallTime.here().near(deadline.at());
            flow.text(Message.CARD_AT.text(at), CardSizes.PLACE, false, palette.quiet());
        }
    }

    /** Seconds with tenths near the end, where they matter; plain words before. */
    static String left(Duration left) {
        if (left.compareTo(SECONDS_SHOWN_BELOW) < 0) {
            return String.format(Locale.ROOT, "%.1f s", left.toMillis() / 1000.0);
        }
        return Durations.words(left.plusSeconds(59).truncatedTo(ChronoUnit.MINUTES));
    }

    private void hazard(Flow flow, HazardPanel hazard) {
        flow.gap(10);
        int top = flow.y();
        flow.band("\u26A0  " + hazard.word(), CardSizes.HAZARD_WORD, Palette.ground(hazard.signal()), Palette.text(hazard.signal()));
        Flow inside = flow.within(24);
        inside.gap(14);
        inside.text(hazard.what(), CardSizes.HAZARD_TEXT, true, palette.text());
        inside.gap(14);
        inside.text(Message.CARD_HAZARD_CAN.text(hazard.can()), CardSizes.HAZARD_TEXT, false, palette.text());
        inside.gap(14);
        inside.text(Message.CARD_HAZARD_SO.text(hazard.so()), CardSizes.HAZARD_TEXT, false, palette.text());
        inside.gap(14);
        flow.skip(inside.y() - flow.y());
        flow.frame(top, Palette.ground(hazard.signal()), flow.scaled(6));
        flow.gap(16);
    }

    private void indications(Flow flow, List<ExpectedIndication> drawings) {
        if (drawings.isEmpty()) {
            return;
        }
        flow.gap(18);
        IndicationPainter painter = new IndicationPainter(flow.gc(), fonts, palette, flow.scaled(CardSizes.LAMP), System.nanoTime());
        for (ExpectedIndication expected : drawings) {
            indication(flow, painter, expected);
        }
    }

    /** Drawn, with its words beside the drawing, or below it where there is no room. */
    private void indication(Flow flow, IndicationPainter painter, ExpectedIndication expected) {
        int marker = flow.scaled(24);
        if (flow.drawing() && expected.asked()) {
            flow.gc().setBackground(palette.urgent());
            flow.gc().fillRectangle(flow.left(), flow.y(), flow.scaled(8), flow.scaled(CardSizes.LAMP));
        }
        int end = painter.paint(expected, flow.left() + marker, flow.y());
        int beside = Math.max(end, flow.left() + (flow.right() - flow.left()) / 3);
        Color colour = expected.asked() ? palette.text() : palette.quiet();
        if (flow.right() - beside < flow.scaled(420)) {
            flow.skip(painter.height());
            flow.text(expected.words(), CardSizes.UNIT, expected.asked(), colour, marker);
        } else {
            int top = flow.y();
            flow.text(expected.words(), CardSizes.UNIT, expected.asked(), colour, beside - flow.left());
            flow.skip(Math.max(0, top + painter.height() - flow.y()));
        }
        flow.gap(10);
    }

    private void preserved(Flow flow, Shown shown) {
        flow.gap(14);
        shown.card().preserved().forEach(item -> {
            flow.band(Message.CARD_PROTECTED.text(item), CardSizes.HAZARD_TEXT, palette.text(), palette.ground());
            flow.gap(8);
        });
    }

    // ---- what is asked

    /** What came of the last entry, and what is asked now; if something else is asked first, that in a band. */
    void question(Flow flow, Face face, String first) {
        if (!first.isEmpty()) {
            flow.band(first, CardSizes.HAZARD_WORD, palette.urgent(), palette.ground());
            refused(flow, face);
            return;
        }
        if (face instanceof Face.Here here) {
            if (here.stopped()) {
                refused(flow, face);
            } else {
                last(flow, here.shown().last());
            }
            flow.gap(6);
            boolean asks = here.shown().ending().isEmpty() && !here.takenUpFirst();
            flow.text(asks ? here.shown().card().question() : "", CardSizes.QUESTION, true, palette.text());
            String takeUp = here.stopped() ? Message.CARD_STOPPED_TAKE_UP.text() : here.takenUpFirst() ? Message.CARD_TAKE_UP.text() : "";
            flow.text(takeUp, CardSizes.QUESTION, true, palette.text());
        } else if (face instanceof Face.NotHere) {
            flow.text(Message.CARD_TAKE_UP.text(), CardSizes.QUESTION, true, palette.text());
        }
    }

    private void refused(Flow flow, Face face) {
        if (face instanceof Face.Here here) {
            here.shown().last().refused().ifPresent(why -> flow.text(why, CardSizes.NEWS, true, palette.urgent()));
        }
    }

    private void last(Flow flow, Last last) {
        if (last.tone()) {
            flow.band(Message.CARD_TONE.text(), CardSizes.QUESTION, palette.urgent(), palette.ground());
        }
        last.refused().ifPresent(why -> flow.text(why, CardSizes.NEWS, true, palette.urgent()));
        last.news().forEach(news -> flow.text(news, CardSizes.NEWS, false, palette.text()));
        last.explanations().forEach(fault -> {
            flow.text(Message.CARD_FAULT.text(fault.code(), fault.title()), CardSizes.NEWS, true, palette.text());
            if (fault.known()) {
                flow.text(fault.means() + " " + Message.CARD_FAULT_OFTEN.text(fault.often()) + " "
                        + Message.CARD_FAULT_NEXT.text(fault.next()), CardSizes.NEWS, false, palette.text());
            }
        });
    }
}
