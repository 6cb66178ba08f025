package org.benchwright.language.internal.expand;

import java.util.List;

import org.benchwright.model.DisplayIndication;
import org.benchwright.model.Erase;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Guard;
import org.benchwright.model.LampIndication;
import org.benchwright.model.LogEntry;
import org.benchwright.model.ModeIndication;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.Reveals;
import org.eclipse.emf.ecore.EObject;

/**
 * A shared stage speaks of a family's things; a procedure for a family like it means its own of the same names, which may have
 * other colours or other words.
 */
final class OwnThings {

    private final Family family;

    OwnThings(Procedure procedure) {
        family = procedure.getFamily();
    }

    void put(EObject stage) {
        if (family != null && !family.eIsProxy()) {
            stage.eAllContents().forEachRemaining(this::own);
        }
    }

    private void own(EObject each) {
        if (each instanceof LampIndication lamp) {
            lamp.setLamp(own(lamp.getLamp(), Families.lamps(family)));
        } else if (each instanceof DisplayIndication display) {
            display.setDisplay(own(display.getDisplay(), Families.displays(family)));
        } else if (each instanceof ModeIndication mode) {
            mode.setMode(own(mode.getMode(), Families.modes(family)));
        } else if (each instanceof LogEntry entry) {
            entry.setItem(own(entry.getItem(), Families.keptItems(family)));
        } else if (each instanceof Guard guard) {
            guard.setOption(own(guard.getOption(), Families.options(family)));
        } else if (each instanceof Erase erase) {
            erase.getItems().replaceAll(item -> own(item, Families.keptItems(family)));
            erase.getSpared().replaceAll(item -> own(item, Families.keptItems(family)));
        } else if (each instanceof Reveals reveals) {
            reveals.getFaults().replaceAll(fault -> own(fault, Families.faults(family)));
        }
    }

    private static <T extends Named> T own(T meant, List<T> all) {
        return meant == null ? null
                : all.stream().filter(each -> each.getName() != null && each.getName().equals(meant.getName())).findFirst().orElse(meant);
    }
}
