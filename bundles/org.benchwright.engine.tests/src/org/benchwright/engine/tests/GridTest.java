package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.grid;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.junit.jupiter.api.Test;

/** A grid of readings: two channels, three currents, limits of 0.016 mA, U = 0.004 mA. */
class GridTest {

    private static Walk reading() {
        return Walk.open(PlanDraft.plan()
                .stage("accuracy", step("currents", grid("shown", rejected("out of limits"), undecided("too close"))), step("next", confirm("ok")))
                .build()).asks("instrument.calibrator").good();
    }

    private static Walk enter(Walk walk, String... readings) {
        for (int cell = 0; cell < readings.length; cell++) {
            walk.tell(new Observation.CellRead("shown", cell, readings[cell], Quantity.of(readings[cell], "mA")));
        }
        return walk;
    }

    @Test
    void cellsComeInOrderTheLastAxisFastest() {
        Walk walk = reading();
        List<String> labels = new ArrayList<>();
        while (walk.demand() instanceof Demand.ReadCell cell) {
            labels.add(String.join("/", cell.at().stream().map(Action.AxisValue::label).toList()));
            walk.good();
        }
        assertEquals(List.of("1/4 mA", "1/12 mA", "1/20 mA", "2/4 mA", "2/12 mA", "2/20 mA"), labels);
        walk.asks("next.ok");
    }

    @Test
    void anotherCellThanTheOneAskedForIsRefused() {
        Walk walk = reading();
        walk.refusal(new Observation.CellRead("shown", 1, "12", Quantity.of("12", "mA")));
        walk.refusal(new Observation.CellRead("shown", 0, "4 V", Quantity.of("4", "V")));
        assertEquals(0, assertInstanceOf(Demand.ReadCell.class, walk.demand()).cell());
    }

    @Test
    void theWorstCellDecides() {
        Walk walk = enter(reading(), "4.001", "12.010", "19.995", "4", "11.989", "20");
        Derived.CheckDecided decided = walk.asks("next.ok").last(Derived.CheckDecided.class);
        assertEquals(Outcome.CONFORMS, decided.outcome());
        assertEquals("-0.011 mA", decided.numbers().orElseThrow().value());
        assertEquals("0.005 mA", decided.numbers().orElseThrow().margin());
        assertEquals("worst of 6 cells, at channel 2, applied 12 mA: -0.011 mA accepted: 0.005 mA inside of the limits -0.016 .. 0.016 mA, "
                + "uncertainty 0.004 mA", decided.words());
    }

    @Test
    void theWorstSoFarIsToldWhileCellsAreRead() {
        Walk walk = reading();
        assertEquals(Optional.empty(), walk.run().worstCellSoFar());
        assertEquals(Optional.of("channel 1, applied 4 mA: 0.001 mA accepted: 0.015 mA inside of the limits -0.016 .. 0.016 mA, uncertainty 0.004 mA"),
                enter(walk, "4.001").run().worstCellSoFar());
        walk.tell(new Observation.CellRead("shown", 1, "12.01", Quantity.of("12.01", "mA")));
        assertEquals(Optional.of("worst of 2 cells, at channel 1, applied 12 mA: 0.01 mA accepted: 0.006 mA inside of the limits -0.016 .. 0.016 mA, "
                + "uncertainty 0.004 mA"), walk.run().worstCellSoFar());
    }

    @Test
    void aCellInTheGuardBandLeavesTheGridUndecidedWhereverItStands() {
        Walk walk = enter(reading(), "4.013", "12", "20", "4", "12", "20");
        assertEquals(Outcome.UNDECIDED, walk.last(Derived.CheckDecided.class).outcome());
        walk.until("end");
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
    }

    @Test
    void oneCellFarOutRejectsTheGrid() {
        Walk walk = enter(reading(), "4", "12.013", "20", "4", "12", "20.021");
        Derived.CheckDecided decided = walk.last(Derived.CheckDecided.class);
        assertEquals(Outcome.DOES_NOT_CONFORM, decided.outcome());
        assertEquals("-0.005 mA", decided.numbers().orElseThrow().margin());
        assertEquals(1, walk.all(Derived.CheckDecided.class).size());
    }
}
