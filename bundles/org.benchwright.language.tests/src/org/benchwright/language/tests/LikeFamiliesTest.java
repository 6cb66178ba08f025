package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.LampColour;
import org.benchwright.core.SerialMask;
import org.benchwright.engine.plan.Lamp;
import org.benchwright.engine.plan.Mode;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A procedure applies to the family that it names and to those like it: which is meant, and what is checked and compiled for
 * it.
 */
class LikeFamiliesTest {

    private static final String WREN = """
            family wren "Wren" {
                serial "W-###"
                lamp ok green "Health"
                lamps out 0 .. 3 green "Output"
                modes run "Running"
                mode run shows ok steady
            }
            """;
    private static final String WREN_TWO = """
            family wren_two "Wren two" like wren {
                serial "W2-###"
                lamp ok green or yellow "Health"
                lamps out 0 .. 7 red "Output"
                modes run "Running fast"
                mode run shows ok yellow steady
            }
            """;
    private static final String LOOK = """
            procedure look "Look at it" revision 1 { applies to wren /* and those like it */ %s
                hazard mains danger "Mains at the terminals." can "kill" so "Keep the cover on."
                stage first "First" with hazard mains {
                    step eye "Look." {
                        energises supply
                        mark on "Press as you switch on."
                        expect mode run within 5 s of on or conclude rejected "It does not run."
                        %s
                    }
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    @TempDir
    private Path folder;
    private Path procedure;
    private final ProcedureReader reader = new ProcedureReader(Bench.LANGUAGE);

    @BeforeEach
    void files() throws IOException {
        write("wren.family", WREN);
        write("wren-two.family", WREN_TWO);
        procedure = write("look.procedure", LOOK.formatted("", ""));
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private Reading.Ready ready(FamilyChoice choice) {
        Reading reading = reader.read(procedure, choice);
        assertTrue(reading instanceof Reading.Ready, reading::toString);
        return (Reading.Ready) reading;
    }

    private UnitFamily family(FamilyChoice choice) {
        return ready(choice).plan().family();
    }

    private String fitting(String serial) {
        return family(new FamilyChoice.Fitting(serial)).name();
    }

    private Remark refused(FamilyChoice choice) {
        Reading reading = reader.read(procedure, choice);
        assertTrue(reading instanceof Reading.Refused, reading::toString);
        List<Remark> remarks = ((Reading.Refused) reading).remarks();
        assertEquals(1, remarks.size(), remarks::toString);
        return remarks.get(0);
    }

    /** Its file says the four lamps and who it is, and no procedure is written for it: all else is the other family's. */
    @Test
    void aFamilyThatDiffersInFourLampsCostsThoseFourLines() throws IOException {
        write("wren-four.family", """
                family wren_four "Wren four" like wren {
                    serial "W4-###"
                    lamp ok green or red "Health"
                    lamp link blue "Link"
                    lamp hot yellow "Hot"
                    lamp fan white "Fan turns"
                    mode run shows ok green steady
                }
                """);
        UnitFamily one = family(new FamilyChoice.Fitting("W-001"));
        UnitFamily four = family(new FamilyChoice.Fitting("W4-001"));
        List<Lamp> differing = four.lamps().stream().filter(lamp -> !one.lamps().contains(lamp)).toList();
        assertEquals(List.of("ok", "link", "hot", "fan"), differing.stream().map(Lamp::name).toList());
        assertEquals(one.lamps().stream().filter(lamp -> lamp.name().startsWith("out")).toList(),
                four.lamps().stream().filter(lamp -> lamp.name().startsWith("out")).toList());
        assertEquals(one.stopStays(), four.stopStays());
        assertEquals(ready(new FamilyChoice.Fitting("W-001")).plan().stages()
                .size(), ready(new FamilyChoice.Fitting("W4-001")).plan().stages().size());
        assertEquals(List.of(), Bench.LANGUAGE.check(List.of(folder)).remarks());
    }

    @Test
    void thePlanHasTheLampsColoursModesAndSerialNumbersOfTheFamilyLikeIt() {
        UnitFamily two = family(new FamilyChoice.Fitting("W2-001"));
        assertEquals("wren_two", two.name());
        assertEquals("Wren two", two.title());
        assertEquals(Optional.of(new SerialMask("W2-###")), two.serialMask());
        List<Lamp> outputs = two.lamps().stream().filter(lamp -> lamp.name().startsWith("out")).toList();
        assertEquals(8, outputs.size(), two.lamps()::toString);
        outputs.forEach(lamp -> assertEquals(List.of(LampColour.RED), lamp.colours()));
        assertEquals(List.of(Optional.of("Running fast")), two.modes().stream().map(Mode::title).toList());
        assertTrue(two.modes().get(0).shows().toString().contains("YELLOW"), two.modes()::toString);
        assertEquals(4, family(new FamilyChoice.AsWritten()).lamps().stream().filter(lamp -> lamp.name().startsWith("out"))
                .count());
    }

    @Test
    void theFamiliesThatItCanBeReadForAreListedTheNamedOneFirst() throws IOException {
        assertEquals(List.of("wren", "wren_two"), reader.families(procedure));
        for (String family : reader.families(procedure)) {
            assertEquals(family, family(new FamilyChoice.Called(family)).name());
        }
        Path broken = write("broken.procedure", "procedure broken");
        assertEquals(List.of(), reader.families(broken));
        assertEquals(List.of(), reader.families(folder.resolve("wren.family")));
    }

    @Test
    void theStepsExpectWhatTheFamilyShows() {
        Plan one = ready(new FamilyChoice.Fitting("W-001")).plan();
        Plan two = ready(new FamilyChoice.Fitting("W2-001")).plan();
        assertEquals(one, ready(new FamilyChoice.AsWritten()).plan());
        assertEquals(one.name(), two.name());
        assertNotEquals(one.stages(), two.stages());
        assertTrue(two.stages().toString().contains("YELLOW"), two.stages()::toString);
    }

    @Test
    void theKeptTextIsThatOfTheFilesAndNamesTheOtherFamily() throws IOException {
        String kept = ready(new FamilyChoice.Called("wren_two")).text();
        assertEquals("// look.procedure\n" + Files.readString(procedure) + "// wren-two.family\n" + WREN_TWO
                + "// wren.family\n" + WREN, kept);
        assertEquals("// look.procedure\n" + Files.readString(procedure) + "// wren.family\n"
                + WREN, ready(new FamilyChoice.AsWritten()).text());
    }

    @Test
    void whatTheOtherFamilyCannotShowIsToldAtItsPlaceInTheWrittenText() throws IOException {
        String line = "expect mode run within 5 s of on or conclude rejected \"Not ok.\" expect out 1 green steady within 5 s of on or conclude rejected \"Dark.\"";
        procedure = write("look.procedure", LOOK.formatted("", line));
        Remark remark = refused(new FamilyChoice.Fitting("W2-001"));
        assertEquals(RemarkCode.COLOUR_NOT_OF_LAMP, remark.code());
        assertEquals(procedure, remark.file());
        assertEquals(8, remark.line());
        assertEquals("green", Files.readString(procedure).substring(remark.offset(), remark.offset() + remark.length()));
        assertEquals(remark.offset() - Files.readString(procedure).lastIndexOf('\n', remark.offset()), remark.column());
        assertTrue(remark.words().startsWith("For wren_two: "), remark.words());
        assertEquals("wren", fitting("W-001"));
    }

    @Test
    void placesInTheLineOfTheClauseAreThoseOfTheWrittenText() throws IOException {
        procedure = write("look.procedure", LOOK.formatted("instrument meter \"Meter\" reads V dc", ""));
        Remark remark = ready(new FamilyChoice.Called("wren_two")).remarks().stream()
                .filter(each -> each.code() == RemarkCode.UNUSED_INSTRUMENT)
                .findFirst().orElseThrow();
        Remark written = ready(new FamilyChoice.AsWritten()).remarks().stream()
                .filter(each -> each.code() == RemarkCode.UNUSED_INSTRUMENT)
                .findFirst().orElseThrow();
        assertEquals(List.of(written.line(), written.column(), written.offset(), written.length()),
                List.of(remark.line(), remark.column(), remark.offset(), remark.length()));
        assertEquals("For wren_two: " + written.words(), remark.words());
    }

    @Test
    void anErrorInTheOtherFamilysFileIsToldThere() throws IOException {
        Path two = write("wren-two.family", WREN_TWO.replace("modes run",
                "display code of 0 characters \"Code\"\n    modes run"));
        Remark remark = refused(new FamilyChoice.Called("wren_two"));
        assertEquals(RemarkCode.COUNT_NOT_POSITIVE, remark.code());
        assertEquals(two, remark.file());
        assertEquals(5, remark.line());
    }

    @Test
    void ofSeveralThoseThatStateTheMaskThemselvesCount() throws IOException {
        write("wren-three.family", "family wren_three \"Wren three\" like wren_two { }");
        assertEquals("wren_two", fitting(" W2-001 "));
        assertEquals("wren_three", family(new FamilyChoice.Called("wren_three")).name());
        write("wren-four.family", "family wren_four \"Wren four\" like wren { serial \"W2-0##\" }");
        assertEquals("wren_two", fitting("W2-101"));
        Remark several = refused(new FamilyChoice.Fitting("W2-001"));
        assertEquals(RemarkCode.FAMILY_NOT_CHOSEN, several.code());
        assertTrue(several.words().contains(": wren_four, wren_two."), several.words());
        assertEquals("wren", Files.readString(procedure).substring(several.offset(), several.offset() + several.length()));
        assertEquals("wren_four", family(new FamilyChoice.Called("wren_four")).name());
    }

    @Test
    void aNumberThatFitsNoneIsLeftToTheOpeningOfTheTest() throws IOException {
        assertEquals("wren", fitting("X-1"));
        write("bad.family", "family bad \"Bad\" like wren { serial \"\" }");
        assertEquals("wren", fitting("X-1"));
    }

    @Test
    void aFamilyThatIsNotLikeItIsNoneOfThem() throws IOException {
        write("rook.family", "family rook \"Rook\" { serial \"R-###\" }");
        assertEquals("wren", fitting("R-001"));
        Remark none = refused(new FamilyChoice.Called("rook"));
        assertEquals(RemarkCode.FAMILY_NOT_CHOSEN, none.code());
        assertTrue(none.words().contains("'rook' is none of them. They are: wren, wren_two."), none.words());
    }

    @Test
    void aFamilyOfAnImportedFolderIsSeen() throws IOException {
        Path other = Files.createDirectory(folder.resolve("other"));
        Files.move(folder.resolve("wren.family"), other.resolve("wren.family"));
        Files.move(folder.resolve("wren-two.family"), other.resolve("wren-two.family"));
        procedure = write("look.procedure", "import \"other/wren.family\"\n" + LOOK.formatted("", ""));
        assertEquals("wren_two", fitting("W2-001"));
    }
}
