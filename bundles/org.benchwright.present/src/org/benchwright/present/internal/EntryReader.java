package org.benchwright.present.internal;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.ScannedText;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.Demand;
import org.benchwright.engine.Place;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.internal.TypedText.HeadAndRest;

/** Turns what was typed into the fact that a demand asks for. Raw text is kept where the fact has a place for it. */
public final class EntryReader {

    private EntryReader() {
    }

    /**
     * The entry of one line; several parts are separated by semicolons.
     *
     * @throws EntryRefusedException if the text is no answer to this demand
     */
    public static Entry read(Demand demand, String typed) throws EntryRefusedException {
        boolean several = demand instanceof Demand.CompareEntries || demand instanceof Demand.Look;
        List<String> parts = several ? Arrays.asList(typed.split(";", -1)) : List.of(typed);
        return read(demand, parts);
    }

    /**
     * The entry of several parts, such as the two sides of a comparison.
     *
     * @throws EntryRefusedException if the parts are no answer to this demand
     */
    public static Entry read(Demand demand, List<String> typed) throws EntryRefusedException {
        List<String> parts = new ArrayList<>();
        for (String part : typed) {
            parts.add(TypedText.clean(part));
        }
        String text = String.join("; ", parts);
        if (demand instanceof Demand.AttachFile d) {
            return new Entry.File(d.attach().id(), file(text));
        } else if (demand instanceof Demand.CompareEntries d) {
            return new Entry.Told(compared(d, parts));
        } else if (demand instanceof Demand.Look d) {
            return new Entry.Told(looked(d, parts));
        }
        return new Entry.Told(fact(demand, text));
    }

    /**
     * Free text, cleaned.
     *
     * @throws EntryRefusedException if there is none, or it can't be kept
     */
    public static String text(String typed) throws EntryRefusedException {
        return filled(TypedText.clean(typed));
    }

    /**
     * A serial number, a tag or another short word, as a scanner or a keyboard gave it; may be empty.
     *
     * @throws EntryRefusedException if it came in another encoding than UTF-8, so that nobody knows what it was
     */
    public static String scanned(String typed) throws EntryRefusedException {
        String text = ScannedText.clean(typed);
        if (ScannedText.isGarbled(text)) {
            throw new EntryRefusedException(Message.REFUSED_GARBLED.text(text));
        }
        return text;
    }

    private static Fact fact(Demand demand, String text) throws EntryRefusedException {
        if (demand instanceof Demand.AnswerPrecondition d) {
            return precondition(d.precondition(), text);
        } else if (demand instanceof Demand.AcknowledgeHazard d) {
            require(TypedText.isOneOf(text, Message.WORDS_UNDERSTOOD), Message.REFUSED_NOT_UNDERSTOOD);
            return new Fact.HazardAcknowledged(d.hazard().name());
        } else if (demand instanceof Demand.NameInstrument d) {
            return InstrumentEntry.read(d.instrument(), text);
        } else if (demand instanceof Demand.Switch d) {
            require(TypedText.isOneOf(text, Message.WORDS_DONE), notDone(d.place()));
            return new Fact.Switched(d.item(), d.live());
        } else if (demand instanceof Demand.PressMark d) {
            require(TypedText.isOneOf(text, Message.WORDS_DONE), Message.REFUSED_NOT_PRESSED);
            return new Fact.Marked(d.mark().id());
        } else if (demand instanceof Demand.Apply d) {
            require(TypedText.isOneOf(text, Message.WORDS_DONE), notDone(d.place()));
            return new Fact.Applied(d.apply().id());
        } else if (demand instanceof Demand.TellPower) {
            return new Fact.PowerAnswered(yes(text));
        }
        return entered(demand, text);
    }

    private static Fact entered(Demand demand, String text) throws EntryRefusedException {
        if (demand instanceof Demand.AnswerExpectation d) {
            HeadAndRest seen = sight(text);
            return new Observation.Seen(d.expect().id(), Sight.valueOf(seen.head()), seen.rest());
        } else if (demand instanceof Demand.TakeMeasurement d) {
            return new Observation.Measured(d.measure().id(), text, quantity(text, d.measure().unit()));
        } else if (demand instanceof Demand.ReadCell d) {
            return new Observation.CellRead(d.grid().id(), d.cell(), text, quantity(text, d.grid().unit()));
        } else if (demand instanceof Demand.GiveReason d) {
            return new Observation.ReasonGiven(d.check(), filled(text));
        } else if (demand instanceof Demand.EnterText d) {
            return new Observation.TextEntered(d.entry().id(), filled(text));
        } else if (demand instanceof Demand.EnterFaultLog d) {
            return new Observation.FaultLogEntered(d.entry().id(), faultLines(text));
        } else if (demand instanceof Demand.ConfirmStatement d) {
            return new Observation.Confirmed(d.confirm().id(), yes(text));
        } else if (demand instanceof Demand.ConfirmItem d) {
            return new Observation.ItemConfirmed(d.choose().id(), d.item().name(), yes(text));
        } else if (demand instanceof Demand.Release d) {
            return released(d, text);
        }
        throw new EntryRefusedException(Message.REFUSED_NOTHING_ASKED.text());
    }

    // ---- single kinds

    /** Nothing leads out of making safe but making safe. */
    private static Message notDone(Place place) {
        return place.makingSafe() ? Message.REFUSED_NOT_SAFE_YET : Message.REFUSED_NOT_DONE;
    }

