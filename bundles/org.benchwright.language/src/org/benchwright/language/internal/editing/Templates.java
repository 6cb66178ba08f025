package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.benchwright.core.Texts;
import org.benchwright.language.editing.Proposal.Slot;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Mark;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
import org.eclipse.emf.ecore.EObject;

/** Whole statements, steps and files to begin with; their examples are names that are declared, where there are any. */
final class Templates {

    private static final Texts TEXTS = Texts.beside(Templates.class, "templates");
    /** A slot: what kind of name it wants, and what stands there where there is none. */
    private static final Pattern SLOT = Pattern.compile("<([a-z]*):([^>]*)>");

    private static final Map<String, Function<Family, List<? extends Named>>> OF_FAMILY = Map.of("lamp", Families::lamps, "mode",
            Families::modes, "kept", Families::keptItems, "loadable", Families::loadItems, "fault", Families::faults);
    private static final Map<String, Function<Procedure, List<? extends Named>>> OF_PROCEDURE = Map.of("hazard", Procedure::getHazards,
            "instrument", Procedure::getInstruments, "mark", procedure -> Procedures.statements(procedure, Mark.class));

    private final String key;

    private Templates(String key) {
        this.key = key;
    }

    /**
     * A template with its examples put in.
     *
     * @param label  what is listed
     * @param detail what it is for
     * @param text   what is written
     * @param slots  what is to be changed in it
     */
    record FilledIn(String label, String detail, String text, List<Slot> slots) {
    }

    /** The templates that begin with a word at the beginning of a rule. */
    static Stream<Templates> of(String rule, String word) {
        String beginning = rule + "." + word + ".";
        return TEXTS.keys().stream().filter(key -> key.startsWith(beginning) && key.endsWith(".text")).sorted()
                .map(key -> new Templates(key.substring(0, key.length() - ".text".length())));
    }

    /**
     * Puts in names that can be referred to at a place.
     *
     * @param newLine what a line after the first begins with: the end of the one before it, and blanks
     */
    FilledIn filledIn(EObject place, String newLine) {
        Matcher slot = SLOT.matcher(TEXTS.pattern(key + ".text").replace("\n", newLine));
        StringBuilder text = new StringBuilder();
        List<Slot> slots = new ArrayList<>();
        while (slot.find()) {
            slot.appendReplacement(text, "");
            String example = example(place, slot.group(1), slot.group(2));
            slots.add(new Slot(text.length(), example.length()));
            text.append(example);
        }
        slot.appendTail(text);
        return new FilledIn(TEXTS.pattern(key + ".label"), TEXTS.pattern(key + ".detail"), text.toString(), slots);
    }

    private static String example(EObject place, String kind, String otherwise) {
        Stream<? extends Named> ofFamily = NameIndex.family(place).filter(family -> OF_FAMILY.containsKey(kind)).stream()
                .flatMap(family -> OF_FAMILY.get(kind).apply(family).stream());
        Stream<? extends Named> ofProcedure = Procedures.around(place, Procedure.class).filter(p -> OF_PROCEDURE.containsKey(kind))
                .stream().flatMap(procedure -> OF_PROCEDURE.get(kind).apply(procedure).stream());
        return Stream.concat(ofFamily, ofProcedure).map(Named::getName).filter(name -> name != null).findFirst().orElse(otherwise);
    }
}
