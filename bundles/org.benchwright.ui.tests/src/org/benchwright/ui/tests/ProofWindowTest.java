package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.language.proof.FlowPlace;
import org.benchwright.ui.internal.flow.FlowCanvas;
import org.benchwright.ui.internal.flow.PlacedFlow;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.IEditorPart;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** What a procedure proves, in the window: follows the text as it is typed, leads back into it, answers what if. */
@ExtendWith(QuietLog.class)
class ProofWindowTest {

    @TempDir
    Path temporary;
    private IEditorPart editor;

    @BeforeEach
    void openTheProcedure() throws Exception {
        editor = Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        Prover.waitForFlow("lamps");
    }

    @AfterEach
    void closeIt() throws Exception {
        Prover.lookAway();
        Engineer.closeAll();
    }

    /** The keys that make a flow larger or smaller do nothing to none, and it is as large as it fits when it comes. */
    @Test
    void aFlowThatIsNotThereYetIsOfNoSize() {
        Shell shell = new Shell(Screen.window().getShell());
        try {
            FlowCanvas canvas = new FlowCanvas(shell, place -> { }, place -> { });
            for (char key : "0+-".toCharArray()) {
                Event event = new Event();
                event.character = key;
                canvas.control().notifyListeners(SWT.KeyDown, event);
                assertEquals(0, canvas.scale());
            }
        } finally {
            shell.dispose();
        }
    }

    @Test
    void theDiagramHasAllPlacesApartFromEachOther() {
        PlacedFlow flow = Prover.flow().shown().orElseThrow();
        Set<String> names = flow.diagram().places().stream().map(FlowPlace::name).collect(Collectors.toSet());
        assertTrue(names.containsAll(Set.of("plate", "lamps", "endurance", "stop_log", "accepted", "rejected", "drain")), names.toString());
        for (FlowPlace one : flow.diagram().places()) {
            for (FlowPlace other : flow.diagram().places()) {
                assertTrue(one == other || apart(flow.box(one), flow.box(other)), one.name() + " and " + other.name());
            }
        }
        assertEquals(flow.box(Prover.place("plate")).x(), flow.box(Prover.place("lamps")).x(), 1, "the straight way runs in one line");
        assertTrue(Prover.labels().contains("C16 acceptance on the bench, revision 2"), Prover.labels().toString());
    }

    private static boolean apart(PlacedFlow.Box one, PlacedFlow.Box other) {
        return one.x() + one.width() <= other.x() || other.x() + other.width() <= one.x() || one.y() + one.height() <= other.y()
                || other.y() + other.height() <= one.y();
    }

    @Test
    void aClickLeadsToTheStepInTheTextAndTellsItsWays() {
        Prover.select("lamps");
        Prover.click("lamps");
        assertEquals("lamps", Engineer.text(editor).getSelectionText());
        Prover.look();
        Prover.waitForWords("pwr is not as expected");
    }

    @Test
    void theArrowKeysGoThroughTheDiagram() {
        Prover.select("lamps");
        Screen.key(Prover.flow().control(), SWT.ARROW_DOWN, '\0');
        assertEquals("as_found", Prover.flow().selected().orElseThrow().name());
        Screen.key(Prover.flow().control(), SWT.ARROW_UP, '\0');
        Screen.key(Prover.flow().control(), SWT.CR, '\r');
        assertEquals("lamps", Engineer.text(editor).getSelectionText());
        Prover.look();
        double before = Prover.flow().scale();
        Screen.key(Prover.flow().control(), '+', '+');
        assertTrue(Prover.flow().scale() > before);
        Screen.key(Prover.flow().control(), '0', '0');
        assertEquals(1, Prover.flow().scale(), 1e-9);
    }

    @Test
    void whatIsTypedIsProvedAnew() {
        Engineer.replace(editor, "step fit \"", "step fit_it \"");
        Prover.waitForFlow("fit_it");
        Prover.turnTo("Soak");
        Prover.waitForWords("with 90 % probability");
        Engineer.replace(editor, "lasting 72 h witnessed", "lasting 48 h witnessed");
        Prover.waitForWords("does NOT hold");
        Engineer.replace(editor, "lasting 48 h witnessed", "lasting 48 hh witnessed");
        Screen.waitFor("that it can't be told", () -> Prover.labels().stream().anyMatch(words -> words.startsWith("Can't be told until the error")));
    }

    @Test
    void whatIfTheSoakLastedLonger() {
        Prover.turnTo("Soak");
        Prover.whatIf(144);
        Prover.waitForPlot();
        // 144 h / ln 10 = 62.54 h; exp(-144/31) = 0.961 %
        Prover.waitForWords("With 144 h: 90 % for any fault at least once in 62 h 32 min; a fault every 31 h stays hidden with 0.97 %.");
        Table lengths = Screen.one(Table.class, table -> table.getColumnCount() == 6);
        assertEquals("144 h (asked)", lengths.getItem(lengths.getItemCount() - 1).getText(0));
    }
}
