package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.ContentsRow;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Hover;
import org.benchwright.language.editing.Place;
import org.benchwright.language.editing.Proposal;
import org.benchwright.language.editing.Renaming;
import org.junit.jupiter.api.Test;

/** What is answered about a place in the demo texts: hovers, declarations, references, renaming, proposals. */
class PointingTest {

    private final FolderSession session = DemoFolder.open();

    private int behind(String passage) {
        return DemoFolder.behind(session, DemoFolder.PROCEDURE, passage);
    }

    private String hover(String passage) {
        return session.hover(DemoFolder.PROCEDURE, behind(passage) - 1).map(Hover::text).orElse("nothing");
    }

    private List<String> proposals(String passage) {
        return session.proposals(DemoFolder.PROCEDURE, behind(passage)).stream().map(Proposal::label).toList();
    }

    @Test
    void aHoverSaysWhatALampMeansAndWhatShowsIt() {
        String hover = hover("expect flt");
        assertTrue(hover.startsWith("Lamp flt: Fault\nMarked \"FLT\".\nColour: red."), hover);
        assertTrue(hover.contains("Mode run: flt off."), hover);
        assertTrue(hover.contains("Fault S03: flt flashing slow."), hover);
        assertTrue(hover.contains("Declared by family tarn_base."), hover);
        assertTrue(hover.contains("times in this folder."), hover);
    }

    @Test
    void aHoverAndTheContentsTellWhatAWatchReads() {
        String hover = hover("keep mode run");
        assertTrue(hover.contains("A watch reads: mode run when holding register 40 unsigned 16 is 2."), hover);
        ContentsRow family = session.analyse(DemoFolder.FAMILY, Cancellation.never()).orElseThrow().contents().get(0);
        ContentsRow points = family.children().stream().filter(row -> row.label().equals("What a watch reads")).findFirst()
                .orElseThrow();
        assertEquals("condition ambient from input register 31 signed 16, scale 0.1 degC", points.children().get(4).label());
        assertTrue(DemoFolder.text(session, DemoFolder.FAMILY)
                .startsWith("condition ambient from", points.children().get(4).offset()));
    }

    @Test
    void aHoverExplainsAFaultAMarkAHazardAndALoadable() {
        assertTrue(hover("reveals W01").contains("Often: The oscillator or a memory is weak when warm."),
                hover("reveals W01"));
        assertEquals("Mark on: Press as you close the switch.\nUsed 4 times in this folder.", hover("10 s of on"));
        assertTrue(hover("with hazard mains").startsWith("DANGER: The rack supply's terminals carry mains"),
                hover("with hazard mains"));
        assertTrue(hover("load only bench_configuration, bench_program").contains("Replaces Owner's program"),
                hover("load only bench_configuration, bench_program"));
    }

    @Test
    void aHoverConvertsAmounts() {
        assertEquals("72 h\n72 h is 4320 min\n72 h is 3 d", hover("lasting 72"));
        assertTrue(hover("limits 23.5").contains("23.5 V is 23500 mV"), hover("limits 23.5"));
        assertTrue(hover("limits 0.75").contains("35 Mohm is 35000 kohm"), hover("limits 0.75"));
    }

    @Test
    void aHoverSaysWhatAWordMeans() {
        assertEquals("energises\nthe supply goes on in this step; a fact that every way is checked with",
                hover("energises"));
        assertTrue(hover("mains danger").contains("ISO 3864-2"), hover("mains danger"));
    }

    @Test
    void aNameLeadsToItsDeclarationInAnotherFile() {
        Place place = session.declaration(DemoFolder.PROCEDURE, behind("expect pwr")).orElseThrow();
        assertEquals(DemoFolder.BASE, place.file());
        assertEquals(DemoFolder.behind(session, DemoFolder.BASE, "lamp "), place.offset());
        assertEquals(DemoFolder.FAMILY, session.declaration(DemoFolder.PROCEDURE, behind("applies to tarn_c16"))
                .orElseThrow().file());
    }

