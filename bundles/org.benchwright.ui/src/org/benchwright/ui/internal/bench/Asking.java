package org.benchwright.ui.internal.bench;

import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.present.EntryKind;
import org.benchwright.present.FaultNotes;
import org.benchwright.present.StepCard.KeyHint;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.Shown;

/**
 * What the step card's entry asks for.
 *
 * @param kind    what kind of answer
 * @param prompts a prompt for each part; none if nothing is asked
 * @param first   what is asked in place of the card's question; empty mostly
 * @param keys    which keys do what
 * @param notes   what the fault codes that are typed mean
 */
record Asking(EntryKind kind, List<String> prompts, String first, String keys, FaultNotes notes) {

    private static final FaultNotes NONE = new FaultNotes(List.of());
    private static final Asking NOTHING = new Asking(EntryKind.NOTHING, List.of(), "", "", NONE);

    Asking {
        prompts = List.copyOf(prompts);
    }

    /** What is asked for at a face of the card. */
    static Asking of(Face face, Purpose purpose) {
        if (face instanceof Face.Here here && here.arriving() && purpose == Purpose.ANSWER) {
            // An answer that is typed now would answer what is not asked any more.
            return NOTHING;
        } else if (face instanceof Face.Here here && !here.takenUpFirst()) {
            return here(here.shown(), purpose);
        } else if (face instanceof Face.Nobody) {
            return NOTHING;
        }
        String first = purpose == Purpose.MAKE_SAFE ? Message.CARD_MAKE_SAFE_TAKE_UP.text() : "";
        return new Asking(EntryKind.WRITE, List.of(Message.CARD_TAKE_UP_AS.text()), first, Message.CARD_KEYS_TAKE_UP.text(), NONE);
    }

    /** A locked station asks nothing; making safe stays open. */
    static Asking locked(String person) {
        return new Asking(EntryKind.NOTHING, List.of(), Words.STATION_LOCKED.text(person), "", NONE);
    }

    private static Asking here(Shown shown, Purpose purpose) {
        if (purpose == Purpose.ANSWER && shown.secret().isPresent()) {
            String who = shown.secret().get().person();
            return new Asking(EntryKind.SECRET, List.of((shown.secret().get().pin() ? Words.ASK_PIN : Words.ASK_PASSWORD).text(who)), "",
                    Message.CARD_KEYS_BACK.text(), NONE);
        }
        return switch (purpose) {
            case MAKE_SAFE -> new Asking(EntryKind.WRITE, List.of(Message.CARD_MAKE_SAFE_HOW.text()), Message.CARD_MAKE_SAFE_ASK.text(),
                    Message.CARD_KEYS_BACK.text(), NONE);
            case NOTE -> new Asking(EntryKind.WRITE, List.of(Message.CARD_NOTE_HOW.text()), "", Message.CARD_KEYS_BACK.text(), NONE);
            case ANSWER -> new Asking(shown.kind(), prompts(shown), "", keys(shown), shown.notes());
        };
    }

    private static List<String> prompts(Shown shown) {
        return switch (shown.kind()) {
            case NOTHING -> List.of();
            case MARK -> List.of(Message.CARD_MARK_KEY.text());
            case TIME -> List.of(shown.deadline().map(deadline -> deadline.what()).orElse(""));
            default -> shown.card().parts();
        };
    }

    /** The keys are always in sight: no help is needed to see them. */
    private static String keys(Shown shown) {
        String hints = shown.card().keys().stream().filter(hint -> !hint.key().equals("?")).map(Asking::hint)
                .collect(Collectors.joining("    "));
        return switch (shown.kind()) {
            case NOTHING -> "";
            case TIME -> hints;
            case MARK -> Message.CARD_KEYS_MARK.text(hints);
            case LINES -> Message.CARD_KEYS_LINES.text(hints);
            default -> Message.CARD_KEYS.text(shown.tapsAlong() ? Words.TAP_HOW.text() + "    " + hints : hints);
        };
    }

    private static String hint(KeyHint hint) {
        // A line breaks between two keys, never within what is said of one.
        return words(hint).replace(' ', '\u00a0');
    }

    private static String words(KeyHint hint) {
        return switch (hint.key()) {
            case "!" -> Message.CARD_KEY_MAKE_SAFE.text(hint.words());
            case "+", "@", ">" -> hint.key() + " " + hint.words();
            default -> hint.key() + ": " + hint.words();
        };
    }
}
