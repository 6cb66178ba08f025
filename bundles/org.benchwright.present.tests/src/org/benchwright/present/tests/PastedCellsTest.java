package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.Place;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PastedText;
import org.benchwright.present.internal.PastedCells;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is pasted for the cells of a grid lands in those cells, or nowhere. */
class PastedCellsTest {

    private static final WorkStage STAGE = (WorkStage) SamplePlan.acceptance().stages().get(1);

    /** As many cells as that across, each read at three values. */
    private static Demand.ReadCell asked(int channels, int cell) {
        Move.Conclude no = new Move.Conclude(Verdict.REJECTED, "no");
        Action.Grid grid = new Action.Grid("shown", "shown", UnitOfMeasure.of("V"), List.of(axis("channel", channels), axis("applied", 3)), Duration.ZERO,
                new Expression.Name("shown"), Limits.between(Quantity.of("-9", "V"), Quantity.of("9", "V")), DecisionRule.SIMPLE, Optional.empty(), no, no);
        return new Demand.ReadCell(new Place(STAGE, STAGE.steps().get(0), false), grid, cell, List.of());
    }

    private static Action.Axis axis(String name, int values) {
        return new Action.Axis(name, IntStream.rangeClosed(1, values).mapToObj(i -> new Action.AxisValue(String.valueOf(i), Optional.empty())).toList(),
                Optional.empty());
    }

    /** {@code /} stands for a line break, {@code >} for a tab. */
    private static String pasted(String text) {
        return text.replace("/", "\r\n").replace('>', '\t');
    }

    @ParameterizedTest
    @CsvSource(delimiter = '~', value = {"1/2/3~[1, 2, 3]", "1/2/3//~[1, 2, 3]", "1>2>3~[1, 2, 3]", "1;2; 3;~[1, 2, 3]", "1,5/2,5~[1,5, 2,5]", "1//3~[1, , 3]",
        "1>>3~[1, , 3]", "1~[1]", "''~[]", "1>/2>/3>~[1, 2, 3]"})
    void aColumnOrARowIsTakenAsItStands(String text, String values) throws Exception {
        assertEquals(values, PastedCells.of(pasted(text), asked(4, 1)).toString());
    }

    @ParameterizedTest
    @CsvSource({"1>4>7>10/2>5>8>11/3>6>9>12", "1>2>3/4>5>6/7>8>9/10>11>12"})
    void theWholeGridIsTakenEitherWayRound(String text) throws Exception {
        assertEquals(IntStream.rangeClosed(1, 12).mapToObj(String::valueOf).toList(), PastedCells.of(pasted(text), asked(4, 0)));
        assertThrows(EntryRefusedException.class, () -> PastedCells.of(pasted(text), asked(4, 1)), "only from its first cell on");
    }

    /** Two columns are mostly what should be read and what was; of a square nobody can tell which way round it is. */
    @Test
    void whatCouldBeAnythingElseIsRefused() {
        assertThrows(EntryRefusedException.class, () -> PastedCells.of(pasted("1>1.1/2>2.1/3>3.1"), asked(2, 0)));
        assertThrows(EntryRefusedException.class, () -> PastedCells.of(pasted("1>2>3/4>5>6/7>8>9"), asked(3, 0)));
        assertThrows(EntryRefusedException.class, () -> PastedCells.of(pasted("1>2/3>4"), asked(4, 0)));
        assertThrows(EntryRefusedException.class, () -> PastedCells.of(pasted("/2/3"), asked(4, 0)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '~', value = {"1/2//4//~1; 2; ; 4", "1>2/3>4/~1 | 2; 3 | 4", "a line~a line"})
    void aFieldOfOneLineShowsWhereLinesAndCellsEnd(String text, String shown) {
        assertEquals(shown, PastedText.inOneLine(pasted(text)));
    }

    @Test
    void whatIsShownInOneLineIsTakenAsWhatWasPasted() throws Exception {
        String text = pasted("1>4>7>10/2>5>8>11/3>6>9>12/");
        assertEquals(PastedCells.of(text, asked(4, 0)), PastedCells.of(PastedText.inOneLine(text), asked(4, 0)));
    }
}