    @Test
    void referencesAreFoundInAllFilesFromTheDeclarationAndFromAReference() {
        List<Place> fromReference = session.references(DemoFolder.PROCEDURE, behind("expect pwr"));
        assertEquals(fromReference, session.references(DemoFolder.BASE,
                DemoFolder.behind(session, DemoFolder.BASE, "lamp pwr")));
        assertTrue(fromReference.stream().map(Place::file).distinct().count() > 3, fromReference::toString);
        assertTrue(fromReference.stream().allMatch(place -> DemoFolder.text(session, place.file())
                .startsWith("pwr", place.offset())), fromReference::toString);
    }

    @Test
    void aLampIsRenamedInAllFilesAndThereIsStillNoError() {
        rename("expect pwr", "power");
        assertTrue(DemoFolder.text(session, DemoFolder.BASE).contains("lamp power marked \"PWR\""));
        assertTrue(DemoFolder.text(session, DemoFolder.PROCEDURE).contains("expect power steady within 2 s of on"));
    }

    @Test
    void aFamilyALoadableAndAStageAreRenamedInAllFiles() {
        rename("applies to tarn_c16", "tarn_c16s");
        rename("leave out output_values", "outputs_to_start_from");
        rename("stage no_start", "why_not");
        rename("go to matched", "same_type_and_release");
    }

    private void rename(String passage, String newName) {
        Renaming renaming = session.rename(DemoFolder.PROCEDURE, behind(passage), newName);
        List<Edit> edits = ((Renaming.Possible) renaming).edits();
        Map<Path, List<Edit>> byFile = edits.stream().collect(Collectors.groupingBy(edit -> edit.place().file()));
        byFile.forEach((file, inFile) -> session.change(file, applied(DemoFolder.text(session, file), inFile)));
        List<Remark> remarks = session.remarks(Cancellation.never()).values().stream().flatMap(List::stream).toList();
        assertEquals(List.of(), remarks);
    }

    private static String applied(String text, List<Edit> edits) {
        List<Edit> fromTheEnd = new ArrayList<>(edits);
        fromTheEnd.sort(Comparator.comparing(Edit::place).reversed());
        StringBuilder edited = new StringBuilder(text);
        fromTheEnd.forEach(edit -> edited.replace(edit.place().offset(), edit.place().offset() + edit.place()
                .length(), edit.text()));
        return edited.toString();
    }

    @Test
    void aNameThatWouldMeanSomethingElseIsRefused() {
        assertTrue(refusal("mark on", "started").contains("started"), refusal("mark on", "started"));
        assertTrue(refusal("expect pwr", "flt").contains("flt"), refusal("expect pwr", "flt"));
        assertTrue(refusal("expect pwr", "two words").contains("can't be a name"), refusal("expect pwr", "two words"));
        assertTrue(refusal("expect pwr", "mode").contains("would not do"), "a lamp called mode needs its kind before it");
        assertTrue(refusal("stage bench", "prove").contains("says it repeats"), refusal("stage bench", "prove"));
        assertEquals("There is no name here that could be changed.", refusal("energises", "x"));
    }

    private String refusal(String passage, String newName) {
        return ((Renaming.Refused) session.rename(DemoFolder.PROCEDURE, behind(passage), newName)).why();
    }

    @Test
    void namesOfTheFamilyAreProposedWithWhatTheyMean() {
        assertEquals(List.of("cell_low", "code", "flt", "ok", "out", "pwr", "any", "display", "lamp", "mode"),
                proposals("            expect "));
        assertEquals(List.of("faulted", "run", "stopped"), proposals("expect mode "));
        assertEquals(List.of("B04", "M02", "S03", "T05", "W01"), proposals("reveals "));
        assertEquals(List.of("halted", "on", "started"), proposals("within 2 s of "));
        assertEquals(List.of("tarn_a8", "tarn_base", "tarn_c16", "tarn_p24"), proposals("applies to "));
        Proposal power = session.proposals(DemoFolder.PROCEDURE, behind("            expect p")).get(0);
        assertEquals(new Proposal(Proposal.Kind.NAME, "pwr", "Lamp pwr: Power", behind("            expect p") - 1, 1,
                "pwr", List.of()), power);
    }

