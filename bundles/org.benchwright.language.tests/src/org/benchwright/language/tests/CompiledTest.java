package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.language.Checked;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.editing.Compiled;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Passage;
import org.benchwright.language.editing.Place;
import org.benchwright.language.internal.compile.PlanCompiler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Procedures compiled as their text stands in the editor: the same plan as from the disk, where its parts stand, and what is
 * in its way.
 */
class CompiledTest {

    private static final String FAMILY = "family wren \"Wren\" { lamp ok green \"Health\" }\n";
    private static final String SHARED = """
            shared stage look "Look" for wren {
                step eye "Look at it." { confirm "It is whole." or conclude rejected "It is broken." }
            }
            """;
    private static final String END = " make safe \"Make safe\" { step off \"Off.\" { isolates supply } } conclude accepted }\n";

    @TempDir
    private Path folder;

    private static List<Compiled> compiled(FolderSession session, Path file) {
        return session.compiled(file, Cancellation.never());
    }

    private static String words(FolderSession session, Place place) {
        String text = session.text(place.file()).orElseThrow();
        return text.substring(place.offset(), place.offset() + place.length());
    }

    private static String procedure(String name, String blocks) {
        return "procedure " + name + " \"P\" revision 1 { applies to wren " + blocks + END;
    }

    @Test
    void thePlanIsThatOfTheDisk() {
        Compiled compiled = compiled(DemoFolder.open(), DemoFolder.PROCEDURE).get(0);
        Reading.Ready read = (Reading.Ready) new ProcedureReader(LanguageServices.create()).read(DemoFolder.PROCEDURE);
        assertEquals(Optional.of(read.plan()), compiled.plan());
        assertEquals(List.of(), compiled.errors());
        assertEquals("c16_acceptance", compiled.name());
    }

    /** As everything that doesn't say for itself what follows, and as the flow and the remarks have it. */
    @Test
    void aSoakThatMayNotBeginOnceMoreEndsAsTheOtherwiseAroundItSays() {
        String gap = "gap at most 2 h, or begin again at most 1";
        String stopped = "when stopped outside conditions begin again at most 1";
        assertEquals(List.of("Could not be carried out.", "Could not be carried out."), exhausted(Bench.PROCEDURE));
        String own = "otherwise conclude undecided \"The soak was broken off.\"";
        assertEquals(List.of("The soak was broken off.", "The soak was broken off."),
                exhausted(Bench.PROCEDURE.replace("when stopped go to read_log", "when stopped go to read_log " + own)));
        assertEquals(List.of("Power.", "Warm."), exhausted(Bench.PROCEDURE.replace(gap, gap
                + ", or conclude undecided \"Power.\"")
                .replace(stopped, stopped + ", or conclude undecided \"Warm.\"")));
    }

    private static List<String> exhausted(String procedure) {
        Checked checked = Bench.check(Bench.FAMILY, procedure);
        assertEquals(List.of(), checked.remarks());
        SoakStage soak = (SoakStage) PlanCompiler.compile(checked.procedures().get(0)).stages().stream()
                .filter(SoakStage.class::isInstance).findFirst().orElseThrow();
        return Stream.of(soak.gap().orElseThrow().instead(), soak.stoppedOutside())
                .map(move -> ((Move.Conclude) ((Move.BeginAgain) move).bound().instead()).reason()).toList();
    }

    @Test
    void everyPartOfThePlanHasItsPlace() {
        FolderSession session = DemoFolder.open();
        Compiled compiled = compiled(session, DemoFolder.PROCEDURE).get(0);
        Plan plan = compiled.plan().orElseThrow();
        Set<String> expected = new TreeSet<>(List.of("family", "stage.make_safe"));
        plan.hazards().forEach(hazard -> expected.add("hazard." + hazard.name()));
        plan.instruments().forEach(instrument -> expected.add("instrument." + instrument.name()));
        plan.preconditions().forEach(precondition -> expected.add("precondition." + precondition.name()));
        plan.stages().forEach(stage -> expected.add("stage." + stage.name()));
        plan.stages().stream().filter(WorkStage.class::isInstance).flatMap(stage -> ((WorkStage) stage).steps().stream())
                .forEach(step -> expected.add("step." + step.name()));
        plan.makeSafe().steps().forEach(step -> expected.add("step." + step.name()));
        assertEquals(expected, new TreeSet<>(compiled.passages().keySet()));
        compiled.passages().forEach((key, passage) -> {
            String name = key.equals("family") ? "tarn_c16" : key.equals("stage.make_safe") ? "make"
                    : key.substring(key.indexOf('.') + 1);
            assertTrue(words(session, passage.name()).startsWith(name), () -> key + ": " + words(session, passage.name()));
            assertTrue(passage.holds(passage.name().file(), passage.name().offset()), key);
        });
        Passage lamps = compiled.passages().get("step.lamps");
        assertTrue(words(session, lamps.whole()).startsWith("step lamps \"") && words(session, lamps.whole()).endsWith("}"));
    }

