package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.Limits;
import org.benchwright.core.PrintedText;
import org.benchwright.core.PrintedText.Part;
import org.benchwright.core.Quantity;
import org.benchwright.core.SignalWord;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.present.AsPrinted;
import org.benchwright.present.internal.printed.PrintedWords;
import org.benchwright.workshop.tests.ChangedPlan;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A procedure as it is printed: nothing of the plan is left out, in the words of the cards. */
class AsPrintedTest {

    private static final Plan PLAN = EveryKind.plan();
    private static final PrintedText PRINTED = AsPrinted.of(PLAN);

    /** Everything that is read, hazards and notes too. */
    private static String words(PrintedText text) {
        return text.parts().stream().map(AsPrintedTest::words).collect(Collectors.joining("\n"));
    }

    private static String words(Part part) {
        if (part instanceof PrintedText.Title title) {
            return title.words() + "\n" + title.below();
        } else if (part instanceof PrintedText.Hazard hazard) {
            return hazard.word() + "\n" + String.join("\n", hazard.sentences());
        } else if (part instanceof PrintedText.Asked asked) {
            return "[ ] " + asked.words() + "\n" + String.join("\n", asked.notes());
        } else if (part instanceof PrintedText.Told told) {
            return told.words() + "\n" + String.join("\n", told.notes());
        } else if (part instanceof PrintedText.Rows rows) {
            return rows.table().rows().toString();
        } else if (part instanceof PrintedText.Heading heading) {
            return heading.words();
        } else if (part instanceof PrintedText.Instruction instruction) {
            return instruction.words();
        }
        return ((PrintedText.Sentence) part).words();
    }

    @ParameterizedTest
    @ValueSource(classes = { Action.class, Move.class, Signal.class, Stage.class, Expression.class })
    void thePlanOfThisTestHasEveryKind(Class<?> sealed) {
        Set<Class<?>> there = PlanWalk.of(PLAN).stream().map(Object::getClass).collect(Collectors.toSet());
        assertEquals(Set.of(), Arrays.stream(sealed.getPermittedSubclasses()).filter(kind -> !there.contains(kind)).collect(Collectors.toSet()));
    }

    @Test
    void nothingThatPeopleReadIsLeftOut() {
        String printed = words(PRINTED).toLowerCase(Locale.ROOT);
        for (Object part : PlanWalk.of(PLAN)) {
            if (part instanceof String || part instanceof Quantity || part instanceof Limits) {
                assertTrue(printed.contains(part.toString().toLowerCase(Locale.ROOT)), () -> part + " is missing in\n" + printed);
            } else if (part instanceof Duration time && !time.isZero()) {
                assertTrue(printed.contains(Durations.words(time)), () -> time + " is missing");
            }
        }
    }

    @Test
    void eachStepAndStageCanBeFound() {
        Set<String> about = PRINTED.parts().stream().map(Part::about).collect(Collectors.toSet());
        Stream<Stage> stages = Stream.concat(PLAN.stages().stream(), Stream.of(PLAN.makeSafe()));
        stages.forEach(stage -> {
            assertTrue(about.contains("stage." + stage.name()), stage.name());
            List<org.benchwright.engine.plan.Step> steps = stage instanceof WorkStage work ? work.steps() : List.of();
            steps.forEach(step -> assertTrue(about.contains("step." + step.name()), step.name()));
        });
        assertTrue(about.containsAll(List.of("hazard.mains", "instrument.meter", "precondition.strap", "family")), about.toString());
    }

    @Test
    void theWordsAreThoseOfTheCards() {
        String printed = words(PRINTED);
        assertTrue(printed.contains("[ ] Measure supply volts with the Multimeter. Limits: 23.5 .. 24.5 V."), printed);
        assertTrue(printed.contains("[ ] PROTECTED, the owner must not lose it. Do not erase Owner's program. Is it spared?"), printed);
        assertTrue(printed.contains("[ ] Reading 1 of 2, at channel 1, applied 4 mA: enter shown. Let it settle for 2 s first."), printed);
        assertTrue(printed.contains("[ ] Apply 10 A with the Electronic load. Is 10 A applied?"), printed);
        assertTrue(printed.contains("[ ] Apply 3 A. Is 3 A applied?"), printed);
        assertTrue(printed.contains("drop = supply volts - (ripple + 0.25 V)"), printed);
    }

