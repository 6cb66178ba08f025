package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.present.UnitRow;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.workshop.tests.FullLedger;
import org.benchwright.workshop.tests.MovedTime;
import org.benchwright.workshop.tests.SamplePlan;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Fifty open tests in one window. What that costs is measured where a report is asked for (releng/measure-window). */
@ExtendWith(QuietLog.class)
class ManyUnitsWindowTest {

    private static final int UNITS = 50;
    private static final int UNIT_ROUNDS = 3;
    private static final int ROUNDS = 10;
    private static final int LONGEST = 12;
    private static final double MOST_MILLIS = 100;
    /** Of another family than the tests that fill the ledger. */
    private static final String P24 = "tarn-p24-acceptance.procedure";
    private static final double MOST_SHARE = 2;
    private static final long MOST_RESIDENT = 400;
    private static final Duration IDLE = Duration.ofSeconds(60);
    /** Of the shortest kind: fifty of them are also to be ended again. */
    private static final String SHORT = """
            procedure glance "A glance" revision 1 {
                applies to tarn_c16
                purpose "See that the unit is there."
                otherwise conclude undecided "It is not there."
                stage look "Look" {
                    step see "Look at the unit." takes 1 min {
                        confirm "It is there."
                    }
                }
                make safe "Make safe" {
                    step shut "Shut the drawer." takes 1 min {
                        confirm "It is shut."
                    }
                    otherwise release by supervisor "It does not shut."
                }
                conclude accepted "It is there."
            }
            """;

    @TempDir
    private Path folder;

    @Test
    void theKeyGoesThroughFiftyUnitsAndEachHasItsOwnCard() throws Exception {
        List<OpenTest> tests = opened(written(), "C16-52%04d", true);
        try {
            List<String> order = Technician.desk().units().stream().map(UnitRow::test).filter(id -> tests.stream().anyMatch(test -> test.id().equals(id))).toList();
            assertEquals(UNITS, order.size());
            Technician.look(held(order.get(0)));
            for (String next : order.subList(1, UNITS)) {
                Screen.entryFields().get(0).setText("half an answer");
                Screen.command("org.benchwright.ui.nextUnit");
                assertEquals(next, Technician.desk().selected());
                OpenTest test = held(next);
                assertEquals("It is there. Is that so?", Technician.seen(test).card().question());
                Screen.waitFor("its row", () -> selectedRow().contains(test.shown().serial()));
                assertTrue(Screen.entryFields().get(0).isFocusControl(), "typed into at once");
                assertEquals("", Screen.entryFields().get(0).getText(), "nothing of what was typed for another unit");
            }
            OpenTest middle = held(order.get(UNITS / 2));
            Technician.look(middle);
            Technician.enter(middle, "yes");
            Screen.waitFor("the answer", () -> middle.shown().version() > 1);
            assertEquals("It is shut. Is that so?", Technician.seen(middle).card().question());
            assertTrue(tests.stream().filter(test -> test != middle).allMatch(test -> test.shown().version() == 1), "nobody else's");
        } finally {
            end(tests);
        }
    }

    /** What somebody waits for who goes from unit to unit and from view to view, and what the window costs that nobody touches. */
    @Test
    void measured() throws Exception {
        String report = System.getProperty("benchwright.window.report", "");
        assumeTrue(!report.isEmpty());
        int full = Integer.getInteger("benchwright.bench.tests", 0);
        if (full > 0) {
            FullLedger.make(Technician.desk().ledger(), new MovedTime(), SamplePlan.acceptance(), SamplePlan.TEXT, full);
        }
        Technician.approve(P24);
        List<OpenTest> tests = opened(Technician.procedures().resolve(P24), "P24-53%04d", false);
        Switches firstUnits = new Switches("next unit, first time round");
        Switches units = new Switches("next unit");
        Switches firstViews = new Switches("a view or perspective, first time");
        Switches views = new Switches("another view");
        Switches perspectives = new Switches("another perspective");
        for (int round = 0; round < UNIT_ROUNDS; round++) {
            for (int i = 0; i < UNITS; i++) {
                nextUnit(round == 0 ? firstUnits : units);
            }
        }
        for (int round = 0; round < ROUNDS; round++) {
            for (String view : List.of(Ids.RECEIVED_VIEW, Ids.INSTRUMENTS_VIEW, Ids.CARD_VIEW, Ids.UNITS_VIEW, Ids.SO_FAR_VIEW, Ids.CARD_VIEW)) {
                (round == 0 ? firstViews : views).take(name(view), () -> switched(() -> Screen.page().showView(view)));
            }
        }
        Idle idle = Idle.measured();
        // At the end: the auditor's reads all records as soon as it is opened, and goes on with it behind what comes next.
        for (int round = 0; round < ROUNDS; round++) {
            for (String perspective : List.of(Ids.AUTHOR, Ids.AUDIT, Ids.BENCH)) {
                (round == 0 ? firstViews : perspectives).take(name(perspective), () -> switched(() -> Screen.perspective(perspective)));
            }
        }
        Switches[] kinds = {firstUnits, units, firstViews, views, perspectives};
        String table = String.format(Locale.ROOT, "%d open tests in the window, %d more in the ledger; ms from the key to what was drawn%n", tests.size(), full)
                + Switches.heading() + Stream.of(kinds).map(Switches::line).collect(Collectors.joining()) + Switches.longest(LONGEST, kinds) + idle.line();
        List<String> missed = new ArrayList<>();
        // What is shown for the first time is made then; it is told above, but isn't a switch.
        if (Stream.of(firstUnits, units, views, perspectives).anyMatch(kind -> kind.most() >= MOST_MILLIS)) {
            missed.add("a unit, a view or a perspective came later than " + MOST_MILLIS + " ms");
        }
        if (idle.share() >= MOST_SHARE || idle.resident() >= MOST_RESIDENT) {
            missed.add("left alone it takes " + MOST_SHARE + " % of a processor or " + MOST_RESIDENT + " MiB or more");
        }
        Files.writeString(Path.of(report), table + (missed.isEmpty() ? "result: ok\n" : "result: missed, " + String.join(", ", missed) + "\n"));
    }

