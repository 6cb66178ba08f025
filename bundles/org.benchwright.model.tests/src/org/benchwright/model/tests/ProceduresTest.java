package org.benchwright.model.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import java.util.Optional;

import org.benchwright.model.Conclude;
import org.benchwright.model.Confirmation;
import org.benchwright.model.Grid;
import org.benchwright.model.Judgement;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFactory;
import org.benchwright.model.Procedures;
import org.benchwright.model.Release;
import org.benchwright.model.Stage;
import org.benchwright.model.Step;
import org.benchwright.model.Value;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Where things are in a procedure, and what follows where a check fails. */
class ProceduresTest {

    private static final ProcedureFactory NEW = ProcedureFactory.eINSTANCE;

    private final Procedure procedure = NEW.createProcedure();
    private final Stage stage = NEW.createStage();
    private final Step step = NEW.createStep();
    private final Confirmation check = NEW.createConfirmation();
    private final MakeSafe makeSafe = NEW.createMakeSafe();
    private final Step last = NEW.createStep();

    @BeforeEach
    void together() {
        procedure.getBlocks().add(stage);
        procedure.getBlocks().add(NEW.createSoak());
        stage.getSteps().add(step);
        step.getStatements().add(check);
        procedure.setMakeSafe(makeSafe);
        makeSafe.getSteps().add(last);
    }

    @Test
    void theStepsOfMakeSafeComeLast() {
        assertEquals(List.of(step, last), Procedures.allSteps(procedure));
        procedure.setMakeSafe(null);
        assertEquals(List.of(step), Procedures.allSteps(procedure));
    }

    @Test
    void theNearestThingAroundIsFound() {
        assertSame(check, Procedures.around(check, Confirmation.class).orElseThrow());
        assertSame(stage, Procedures.around(check, Stage.class).orElseThrow());
        assertEquals(Optional.empty(), Procedures.around(last, Stage.class));
        assertEquals(Optional.empty(), Procedures.around(null, Stage.class));
    }

    @Test
    void theNearestOtherwiseCounts() {
        assertEquals(Optional.empty(), Procedures.outcome(check));
        Conclude far = NEW.createConclude();
        procedure.setOtherwise(far);
        assertSame(far, Procedures.outcome(check).orElseThrow());
        Conclude near = NEW.createConclude();
        stage.setOtherwise(near);
        assertSame(near, Procedures.outcome(check).orElseThrow());
        Conclude nearest = NEW.createConclude();
        step.setOtherwise(nearest);
        assertSame(nearest, Procedures.outcome(check).orElseThrow());
        Conclude own = NEW.createConclude();
        check.setOutcome(own);
        assertSame(own, Procedures.outcome(check).orElseThrow());
    }

    @Test
    void anOtherwiseIsNotItsOwnWayOut() {
        Release refused = NEW.createRelease();
        step.setOtherwise(refused);
        assertEquals(Optional.empty(), Procedures.enclosingOtherwise(refused));
        Conclude far = NEW.createConclude();
        procedure.setOtherwise(far);
        assertSame(far, Procedures.enclosingOtherwise(refused).orElseThrow());
    }

    @Test
    void thePartsOfAGridAreFound() {
        Grid grid = NEW.createGrid();
        grid.getAxes().add(NEW.createAxis());
        grid.setReading(NEW.createGridReading());
        grid.setJudgement(NEW.createJudgement());
        last.getStatements().add(grid);
        assertEquals(List.of(grid.getAxes().get(0), grid.getReading()), Procedures.statements(procedure, Value.class));
        assertEquals(List.of(grid.getJudgement()), Procedures.statements(procedure, Judgement.class));
        assertEquals(List.of(grid), Procedures.statements(last, Grid.class).toList());
    }
}