    @Test
    void aLampOrDisplayNamedLikeAKindIsProposedWithItsKind() {
        String family = DemoFolder.text(session, DemoFolder.FAMILY);
        session.change(DemoFolder.FAMILY, family.replace("lamp cell_low",
                "lamp mode red \"Mode\" display any of 2 characters \"Any\" lamp cell_low"));
        assertEquals(List.of("cell_low", "code", "display any", "flt", "lamp mode", "ok", "out", "pwr", "any", "display",
                "lamp", "mode"),
                proposals("            expect "));
    }

    @Test
    void wordsWithAFixedSetOfValuesAndUnitsAreProposed() {
        assertEquals(List.of("blue", "flashing", "green", "off", "red", "steady", "white", "yellow"),
                proposals("expect ok "));
        assertEquals(List.of("guarded", "guarded both ways", "simple"), proposals("limits at least 2.5 V, decide "));
        assertTrue(proposals("wait 5 ").containsAll(List.of("s", "min", "h", "V")), proposals("wait 5 ")::toString);
    }

    @Test
    void nothingIsProposedWhereANewNameIsWanted() {
        assertEquals(List.of(), proposals("        step "));
        assertEquals(List.of(), proposals("    hazard "));
    }

    @Test
    void aKeywordIsProposedWithAShortMeaning() {
        Proposal energises = session.proposals(DemoFolder.PROCEDURE, behind("            energ")).get(0);
        assertEquals("energises", energises.text());
        assertTrue(energises.detail().startsWith("the supply goes on"), energises.detail());
    }

    @Test
    void aTemplateEndsItsLinesAsTheFileDoes() {
        session.change(DemoFolder.PROCEDURE, DemoFolder.text(session, DemoFolder.PROCEDURE).replace("\n", "\r\n"));
        Proposal fit = session.proposals(DemoFolder.PROCEDURE, behind("        step clear") - "step clear".length()).stream()
                .filter(proposal -> proposal.label().equals("step: fit the unit")).findFirst().orElseThrow();
        assertTrue(fit.text().contains("{\r\n            fits unit\r\n"), fit.text());
        assertEquals(List.of(), Pattern.compile("(?<!\r)\n").matcher(fit.text()).results().toList());
        Proposal.Slot last = fit.slots().get(fit.slots().size() - 1);
        assertEquals("The cover is closed.", fit.text().substring(last.offset(), last.offset() + last.length()));
    }

    @Test
    void everyStepTemplateFitsWhereItIsProposed() {
        String text = DemoFolder.text(session, DemoFolder.PROCEDURE);
        int at = text.indexOf("        step clear") + 8;
        List<Proposal> templates = session.proposals(DemoFolder.PROCEDURE, at).stream()
                .filter(proposal -> proposal.kind() == Proposal.Kind.TEMPLATE).toList();
        assertTrue(templates.size() >= 10, templates::toString);
        for (Proposal template : templates) {
            session.change(DemoFolder.PROCEDURE, text.substring(0, at) + template.text() + "\n        "
                    + text.substring(at));
            List<Remark> remarks = session.analyse(DemoFolder.PROCEDURE, Cancellation.never()).orElseThrow().remarks();
            List<String> syntax = remarks.stream().filter(remark -> remark.code().word().equals("syntax"))
                    .map(Remark::toString).toList();
            assertEquals(List.of(), syntax, template.label());
            template.slots().forEach(slot -> assertTrue(slot.offset() + slot.length() <= template.text().length()));
        }
        session.close(DemoFolder.PROCEDURE);
    }
}