    @Test
    void whereItLeadsIsSaidByNumber() {
        String printed = words(PRINTED);
        assertTrue(printed.contains("If yes: the test goes on at 2.2, Power up. At most 3 times; after that the test ends as undecided. "
                + "The drop could not be told."), printed);
        assertTrue(printed.contains("Here the test goes on at 6, Second soak."), printed);
        assertTrue(printed.contains("Rejected: no further without a release (supervisor): The card is used as it is."), printed);
    }

    @Test
    void aDangerIsShownInFullEachTimeAndTheOthersOnce() {
        List<PrintedText.Hazard> hazards = PRINTED.parts().stream().filter(PrintedText.Hazard.class::isInstance).map(PrintedText.Hazard.class::cast)
                .toList();
        assertEquals(2, hazards.stream().filter(hazard -> hazard.signal() == SignalWord.DANGER && hazard.sentences().size() == 3).count());
        assertEquals(1, hazards.stream().filter(hazard -> hazard.signal() == SignalWord.NOTICE && hazard.sentences().size() == 3).count());
    }

    @Test
    void oneSentenceForAllChecksThatLeadToTheSame() {
        String lamps = words(AsPrinted.of(SamplePlan.acceptance()));
        assertEquals(2, lamps.split("Power-up self-check failed", -1).length, lamps);
        assertTrue(lamps.contains("If any of this is not so: the test ends as rejected. Power-up self-check failed"), lamps);
    }

    @Test
    void everyTextIsThereAndUsed() {
        ResourceBundle bundle = ResourceBundle.getBundle("org.benchwright.present.internal.printed.words", Locale.ROOT,
                PrintedWords.class.getClassLoader());
        assertEquals(Arrays.stream(PrintedWords.values()).map(Enum::name).collect(Collectors.toSet()), bundle.keySet());
        for (PrintedWords word : PrintedWords.values()) {
            assertFalse(word.text(1, 2, 3, 4, 5).contains("{"), word.name());
        }
    }

    /** The sample with another answer to what a gap in its soak leads to. */
    private static Plan withGap(Optional<SoakStage.Gap> gap) {
        return ChangedPlan.of(SamplePlan.acceptance()).soaks(soak -> new SoakStage(soak.name(), soak.title(), soak.hazards(), soak.lasting(), soak.keep(),
                soak.conditions(), soak.lookEvery(), soak.lookTolerance(), gap, soak.stopped(), soak.stoppedOutside(), soak.watch())).plan();
    }

    private static String afterPowerLost(Move instead) {
        String printed = words(AsPrinted.of(withGap(Optional.of(new SoakStage.Gap(Duration.ofHours(2), instead)))));
        return printed.lines().filter(line -> line.startsWith("Power was lost: ")).findFirst().orElseThrow();
    }

    @Test
    void aLossOfPowerLeadsWhereTheEngineGoes() {
        String anew = "Power was lost: the test goes back to the last step that began with everything off; the unit is powered up anew, and the"
                + " soak begins again, from nothing.";
        Move elsewhere = new Move.GoTo("read_log", "log", Optional.empty());
        String undecided = "the test ends as undecided.";
        assertEquals(anew + " At most 2 times; after that the test ends as rejected. Twice.",
                afterPowerLost(new Move.BeginAgain(new Move.Bound(2, new Move.Conclude(Verdict.REJECTED, "Twice.")))));
        assertEquals(anew + " At most once; after that " + undecided, afterPowerLost(new Move.BeginAgain(new Move.Bound(1, elsewhere))));
        assertEquals("Power was lost: " + undecided, afterPowerLost(elsewhere));
        assertTrue(words(AsPrinted.of(withGap(Optional.empty()))).contains("Power was lost: " + undecided));
    }
}
