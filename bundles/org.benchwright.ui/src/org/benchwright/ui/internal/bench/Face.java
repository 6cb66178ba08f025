package org.benchwright.ui.internal.bench;

import java.util.Optional;

import org.benchwright.present.UnitRow;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;

/** What the step card has to show. */
sealed interface Face {

    /** The test's id; empty if no unit is selected. */
    String test();

    /** Changes whenever other parts are asked for. */
    String key();

    /** True if the entry can be for this. */
    boolean takes(Purpose purpose);

    /** No unit is selected. */
    record Nobody() implements Face {

        @Override
        public String test() {
            return "";
        }

        @Override
        public String key() {
            return "";
        }

        @Override
        public boolean takes(Purpose purpose) {
            return false;
        }
    }

    /** The selected unit's test is open on the bench, but not in this window. */
    record NotHere(UnitRow unit) implements Face {

        @Override
        public String test() {
            return unit.test();
        }

        @Override
        public String key() {
            return unit.test() + " not here";
        }

        @Override
        public boolean takes(Purpose purpose) {
            return purpose == Purpose.MAKE_SAFE;
        }
    }

    /**
     * The selected unit's test is open here.
     *
     * @param arriving true as long as somebody has come to it from another unit, and it is not asked yet which unit this is
     * @param alarm    why somebody should come, where a watch says so
     * @param stopped  true if the watch has seen it stop: what was asked on its soak is asked no more
     */
    record Here(OpenTest open, Shown shown, boolean arriving, Optional<String> alarm, boolean stopped) implements Face {

        /** True if it has to be taken up before anything is answered. */
        boolean takenUpFirst() {
            return shown.elsewhere() || stopped;
        }

        @Override
        public String test() {
            return shown.test();
        }

        @Override
        public String key() {
            return shown.test() + " " + shown.version() + (arriving ? " arriving" : "") + (stopped ? " stopped" : "");
        }

        @Override
        public boolean takes(Purpose purpose) {
            return purpose == Purpose.MAKE_SAFE ? takenUpFirst() || shown.canMakeSafe() : shown.ending().isEmpty() && !takenUpFirst();
        }
    }

    /** Why somebody should come to a unit. */
    static Optional<String> alarm(UnitRow unit) {
        return Optional.of(unit.watch()).filter(words -> unit.alarm());
    }

    /** The face of what is selected on the desk now. */
    static Face of(Desk desk) {
        Optional<OpenTest> test = desk.selectedTest();
        Optional<UnitRow> row = desk.units().stream().filter(unit -> unit.test().equals(desk.selected())).findFirst();
        if (test.isPresent()) {
            // In this order: who has arrived by now is asked for in what is read behind it.
            boolean arriving = test.get().arriving();
            Shown shown = test.get().shown();
            boolean stopped = shown.onSoak() && !shown.elsewhere() && row.filter(unit -> unit.alarm() && unit.soakLeft().isEmpty()).isPresent();
            return new Here(test.get(), shown, arriving, row.flatMap(Face::alarm), stopped);
        }
        return row.<Face>map(NotHere::new).orElseGet(Nobody::new);
    }
}
