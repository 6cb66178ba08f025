package org.benchwright.cli.tests;

import java.util.List;

import org.benchwright.cli.ProcedureSource;
import org.benchwright.language.Reading;
import org.benchwright.workshop.tests.SamplePlan;

/** The sample plan as a procedure, and answers to it. */
final class SampleProcedure {

    /** Whatever file is named, it holds the sample plan. */
    static final ProcedureSource SOURCE = (file, family) -> new Reading.Ready(SamplePlan.acceptance(), SamplePlan.TEXT, List.of());

    /** A good unit, with what a few lines more would have it. */
    static final String GOOD = """
            # A C16 that works.
            hazard.* = understood
            precondition.strap = yes, 4711
            precondition.ambient = 22.5 degC
            plate.photo = plate.jpg
            plate.damage = none
            bench.supply.on = done
            instrument.meter = M-17, 0.02 V, k 2, due 2027-03-01
            bench.supply_volts = 24,02V
            bench.supply.off = done
            fit.strap_off = yes
            lamps.on = now
            lamps.supply.off = done
            lamps.pwr = yes
            lamps.ok = yes
            lamps.flt = yes
            as_found.fault_log = none
            matched.same = TC16; tc 16
            blank_log.erase.fault_log = yes
            blank_log.erase.owner_program = yes
            start.outputs_bare.release = yes, KM
            start.start = now
            start.run = yes
            endurance.begin = yes; 22 degC; 24.0 V
            endurance.look = as expected; 23 degC; 24.0 V
            power = no
            off.supply.off = done
            drain.residual = 0.4 V
            """;

    /** What a person types who gives up: strap, room, then the make-safe key and why; supply off, dead. */
    static final String GIVEN_UP = "y, 4711\n22,5 degC\n! The plate is missing.\n\nM-17, 0.02 V, k 2, due 2027-03-01\n0,4\n";

    private SampleProcedure() {
    }

    /** The good answers, but that key answered so. */
    static String but(String key, String answer) {
        return GOOD.replaceAll("(?m)^" + key + " = .*$", key + " = " + answer);
    }

    /** The good answers without that key. */
    static String without(String key) {
        return GOOD.replaceAll("(?m)^" + key + " = .*\\R", "");
    }
}