    private static Fact precondition(Precondition p, String text) throws EntryRefusedException {
        if (p.reading().isPresent()) {
            HeadAndRest split = TypedText.split(text);
            boolean said = TypedText.isOneOf(split.head(), Message.WORDS_YES) || TypedText.isOneOf(split.head(), Message.WORDS_NO);
            Quantity reading = quantity(said ? split.rest() : text, p.reading().get().unit());
            return new Observation.PreconditionAnswered(p.name(), !said || yes(split.head()), "", Optional.of(reading));
        }
        HeadAndRest split = TypedText.split(text);
        boolean met = yes(split.head());
        if (met && p.text().isPresent() && split.rest().isEmpty()) {
            throw new EntryRefusedException(Message.REFUSED_TEXT_MISSING.text(p.text().get()));
        }
        return new Observation.PreconditionAnswered(p.name(), met, split.rest(), Optional.empty());
    }

    private static Fact released(Demand.Release d, String text) throws EntryRefusedException {
        HeadAndRest split = TypedText.split(text);
        boolean given = yes(split.head());
        if (split.rest().isEmpty()) {
            throw new EntryRefusedException(Message.REFUSED_NO_INITIALS.text(d.by().label()));
        }
        try {
            return new Fact.Released(d.check(), new Actor(split.rest(), d.by()), given);
        } catch (IllegalArgumentException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        }
    }

    private static Fact compared(Demand.CompareEntries d, List<String> parts) throws EntryRefusedException {
        if (parts.size() != 2 || parts.get(0).isEmpty() || parts.get(1).isEmpty()) {
            throw new EntryRefusedException(Message.REFUSED_TWO_ENTRIES.text(d.compare().left(), d.compare().right()));
        }
        return new Observation.Compared(d.compare().id(), parts.get(0), parts.get(1));
    }

    private static Fact looked(Demand.Look d, List<String> parts) throws EntryRefusedException {
        List<Condition> conditions = d.soak().conditions();
        if (parts.size() != conditions.size() + 1) {
            throw new EntryRefusedException(Message.REFUSED_LOOK_PARTS.text(conditions.size()));
        }
        HeadAndRest seen = sight(parts.get(0));
        List<Observation.ConditionReading> readings = new ArrayList<>();
        for (int i = 0; i < conditions.size(); i++) {
            String raw = parts.get(i + 1);
            Limits limits = conditions.get(i).limits();
            readings.add(new Observation.ConditionReading(conditions.get(i).name(), raw, quantity(raw, limits.unit())));
        }
        return new Observation.Looked(d.soak().name(), Sight.valueOf(seen.head()), seen.rest(), readings);
    }

    /** What was seen as the name of a {@link Sight}, with the technician's words. */
    private static HeadAndRest sight(String text) throws EntryRefusedException {
        HeadAndRest split = TypedText.split(text);
        if (TypedText.isOneOf(split.head(), Message.WORDS_NOT_LOOKING)) {
            return new HeadAndRest(Sight.NOT_LOOKING.name(), split.rest());
        } else if (TypedText.isOneOf(split.head(), Message.WORDS_AS_EXPECTED)) {
            return new HeadAndRest(Sight.YES.name(), split.rest());
        } else if (TypedText.isOneOf(split.head(), Message.WORDS_NOT_AS_EXPECTED)) {
            return new HeadAndRest(Sight.NO.name(), split.rest());
        }
        throw new EntryRefusedException(Message.REFUSED_SIGHT.text());
    }

    private static List<Observation.FaultLine> faultLines(String text) throws EntryRefusedException {
        List<Observation.FaultLine> lines = FaultLines.of(text);
        require(!lines.isEmpty() || FaultLines.isNone(text), Message.REFUSED_NO_LINES);
        require(lines.stream().noneMatch(line -> FaultLines.isNone((line.code() + " " + line.text()).strip())), Message.REFUSED_NONE_AND_LINES);
        return lines;
    }

    private static Path file(String text) throws EntryRefusedException {
        try {
            return Path.of(filled(text));
        } catch (InvalidPathException e) {
            throw new EntryRefusedException(Message.REFUSED_NO_PATH.text(text), e);
        }
    }

    // ---- small change

    static Quantity quantity(String text, UnitOfMeasure assumed) throws EntryRefusedException {
        try {
            return Quantity.parse(text, assumed);
        } catch (QuantityFormatException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        }
    }

    /** Whether that is a plain yes. */
    public static boolean isYes(String typed) {
        return TypedText.isOneOf(typed.strip(), Message.WORDS_YES);
    }

    /** True if it says no, and nothing else. */
    public static boolean isNo(String typed) {
        return TypedText.isOneOf(typed.strip(), Message.WORDS_NO);
    }

    private static boolean yes(String text) throws EntryRefusedException {
        if (TypedText.isOneOf(text, Message.WORDS_YES)) {
            return true;
        } else if (TypedText.isOneOf(text, Message.WORDS_NO)) {
            return false;
        }
        throw new EntryRefusedException(Message.REFUSED_YES_NO.text());
    }

    static String filled(String text) throws EntryRefusedException {
        require(!text.isEmpty(), Message.REFUSED_EMPTY);
        return text;
    }

    private static void require(boolean fine, Message otherwise) throws EntryRefusedException {
        if (!fine) {
            throw new EntryRefusedException(otherwise.text());
        }
    }
}
