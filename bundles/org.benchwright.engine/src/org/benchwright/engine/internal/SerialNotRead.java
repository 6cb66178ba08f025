package org.benchwright.engine.internal;

import java.util.Optional;

import org.benchwright.core.SerialMask;
import org.benchwright.engine.event.Arrival;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.receipt.Plate;

/** Units whose plate tells no serial number of their family: whoever received them has said so, and the test departs from the procedure. */
final class SerialNotRead {

    private SerialNotRead() {
    }

    /** What serial numbers of the family look like, if this one does not. */
    static Optional<String> mask(Plan plan, Fact.Opened opened) {
        return plan.family().serialMask().filter(mask -> !mask.accepts(opened.serial())).map(SerialMask::mask);
    }

    /** What was said of the plate when the unit came in, if that explains it. */
    static Optional<Plate> excuse(Fact.Opened opened) {
        return opened.receipt().map(Arrival::plate).filter(plate -> plate != Plate.READ);
    }

    /** The departure in words; empty where the number looks as it should. */
    static Optional<String> departure(Plan plan, Fact.Opened opened) {
        return mask(plan, opened).flatMap(mask -> excuse(opened).map(plate -> Words.of("departure.plate." + plate.name(), opened.serial(), mask)));
    }
}
