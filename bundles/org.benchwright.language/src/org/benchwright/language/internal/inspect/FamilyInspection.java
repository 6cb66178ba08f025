package org.benchwright.language.internal.inspect;

import java.util.HashSet;
import java.util.Set;

import org.benchwright.core.SerialMask;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Display;
import org.benchwright.model.Family;
import org.benchwright.model.Lamp;
import org.benchwright.model.LampGroup;
import org.benchwright.model.ProcedurePackage.Literals;

/** What a family declares makes sense by itself. */
final class FamilyInspection implements Inspection {

    /** More lamps than any front panel has in one group. */
    private static final int LARGEST_GROUP = 1024;

    @Override
    public void family(Family family, Remarks remarks) {
        if (isLikeItself(family)) {
            remarks.on(family, Literals.FAMILY__BASE, RemarkCode.CYCLIC_LIKE, String.valueOf(family.getName()));
        }
        serialMask(family, remarks);
        family.getLamps().forEach(lamp -> lamp(lamp, remarks));
        family.getDisplays().forEach(display -> display(display, remarks));
    }

    private static boolean isLikeItself(Family family) {
        Set<Family> seen = new HashSet<>();
        for (Family each = base(family); each != null && seen.add(each); each = base(each)) {
            if (each == family) {
                return true;
            }
        }
        return false;
    }

    private static Family base(Family family) {
        return Written.thing(family.getBase()).orElse(null);
    }

    private static void serialMask(Family family, Remarks remarks) {
        if (family.getSerial() == null) {
            return;
        }
        try {
            new SerialMask(family.getSerial());
        } catch (IllegalArgumentException unusable) {
            remarks.on(family, Literals.FAMILY__SERIAL, RemarkCode.BAD_SERIAL_MASK, String.valueOf(unusable.getMessage()));
        }
    }

    private static void lamp(Lamp lamp, Remarks remarks) {
        if (lamp.getColours().stream().distinct().count() < lamp.getColours().size()) {
            remarks.on(lamp, Literals.LAMP__COLOURS, RemarkCode.LISTED_TWICE, String.valueOf(lamp.getName()));
        }
        if (lamp instanceof LampGroup group) {
            if (group.getLast() < group.getFirst()) {
                remarks.on(group, Literals.LAMP_GROUP__LAST, RemarkCode.LIMITS_INVERTED);
            } else if ((long) group.getLast() - group.getFirst() >= LARGEST_GROUP) {
                remarks.on(group, Literals.LAMP_GROUP__LAST, RemarkCode.GROUP_TOO_LARGE, Integer.toString(LARGEST_GROUP));
            }
        }
    }

    private static void display(Display display, Remarks remarks) {
        if (display.getCharacters() < 1) {
            remarks.on(display, Literals.DISPLAY__CHARACTERS, RemarkCode.COUNT_NOT_POSITIVE);
        }
    }
}
