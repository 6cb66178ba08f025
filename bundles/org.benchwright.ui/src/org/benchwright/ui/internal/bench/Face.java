package org.benchwright.ui.internal.bench;

import java.util.Optional;

import org.benchwright.present.UnitRow;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;

/** What the step card has to show. */
sealed interface Face {

    /** No unit is selected. */
    record Nobody() implements Face {
    }

    /** The selected unit's test is open on the bench, but not in this window. */
    record NotHere(UnitRow unit) implements Face {
    }

    /** The selected unit's test is open here. */
    record Here(OpenTest test, Shown shown) implements Face {
    }

    /** The face of what is selected on the desk now. */
    static Face of(Desk desk) {
        Optional<OpenTest> test = desk.selectedTest();
        if (test.isPresent()) {
            return new Here(test.get(), test.get().shown());
        }
        return desk.units().stream().filter(unit -> unit.test().equals(desk.selected())).findFirst().<Face>map(NotHere::new)
                .orElseGet(Nobody::new);
    }
}
