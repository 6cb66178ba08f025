package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.Checked;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureStandaloneSetup;
import org.benchwright.language.SourceText;
import org.benchwright.language.services.ProcedureGrammarAccess;
import org.eclipse.xtext.GrammarUtil;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every word of the language can be the name of anything, and is found again under it. The words come from the grammar
 * itself.
 */
class KeywordsAsNamesTest {

    private static final ProcedureGrammarAccess GRAMMAR = new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration()
            .getInstance(ProcedureGrammarAccess.class);
    /** Where a lamp or a display of that name is meant, its kind stands before it. */
    private static final Set<String> TAKEN = Set.of("mode", "lamp", "display", "any");

    static Stream<String> words() {
        return GrammarUtil.getAllKeywords(GRAMMAR.getGrammar()).stream().filter(word -> word.matches("[A-Za-z]+")).sorted();
    }

    @Test
    void theNameRulesListEveryWord() {
        Set<String> listed = new HashSet<>();
        GrammarUtil.containedKeywords(GRAMMAR.getBareNameRule()).forEach(keyword -> listed.add(keyword.getValue()));
        GrammarUtil.containedKeywords(GRAMMAR.getNameRule()).forEach(keyword -> {
            assertTrue(TAKEN.contains(keyword.getValue()), keyword::getValue);
            listed.add(keyword.getValue());
        });
        assertEquals(Set.copyOf(words().toList()), listed);
    }

    @Test
    void noWordIsAUnitOfMeasure() {
        assertEquals(List.of(), words().filter(word -> UnitOfMeasure.find(word).isPresent()).toList());
    }

    @Test
    void thereAreManyWords() {
        assertTrue(words().count() > 150);
    }

    @ParameterizedTest
    @MethodSource("words")
    void theWordIsANameOfEverything(String word) {
        LanguageServices language = Bench.LANGUAGE;
        String lamp = TAKEN.contains(word) ? "lamp " + word : word;
        String display = TAKEN.contains(word) ? "display " + word : word;
        Checked checked = language.checkTexts(List.of(new SourceText(Bench.FAMILY_FILE, TEXT.replace("<lamp>", lamp)
                .replace("<display>", display).replace("<name>", word))));
        assertEquals(List.of(), Bench.printed(checked.remarks()));
        assertEquals(4, SoundPlans.of(checked).size());
    }

    private static final String TEXT = """
            family <name> "F" {
                supply 24 V dc, tolerance -15 % .. +20 %
                lamp <name> marked "L" green or red "Lamp"
                display <name> of 2 characters "Display"
                modes <name>, plain_mode
                mode <name> shows <lamp> green steady, lamp <name> green steady, <display> "ab", display <name> "ab", mode <name>
                keeps <name> "Item" by cell
                keeps plain_item "Item" by memory
                loadable <name> "Load" replaces plain_item
                loadable plain_load "Other"
                stop stays until "restarted"
                fault <name> "Fault" shows <lamp> red flashing 1 Hz tolerance 20 %, <display> "ef" { means "m" often "o" next "n" }
            }
            family plain_family "D" like <name> { lamps plain_group 0 .. 3 white "Group" }

            procedure plain_procedure "Q" revision 1 {
                applies to plain_family
                retest of <name>, repeats <name>, plain_soak
                hazard plain_hazard warning "h" can "c" so "s"
                otherwise conclude undecided "o"
                stage <name> "S" { step plain_step "s" with hazard plain_hazard { energises supply } }
                soak plain_soak "T" lasting 1 h witnessed { keep mode <name> look every 1 h }
                make safe "M" { step plain_off "o" { isolates supply } }
                conclude accepted
            }

            procedure <name> "P" revision 1 {
                applies to <name>
                hazard <name> danger "h" can "c" so "s"
                hazard plain_hazard notice "h" can "c" so "s"
                protect <name>
                instrument <name> "I" reads V up to 60 V, uncertainty at most 0.05 V
                instrument plain_source "S" gives mA
                precondition <name> "p" reading with <name> valid 12 h, limits 1 .. 2 V
                otherwise conclude undecided "o"
                stage <name> "S" with hazard <name>, plain_hazard {
                    step first_step "s" with hazard <name>, plain_hazard {
                        energises supply
                        mark <name> "m"
                        expect <lamp> green steady or <lamp> red flashing slow within 2 s of <name> or conclude rejected "r"
                        expect <display> "ab", then "cd", within 2 s of <name> or go to <name>, at most 2, or conclude rejected "r"
                        expect lamp <name> red steady, then green steady, from 2 s of <name>, lasting 1 s
                        expect any of { <lamp> off, <display> "gh", mode <name> } within 2 s of <name>
                        expect mode <name> or display <name> "ij" within 4 s of <name>
                        measure <name> with <name>, limits at least 3 V, decide guarded
                        derive plain_value as <name> + 1 V, limits at least 4 V
                        apply 3 mA with plain_source
                        enter <name> as found
                        enter plain_item
                        enter text "t"
                        confirm <name> "a" and "b" or release by supervisor "r"
                        erase only plain_item spare <name>
                        load only <name> leave out plain_load
                        reveals <name>
                    }
                    step second_step "s" {
                        for each <name> 1, 2 mA with plain_source, up then down
                        measure plain_reading in mA, settle 1 s
                        judge (plain_reading - <name>) + 3 mA, limits around 1 mA, tolerance -1 % .. +1 %
                    }
                    step third_step "s" {
                        for each plain_axis 1 .. 4
                        measure <name> in V with <name>
                        judge <name>, limits at most 3 V
                        otherwise go to <name>, at most 3, or conclude rejected "r"
                    }
                }
                soak plain_soak "T" lasting 2 h witnessed with hazard <name> {
                    keep mode <name>, <lamp> green steady
                    conditions <name> 1 .. 2 V, plain_condition at most 3 A
                    look every 1 h
                    when stopped go to plain_stage
                }
                stage plain_stage "S" on demand { step fourth_step "s" { go to <name>, at most 1, or conclude rejected "r" } }
                make safe "M" { step plain_off "o" { isolates supply } }
                conclude accepted
            }
            procedure plain_steps "P" revision 1 {
                applies to <name>
                otherwise go to <name>
                stage plain_stage "S" { step <name> "s" { confirm "c" or conclude rejected "r" } }
                make safe "M" { step plain_off "o" { isolates supply } }
                conclude accepted
            }
            procedure plain_soaks "P" revision 1 {
                applies to <name>
                hazard mains danger "h" can "c" so "s"
                otherwise conclude rejected "r"
                stage plain_stage "S" with hazard mains { step plain_step "s" { energises supply } }
                soak <name> "T" lasting 1 h witnessed { keep mode <name> look every 1 h }
                make safe "M" { step plain_off "o" { isolates supply } }
                conclude accepted
            }
            """;
}
