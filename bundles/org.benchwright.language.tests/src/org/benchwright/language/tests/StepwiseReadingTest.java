package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;

import org.benchwright.language.Checked;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.ide.ProcedureIdeSetup;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.ParsedFile.Parse;
import org.benchwright.language.internal.ReadText;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
import org.benchwright.model.Step;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import com.google.inject.Injector;

/** What is wrong in one step, or changes in it, leaves the others alone. */
class StepwiseReadingTest {

    private static final Injector LANGUAGE = new ProcedureIdeSetup().createInjectorAndDoEMFRegistration();

    @Test
    void aMistakeInAStepCostsThatStepOnly() {
        Checked sound = Bench.check(Bench.FAMILY, Bench.PROCEDURE);
        Checked broken = Bench.check(Bench.FAMILY,
                Bench.PROCEDURE.replace("confirm \"The cover is on.\"", "conf confirm \"The cover is on.\""));
        assertEquals(names(sound), names(broken));
        assertEquals(List.of(RemarkCode.SYNTAX), broken.remarks().stream().map(remark -> remark.code()).toList());
    }

    private static List<String> names(Checked checked) {
        Procedure procedure = checked.procedures().get(0);
        return Procedures.allSteps(procedure).stream().map(Step::getName).toList();
    }

    @ParameterizedTest
    @CsvSource({"The cover is on.,         The lid is on.,          STEPS",
            "confirm \"The cover, con \"The cover,            STEPS",
            "fits unit,                mark m \"Now.\",          STEPS",
            "step fit,                 step fitted,             STEPS",
            "step fit,                 stepp fit,               WHOLE",
            "fits unit,                } fits unit,              WHOLE",
            "fits unit,                /* fits unit,            WHOLE",
            "\"Terminals are live.\",  \"Terminals may be live.\", WHOLE"})
    void onlyTheStepIsReadWhereThatIsEnough(String before, String after, Parse expected) {
        ParsedFile file = new ParsedFile(LANGUAGE, text(Bench.PROCEDURE));
        LANGUAGE.getInstance(XtextResourceSet.class).getResources().add(file.resource());
        assertEquals(Parse.WHOLE, file.parse());
        Procedure procedure = file.content().getProcedures().get(0);
        file.change(text(Bench.PROCEDURE.replace(before, after)));
        assertEquals(expected, file.parse());
        assertEquals(expected == Parse.STEPS, file.content().getProcedures().get(0) == procedure);
        assertEquals(Parse.NOTHING, file.parse());
    }

    private static ReadText text(String text) {
        return ReadText.of(new SourceText(Bench.PROCEDURE_FILE, text));
    }
}