    @Test
    void oneMistakeInASharedStageIsOneRemark() throws IOException {
        Files.writeString(folder.resolve("wren.family"), FAMILY);
        String shared = """
                import "wren.family"
                shared stage rest "Rest" for wren (volts in V) {
                    step twice "Wait." { wait volts }
                    step twice "Wait again." { wait 1 s wait 2 V }
                }
                """;
        Path file = Files.writeString(folder.resolve("p.procedure"), shared
                + procedure("p", "carry out rest(volts = 24 V) carry out rest(volts = 12 V) as again"));
        List<String> found = FolderSession.open(folder).remarks(Cancellation.never()).get(file).stream()
                .map(each -> each.line() + " " + each.code() + " " + each.words()).toList();
        assertEquals(List.of("3 WRONG_DIMENSION 'V' measures something else; expected is a unit such as s.",
                "4 DUPLICATE_NAME There is a 'twice' of this kind already in line 3.",
                "4 WRONG_DIMENSION 'V' measures something else; expected is a unit such as s."), found);
    }

    @Test
    void aMistakeInASharedStageOfAnotherFileIsOneRemarkThatTellsWhereItIs() throws IOException {
        Files.writeString(folder.resolve("wren.family"), FAMILY);
        Path shared = folder.resolve("rest stages.procedure");
        String stage = """
                import "wren.family"
                shared stage rest "Rest" for wren (time in s) {
                    step once "Wait." { wait time }
                    step twice "Look." { confirm "It is whole." }
                }
                """;
        Files.writeString(shared, stage);
        Path file = Files.writeString(folder.resolve("p.procedure"), procedure("p", """
                carry out rest(time = 1 s)
                carry out rest(time = 2 s) as again
                """));
        FolderSession session = FolderSession.open(folder);
        String words = RemarkCode.NO_OUTCOME + " " + RemarkCode.NO_OUTCOME.text() + " (rest stages.procedure, line %d)";
        assertEquals(List.of(words.formatted(4)), found(session, file));
        session.change(shared, "// Moved.\n" + stage);
        assertEquals(List.of(words.formatted(5)), found(session, file), "where it is now");
        session.change(shared, stage.replace("wait time }", "confirm \"It is dry.\" }"));
        assertEquals(List.of(words.formatted(3), words.formatted(4)), found(session, file), "each of them");
    }

    private static List<String> found(FolderSession session, Path file) {
        return session.remarks(Cancellation.never()).get(file).stream().map(each -> each.code() + " " + each.words())
                .toList();
    }

    @Test
    void whatTheBenchHasToBeReachesThePlan() {
        Plan plan = compiled(DemoFolder.open(), DemoFolder.PROCEDURE.resolveSibling("tarn-p24-acceptance.procedure")).get(0)
                .plan().orElseThrow();
        assertEquals(Optional.of(Duration.ofHours(12)), plan.needsBenchProvedWithin());
        assertEquals(Optional.of(InstrumentSpec.PastDue.REFUSED), plan.instrument("bond_tester").orElseThrow().pastDue());
        assertEquals(Optional.empty(), plan.instrument("meter").orElseThrow().pastDue(), "a departure");
    }

    @Test
    void aSharedStageStandsInItsOwnFile() throws IOException {
        Files.writeString(folder.resolve("wren.family"), FAMILY + SHARED);
        Path file = Files.writeString(folder.resolve("p.procedure"),
                procedure("p", "carry out look carry out look as again"));
        FolderSession session = FolderSession.open(folder);
        Compiled compiled = compiled(session, file).get(0);
        assertEquals(List.of(), compiled.errors());
        assertEquals("eye", words(session, compiled.passages().get("step.again_eye").name()));
        assertEquals(folder.resolve("wren.family"), compiled.passages().get("step.again_eye").name().file());
        assertTrue(words(session, compiled.passages().get("stage.again").whole()).startsWith("carry out look as again"));
        assertEquals(file, compiled.passages().get("stage.again").whole().file());
    }

