package org.benchwright.architecture.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.ResourceBundle;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules of the house find who breaks them, and let a neighbour pass: a rule that finds nobody is not kept for that. */
class OffendersTest {

    static final class Prints {
        void print() {
            System.err.println("here");
        }
    }

    static final class PrintsATrace {
        void print(Exception trouble) {
            trouble.printStackTrace();
        }
    }

    static final class Counts {
        static final int MOST = Integer.parseInt("3");
        static int sofar;
    }

    static final class LooksUp {
        String text(String key) {
            return ResourceBundle.getBundle("texts").getString(key);
        }
    }

    enum Said {
        SHOWN, NEVER_SHOWN;

        String text(Object... arguments) {
            return name() + arguments.length;
        }
    }

    static final class Shows {
        String show() {
            return Said.SHOWN.text();
        }
    }

    static final class Helps {
        void called() {
            hashCode();
        }

        void neverCalled() {
            hashCode();
        }
    }

    static final class Calls {
        private void call(Helps helper) {
            helper.called();
        }
    }

    static final class Talks {
        String shortly() {
            return String.valueOf(hashCode());
        }

        String atLength() {
            String first = String.valueOf(hashCode());

            return first + String.valueOf(hashCode());
        }
    }

    private static List<String> here(String... names) {
        return List.of(names).stream().map(name -> OffendersTest.class.getName() + "$" + name).toList();
    }

    @Test
    void whoPrintsIsFound() {
        assertEquals(here("Prints", "PrintsATrace"), CompiledClasses.of(Prints.class, PrintsATrace.class, Talks.class).thatPrint());
    }

    @Test
    void aStaticFieldThatCanBeSetAgainIsFound() {
        assertEquals(here("Counts.sofar"), CompiledClasses.of(Counts.class, Said.class).mutableStatics());
    }

    @Test
    void whoLooksTextsUpIsFound() {
        assertEquals(here("LooksUp"), CompiledClasses.of(LooksUp.class, Shows.class).thatUse("java.util.ResourceBundle"));
    }

    @Test
    void aTextThatNobodyShowsIsFound() {
        assertEquals(here("Said.NEVER_SHOWN"), CompiledClasses.of(Said.class, Shows.class).textsThatNobodyShows());
    }

    @Test
    void aMethodThatNobodyCallsIsFound() {
        assertEquals(here("Helps.neverCalled()"), CompiledClasses.of(Helps.class, Calls.class).methodsThatNobodyCalls());
    }

    @Test
    void aMethodWithTooManyLinesIsFound() {
        assertEquals(here("Talks.atLength()"), CompiledClasses.of(Talks.class).methodsLongerThan(2));
    }

    @Test
    void aTestThatTheRunnerPassesByIsFound() {
        assertEquals(List.of(PassedBy.class.getName()), CompiledClasses.of(PassedBy.class, OffendersTest.class).testsThatNeverRun());
    }

    @ParameterizedTest
    @CsvSource({"/** One. */, true", "/** Of org.example 1.2 too. */, true", "/** One. And another. */, false", "// One., false", "/** */, false"})
    void oneSentenceIsToldFromTwoAndFromNone(String comment, boolean one) {
        assertEquals(one, HouseRulesTest.ONE_SENTENCE.matcher(comment + "\npackage a;\n").lookingAt());
    }
}

/** A test by its annotation, but not by its name. */
class PassedBy {

    @Test
    void neverRun() {
        assertEquals(1, 2);
    }
}
