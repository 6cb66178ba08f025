package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.engine.plan.Plan;
import org.benchwright.language.Revisions;
import org.benchwright.language.internal.compile.PlanCompiler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A change of meaning is said in a sentence, a change of blanks, comments or spelling in none. */
class RevisionsTest {

    private static Plan plan(String procedure) {
        return PlanCompiler.compile(Bench.check(Bench.FAMILY, procedure).procedures().get(0));
    }

    private static List<String> changed(String from, String to) {
        assertTrue(Bench.PROCEDURE.contains(from), from);
        return Revisions.differences(plan(Bench.PROCEDURE), plan(Bench.PROCEDURE.replace(from, to)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "limits 23.5 .. 24.5 V, decide guarded both ways|limits 23.5 .. 24.3 V, decide guarded both ways|power_up, supply, supply_volts, limits: upper limit 24.5 V became 24.3 V",
        "revision 3|revision 4|revision 3 became 4",
        "lasting 72 h|lasting 96 h|endurance: length 72 h became 96 h",
        "measure again at most 1|measure again at most 2|power_up, supply, supply_volts, repeats: at most 1 became 2",
        "takes 3 min|takes 5 min|power_up, supply: takes 3 min became 5 min",
        "step fit \"Fit the unit.\"|step fit \"Fit the unit now.\"|power_up, fit: instruction Fit the unit. became Fit the unit now.",
        "purpose \"Decide whether it works.\"|purpose \"Decide.\"|purpose Decide whether it works. became Decide." })
    void aChangeIsSaidByMeaning(String from, String to, String sentence) {
        assertEquals(List.of(sentence), changed(from, to));
    }

    /** What is protected is shown as spared wherever something is erased. */
    @Test
    void aChangeOfMeaningElsewhereIsSaidThereToo() {
        List<String> found = changed("protect owner_program", "protect owner_program, fault_log");
        assertEquals("protected items is new: fault_log", found.get(0));
        assertTrue(found.stream().skip(1).allMatch(sentence -> sentence.startsWith("power_up, blank, "))
                && found.size() > 1, found::toString);
    }

    @Test
    void howItIsWrittenMakesNoDifference() {
        assertEquals(List.of(), changed("stage power_up", "// first\n stage   power_up"));
    }

    @Test
    void howALampFlashesIsSaidAsTheTextSaysIt() {
        List<String> found = changed("expect flt off from 10 s of on", "expect flt flashing 1 Hz from 10 s of on");
        assertTrue(found.contains("power_up, lamps, flt, sequence, signals: pattern off became flashing 1 Hz tolerance 20 %"), found::toString);
    }

    @Test
    void whatIsNewAndWhatIsGone() {
        assertEquals(List.of("power_up: steps is new: look"),
                changed("step fit \"Fit", "step look \"Look.\" { wait 1 s } step fit \"Fit"));
        assertEquals(List.of("preconditions is gone: strap"),
                changed("precondition strap \"Strap tested.\" valid 12 h, enter text \"Tester number\"", ""));
    }
}
