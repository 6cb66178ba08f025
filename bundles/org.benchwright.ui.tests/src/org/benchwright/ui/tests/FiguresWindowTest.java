package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.core.Plot;
import org.benchwright.present.FigureFilter;
import org.benchwright.present.Figures;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.audit.FiguresJob;
import org.benchwright.ui.internal.audit.FiguresView;
import org.benchwright.ui.internal.audit.PlotCanvas;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.List;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Figures read in the window. */
@ExtendWith(QuietLog.class)
class FiguresWindowTest {

    @Test
    void figuresAreReadAndToldWhereNothingCanBeDrawn() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-300009", true);
        Technician.finish(test, Answers.of("rejected-at-power-up"));
        Screen.perspective(Ids.AUDIT);
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().showView(Ids.FIGURES_VIEW);
        unit("C16-300009");
        Screen.press("Read the figures");
        // Another test may have read those of all units before.
        Screen.waitFor("the figures of that unit", () -> Screen.story("First-pass yield").contains("No first test has ended with a verdict."));
        assertTrue(titles().getItemCount() >= 6, titles().getItemCount() + " titles");
        assertTrue(titles().getItem(0).equals("First-pass yield"), titles().getItem(0));
        assertTrue(Screen.story("First-pass yield").contains("Left out: "), Screen.story("First-pass yield"));
        assertTrue(Screen.one(Button.class, button -> button.getText().startsWith("Write the numbers")).isEnabled());
    }

    /** Of what it was to find there is only a part. */
    @Test
    void ofAReadingThatWasGivenUpNothingIsTold() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-300010", true);
        Technician.finish(test, Answers.of("rejected-at-power-up"));
        FigureFilter all = new FigureFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), ZoneId.systemDefault(),
                LocalDate.now(ZoneId.systemDefault()));
        assertEquals(java.util.List.of("begun", "read"), told(all, job -> { }), "one that goes on to its end");
        assertEquals(java.util.List.of("begun"), told(all, Job::cancel));
    }

    /** What is told by a job that somebody does something with as soon as it has begun. */
    private static java.util.List<String> told(FigureFilter filter, Consumer<Job> meanwhile) throws InterruptedException {
        java.util.List<String> told = new CopyOnWriteArrayList<>();
        AtomicReference<Job> job = new AtomicReference<>();
        job.set(new FiguresJob(Technician.desk().ledger(), PlatformUI.getWorkbench().getService(StillWindow.class), filter, new FiguresJob.Watcher() {
            @Override
            public void derived(long tests) {
                if (tests == 0) {
                    told.add("begun");
                    meanwhile.accept(job.get());
                }
            }

            @Override
            public void read(Figures figures) {
                told.add("read");
            }

            @Override
            public void failed(String words) {
                told.add(words);
            }
        }));
        job.get().schedule();
        job.get().join();
        return told;
    }

    @Test
    void theNumbersOfAllFiguresAreWrittenIntoAFolder(@TempDir Path folder) throws Exception {
        Auditor.test(folder, "F-300053", true);
        Screen.perspective(Ids.AUDIT);
        FiguresView view = (FiguresView) Screen.page().showView(Ids.FIGURES_VIEW);
        unit("");
        Screen.press("Read the figures");
        Screen.waitFor("the figures of all units", () -> Screen.story("First-pass yield").contains(" ended with a verdict")
                && !Screen.story("First-pass yield").contains("C16-300009"));
        tableIsCopied();
        Path into = folder.resolve("numbers");
        view.writeNumbers(into);
        Screen.waitFor("that they are written", () -> Screen.story("First-pass yield").contains(" files in " + into + "."));
        try (Stream<Path> files = Files.list(into)) {
            java.util.List<Path> written = files.toList();
            assertTrue(Screen.story("First-pass yield").contains("Written: " + written.size() + " files"), Screen.story("First-pass yield"));
            assertTrue(!written.isEmpty(), Screen.story("First-pass yield"));
            for (Path each : written) {
                assertTrue(each.toString().endsWith(".csv"), each.toString());
                assertTrue(Files.readAllLines(each).get(0).contains(","), "headings: " + each);
            }
        }
        Path taken = Files.writeString(folder.resolve("taken"), "a file");
        view.writeNumbers(taken);
        Screen.waitFor("why not", () -> Screen.story("First-pass yield").contains("The numbers can't be written to " + taken));
    }

    /** The tables of a figure have columns, and go into a spreadsheet as they are. */
    private static void tableIsCopied() {
        Optional<Table> found = Optional.empty();
        for (int i = 0; i < titles().getItemCount() && found.isEmpty(); i++) {
            titles().select(i);
            titles().notifyListeners(SWT.Selection, new Event());
            Screen.settle();
            assertFalse(Screen.story(titles().getItem(i)).contains("  |  "), Screen.story(titles().getItem(i)));
            found = Screen.all(Table.class).filter(table -> (table.getStyle() & SWT.MULTI) != 0 && table.getItemCount() > 0).findFirst();
        }
        Table table = found.orElseThrow();
        Event copy = new Event();
        copy.keyCode = 'c';
        copy.stateMask = SWT.MOD1;
        table.notifyListeners(SWT.KeyDown, copy);
        java.util.List<String> lines = Screen.copied().lines().toList();
        assertEquals(table.getItemCount() + 1, lines.size());
        assertEquals(Stream.of(table.getColumns()).map(TableColumn::getText).toList(), java.util.List.of(lines.get(0).split("\t", -1)));
        assertEquals(table.getItem(0).getText(1), lines.get(1).split("\t", -1)[1]);
        titles().select(0);
        titles().notifyListeners(SWT.Selection, new Event());
    }

    @Test
    void aPlotIsDrawnElsewhereAndFollowsTheSize() throws Exception {
        Plot plot = new Plot("What the soak finds", "hours", "%", Plot.Scale.NUMBERS, java.util.List.of(), java.util.List.of(
                new Plot.Series("seen", Plot.Role.STEPS, java.util.List.of(0.0, 24.0, 72.0), java.util.List.of(100.0, 90.0, 85.0))));
        Shell shell = new Shell(Screen.window().getShell());
        shell.setLayout(new FillLayout());
        PlotCanvas canvas = new PlotCanvas(shell);
        canvas.show(Optional.of(plot));
        for (int width : new int[] {500, 900}) {
            shell.setSize(width, 400);
            shell.open();
            Screen.waitFor("ink at both sides", () -> ink(canvas, 0.1) && ink(canvas, 0.9));
        }
        canvas.show(Optional.empty());
        Screen.waitFor("an empty ground", () -> !ink(canvas, 0.1) && !ink(canvas, 0.9));
        shell.close();
    }

    /** Whether anything but the ground is to be seen in a column at this part of the width. */
    private static boolean ink(PlotCanvas canvas, double part) {
        Point size = canvas.control().getSize();
        Image image = new Image(canvas.control().getDisplay(), size.x, size.y);
        GC gc = new GC(canvas.control());
        gc.copyArea(image, 0, 0);
        gc.dispose();
        ImageData data = image.getImageData();
        image.dispose();
        int column = (int) (part * (size.x - 1));
        return IntStream.range(0, size.y).map(row -> data.getPixel(column, row)).distinct().count() > 1;
    }

    /** Other tests of this window may have ended with a verdict. */
    private static void unit(String serial) {
        Screen.one(Text.class, text -> text.getMessage().equals("any serial number")).setText(serial);
    }

    private static List titles() {
        return Screen.one(List.class, list -> true);
    }
}