    private Plan plan(String family, String procedures) throws IOException {
        Files.writeString(folder.resolve("wren.family"), family);
        Path file = Files.writeString(folder.resolve("p.procedure"), procedures);
        Compiled compiled = compiled(FolderSession.open(folder), file).get(0);
        assertEquals(List.of(), compiled.errors());
        return compiled.plan().orElseThrow();
    }

    private static List<Action> actions(Plan plan, String step) {
        return plan.steps().filter(each -> each.name().equals(step)).findFirst().orElseThrow().actions();
    }

    @Test
    void whatTheProcedureDeclaresItselfCountsInASharedStage() throws IOException {
        String shared = """
                shared stage rail "Rail" for wren {
                    instrument gauge "Gauge" reads V up to 60 V, uncertainty at most 0.1 V
                    instrument probe "Probe" reads V up to 9 V
                    step found "Measure." { measure volts with gauge, limits 1 .. 2 V measure again with probe, limits 1 .. 2 V }
                }
                """;
        Plan plan = plan(FAMILY + shared, procedure("p",
                "instrument gauge \"Own gauge\" reads V up to 60 V, uncertainty at most 0.5 V "
                + "otherwise conclude undecided \"Not told.\" carry out rail"));
        assertEquals(List.of("Own gauge", "Probe"), plan.instruments().stream().map(InstrumentSpec::title).toList());
        assertEquals("0.5 V", plan.instrument("gauge").orElseThrow().maxUncertainty().orElseThrow().toString());
        assertEquals(List.of(new Move.Conclude(Verdict.UNDECIDED, "Not told."),
                new Move.Conclude(Verdict.UNDECIDED, "Not told.")),
                actions(plan, "found").stream().map(measure -> ((Action.Measure) measure).rejected())
                        .toList(), "the otherwise around it holds");
    }

    @Test
    void whatTheFamilyDoesNotDeclareIsLoadedByItsNameWithSpaces() throws IOException {
        Plan plan = plan(FAMILY, procedure("p", "otherwise conclude undecided \"No.\" stage s \"S\" { step a \"A.\" { load only bench_program leave out old_one } }"));
        Action.Choose choose = (Action.Choose) actions(plan, "a").get(0);
        assertEquals("bench program", choose.only().get(0).title());
        assertEquals("old one", choose.spare().get(0).title());
    }

    @Test
    void aStepThatAsksNothingIsConfirmedAsDone() throws IOException {
        Plan plan = plan(FAMILY + "family jay \"Jay\" { fault F1 \"Fault\" }",
                procedure("p", "stage s \"S\" { step a \"Turn it round.\" { reveals F1 } "
                + "step b \"End.\" { conclude accepted } }").replace("applies to wren",
                        "applies to jay otherwise conclude rejected \"It would not turn.\""));
        Action.Confirm done = (Action.Confirm) actions(plan, "a").get(0);
        assertEquals(new Move.Conclude(Verdict.REJECTED, "It would not turn."), done.failed());
        assertEquals(List.of("Confirm", "End"), actions(plan, "b").stream().map(action -> action.getClass().getSimpleName())
                .toList());
    }

    /** What else in its step is called so has no part in it. */
    @Test
    void aValueIsDerivedFromTheMeasurementOfThatName() throws IOException {
        Plan plan = plan(FAMILY, procedure("p", "instrument gauge \"Gauge\" reads V up to 60 V otherwise conclude rejected \"No.\" stage s \"S\" { step a \"A.\" { "
                + "mark ok \"Press.\" expect ok steady within 5 s of ok measure ok with gauge, limits 1 .. 2 V } step b \"B.\" { derive more as ok + 1 V, limits 2 .. 3 V } }"));
        Set<String> measured = actions(plan, "a").stream().filter(Action.Measure.class::isInstance)
                .map(action -> "a." + action.id()).collect(Collectors.toSet());
        Action.Derive derived = actions(plan, "b").stream().filter(Action.Derive.class::isInstance)
                .map(Action.Derive.class::cast).findFirst().orElseThrow();
        Expression.Sum more = (Expression.Sum) derived.value();
        assertEquals(measured, Set.of(((Expression.Name) more.left()).name()));
        Action.Expect expect = (Action.Expect) actions(plan, "a").stream().filter(Action.Expect.class::isInstance)
                .findFirst().orElseThrow();
        assertTrue(actions(plan, "a").stream().anyMatch(action -> action instanceof Action.Mark mark
                && mark.id().equals(expect.window().mark())));
    }

