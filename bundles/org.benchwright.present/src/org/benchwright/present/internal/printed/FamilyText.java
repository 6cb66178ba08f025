package org.benchwright.present.internal.printed;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

import org.benchwright.core.LampColour;
import org.benchwright.core.PrintedText.Heading;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.PrintedText.Rows;
import org.benchwright.core.PrintedText.Sentence;
import org.benchwright.core.PrintedText.Told;
import org.benchwright.core.SheetTable;
import org.benchwright.engine.plan.FaultNote;
import org.benchwright.engine.plan.Lamp;
import org.benchwright.engine.plan.Mode;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WatchMap;
import org.benchwright.present.internal.Indications;
import org.benchwright.present.internal.Questions;

/** What a family shows, and what its fault notes say: to look things up in. */
final class FamilyText {

    private final UnitFamily family;
    private final Indications indications;

    FamilyText(UnitFamily family) {
        this.family = family;
        indications = new Indications(family);
    }

    List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        parts.add(new Heading(1, PrintedWords.FAMILY.text(family.title()), "family"));
        family.serialMask().ifPresent(mask -> parts.add(sentence(PrintedWords.FAMILY_SERIAL.text(mask.mask()))));
        family.nominal().ifPresent(nominal -> parts.add(sentence(supply(nominal))));
        parts.add(sentence(stop()));
        if (!family.lamps().isEmpty()) {
            parts.add(new Rows(lamps(), ""));
        }
        family.modes().forEach(mode -> parts.add(sentence(mode(mode))));
        family.watch().ifPresent(map -> parts.add(new Told((map.protocol() == WatchMap.Protocol.MODBUS ? PrintedWords.WATCHED_MODBUS
                : PrintedWords.WATCHED_OPC_UA).text(), PointText.of(map), "")));
        if (!family.faults().isEmpty()) {
            parts.add(new Heading(2, PrintedWords.FAULTS.text(), ""));
            family.faults().forEach(fault -> parts.add(fault(fault)));
        }
        return parts;
    }

    private String supply(String nominal) {
        return family.supply().map(limits -> PrintedWords.FAMILY_SUPPLY_LIMITS.text(nominal, limits.toString()))
                .orElseGet(() -> PrintedWords.FAMILY_SUPPLY.text(nominal));
    }

    private String stop() {
        if (!family.stopStays()) {
            return PrintedWords.FAMILY_RESTARTS.text();
        }
        return family.stopUntil().map(until -> PrintedWords.FAMILY_STOP_UNTIL.text(until)).orElseGet(PrintedWords.FAMILY_STOP_STAYS::text);
    }

    private SheetTable lamps() {
        return new SheetTable("lamps", List.of(PrintedWords.LAMPS_LEGEND.text(), PrintedWords.LAMPS_COLOURS.text(), PrintedWords.LAMPS_TELLS.text()),
                family.lamps().stream().map(FamilyText::row).toList());
    }

    private static List<String> row(Lamp lamp) {
        String colours = lamp.colours().stream().map(LampColour::label).collect(Collectors.joining(PrintedWords.LAMPS_OR.text()));
        return List.of(lamp.marked(), colours, lamp.title());
    }

    private String mode(Mode mode) {
        String called = Questions.spaced(mode.name());
        String name = mode.title().filter(title -> !title.equalsIgnoreCase(called)).map(title -> PrintedWords.MODE_CALLED.text(called, title))
                .orElse(called);
        return mode.shows().isEmpty() ? PrintedWords.MODE.text(name) : PrintedWords.MODE_SHOWS.text(name, indications.all(mode.shows()));
    }

    private Part fault(FaultNote fault) {
        List<String> notes = new ArrayList<>();
        if (!fault.shows().isEmpty()) {
            notes.add(PrintedWords.FAULT_SHOWS.text(indications.all(fault.shows())));
        }
        note(notes, PrintedWords.FAULT_MEANS, fault.means());
        note(notes, PrintedWords.FAULT_OFTEN, fault.often());
        note(notes, PrintedWords.FAULT_NEXT, fault.next());
        return new Told(PrintedWords.FAULT.text(fault.code(), fault.title()), notes, "");
    }

    private static void note(List<String> notes, PrintedWords words, String text) {
        if (!text.isBlank()) {
            notes.add(words.text(text));
        }
    }

    private static Part sentence(String words) {
        return new Sentence(words, "");
    }
}