    private Path written() throws IOException {
        try (Stream<Path> files = Files.list(Technician.procedures())) {
            for (Path family : files.filter(file -> file.toString().endsWith(".family")).toList()) {
                Files.copy(family, folder.resolve(family.getFileName()));
            }
        }
        return Files.writeString(folder.resolve("glance.procedure"), SHORT);
    }

    private static List<OpenTest> opened(Path procedure, String serials, boolean rehearsal) throws Exception {
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.CARD_VIEW);
        Desk desk = Technician.desk();
        List<OpenTest> tests = new ArrayList<>();
        for (int i = 0; i < UNITS; i++) {
            CompletableFuture<OpenTest> opening = desk.open(new Desk.Request(procedure, String.format(Locale.ROOT, serials, i), "QN", "bench 1", rehearsal));
            Screen.waitFor("a test", opening::isDone);
            tests.add(opening.get());
        }
        Screen.waitFor("all of them in the list", () -> desk.units().stream().map(UnitRow::test).toList().containsAll(tests.stream().map(OpenTest::id).toList()));
        Technician.seen(tests.get(UNITS - 1));
        return tests;
    }

    private static OpenTest held(String test) {
        return Technician.desk().held(test).orElseThrow();
    }

    private static String selectedRow() {
        Table units = Screen.one(Table.class, table -> table.getColumnCount() == 1);
        return Optional.of(units.getSelection()).filter(rows -> rows.length == 1).map(rows -> rows[0].getText()).orElse("none");
    }

    /** What is over is let go of as soon as another unit is looked at. */
    private static void end(List<OpenTest> tests) {
        for (int question = 0; question < 2; question++) {
            tests.stream().filter(test -> test.shown().ending().isEmpty()).forEach(test -> {
                long version = test.shown().version();
                test.answer(version, List.of("yes"));
            });
            int answered = question;
            Screen.waitFor("all answers", () -> tests.stream().allMatch(test -> test.shown().ending().isPresent() || test.shown().version() > answered + 1));
        }
        tests.forEach(test -> Technician.desk().select(test.id()));
        Technician.desk().select("");
        Screen.settle();
    }

    // ---- measuring

    /** From the key to the drawn card. Whoever comes from another unit is asked which one this is: that is a second card, and waited for, too. */
    private static void nextUnit(Switches times) throws Exception {
        Desk desk = Technician.desk();
        List<String> order = desk.units().stream().map(UnitRow::test).toList();
        OpenTest next = held(order.get((order.indexOf(desk.selected()) + 1) % order.size()));
        long version = next.shown().version() + 1;
        String[] painted = {""};
        Listener paints = event -> {
            if (event.widget == Screen.card()) {
                painted[0] = Screen.asksFor();
            }
        };
        Display display = Display.getCurrent();
        display.addFilter(SWT.Paint, paints);
        try {
            times.take(next.shown().serial(), () -> {
                Screen.command("org.benchwright.ui.nextUnit");
                while (!painted[0].equals(next.id() + " " + version)) {
                    if (!display.readAndDispatch()) {
                        display.sleep();
                    }
                }
            });
        } finally {
            display.removeFilter(SWT.Paint, paints);
        }
    }

    private static String name(String id) {
        return id.substring(id.lastIndexOf('.') + 1);
    }

    private static void switched(Switches.Switching switching) throws Exception {
        switching.run();
        Screen.settle();
        Display.getCurrent().update();
    }

    /**
     * What the process costs while nobody does anything.
     *
     * @param share    of one processor, in percent
     * @param resident memory that it holds, in MiB as the system tells it; 0 where it tells nothing
     * @param heap     of that, objects, in MiB
     */
    private record Idle(double share, long resident, long heap) {

        static Idle measured() throws IOException {
            rest(Duration.ofSeconds(10));
            Duration before = processor();
            long begin = System.nanoTime();
            rest(IDLE);
            double share = (processor().toNanos() - before.toNanos()) * 100.0 / (System.nanoTime() - begin);
            Runtime java = Runtime.getRuntime();
            return new Idle(share, ManyUnitsWindowTest.resident(), (java.totalMemory() - java.freeMemory()) >> 20);
        }

        String line() {
            return String.format(Locale.ROOT, "left alone for %d s: %.2f %% of one processor; %d MiB resident, %d MiB of it objects%n", IDLE.toSeconds(), share, resident,
                    heap);
        }
    }

    private static void rest(Duration duration) {
        Display display = Display.getCurrent();
        boolean[] over = {false};
        display.timerExec((int) duration.toMillis(), () -> over[0] = true);
        while (!over[0]) {
            if (!display.readAndDispatch()) {
                display.sleep();
            }
        }
    }

    private static Duration processor() {
        return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
    }

    private static long resident() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status) ? Files.readAllLines(status).stream().filter(line -> line.startsWith("VmRSS:"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) >> 10).findFirst().orElse(0) : 0;
    }
}