    @Test
    void errorsOfWhatItUsesAreInItsWay() throws IOException {
        Path family = Files.writeString(folder.resolve("wren.family"), FAMILY);
        Path file = Files.writeString(folder.resolve("p.procedure"),
                procedure("p", "stage s \"S\" { step a \"A.\" { confirm \"Yes.\" or conclude rejected \"No.\" } }"));
        FolderSession session = FolderSession.open(folder);
        assertTrue(compiled(session, file).get(0).plan().isPresent());
        session.change(family, FAMILY.replace("}", "lamp ok red \"Twice\" }"));
        Compiled compiled = compiled(session, file).get(0);
        assertEquals(Optional.empty(), compiled.plan());
        assertTrue(compiled.errors().stream().allMatch(remark -> remark.code() == RemarkCode.DUPLICATE_NAME
                && remark.file().equals(family)),
                compiled.errors().toString());
        assertTrue(!compiled.errors().isEmpty());
    }

    /** Where every way is concluded before it, nothing is said at the end, and nothing has to be. */
    @Test
    void whatIsConcludedEarlierNeedsNoConclusionAtTheEnd() throws IOException {
        Files.writeString(folder.resolve("wren.family"), FAMILY);
        String withAnEnd = procedure("p", "stage s \"S\" { step a \"A.\" { confirm \"Yes.\" or conclude rejected \"No.\" conclude accepted } }");
        Path file = Files.writeString(folder.resolve("p.procedure"),
                withAnEnd.replace(END, END.replace("conclude accepted", "")));
        FolderSession session = FolderSession.open(folder);
        Compiled compiled = compiled(session, file).get(0);
        assertEquals(List.of(), compiled.errors());
        assertEquals(Verdict.UNDECIDED, compiled.plan().orElseThrow().end()
                .verdict(), "what nobody reaches accepts nothing");
    }

    @Test
    void anErrorInsideAnotherProcedureIsNotItsOwn() throws IOException {
        Files.writeString(folder.resolve("wren.family"), FAMILY);
        String sound = procedure("sound", "stage s \"S\" { step a \"A.\" { confirm \"Yes.\" or conclude rejected \"No.\" } }");
        Path file = Files.writeString(folder.resolve("p.procedure"), sound
                + procedure("broken", "stage s \"S\" { step a \"A.\" { go to nowhere } }"));
        FolderSession session = FolderSession.open(folder);
        List<Compiled> both = compiled(session, file);
        assertTrue(both.get(0).plan().isPresent(), both.get(0).errors().toString());
        assertEquals(List.of(RemarkCode.UNKNOWN_STEP_OR_STAGE), both.get(1).errors().stream().map(remark -> remark.code())
                .toList());
        session.change(file, sound + "procedure {");
        assertTrue(compiled(session, file).stream().allMatch(each -> each.plan().isEmpty()));
    }

    @Test
    void nothingIsCompiledWhereNoProcedureIs() throws IOException {
        Path family = Files.writeString(folder.resolve("wren.family"), FAMILY);
        FolderSession session = FolderSession.open(folder);
        assertEquals(List.of(), compiled(session, family));
        assertEquals(List.of(), compiled(session, folder.resolve("none.procedure")));
    }

    /** The text is cut off after every 97 characters: nothing that is left makes it fail, and none of it has a plan. */
    @Test
    void noBrokenTextMakesItFail() {
        FolderSession session = DemoFolder.open();
        String sound = DemoFolder.text(session, DemoFolder.PROCEDURE);
        int found = 0;
        for (int end = 0; end < sound.length(); end += 97) {
            session.change(DemoFolder.PROCEDURE, sound.substring(0, end));
            int at = end;
            List<Compiled> cut = compiled(session, DemoFolder.PROCEDURE);
            cut.forEach(each -> assertTrue(each.plan().isEmpty(), () -> "cut at " + at));
            found += cut.size();
        }
        assertTrue(found > 0, "what is left of the procedure was seen");
    }
}
