package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Demand;
import org.benchwright.engine.Place;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.FaultLine;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.internal.Entry;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.Questions;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is typed at each demand: understood as meant, or refused with words that say what to do. */
class EntryTest {

    private static final Plan PLAN = SamplePlan.acceptance();
    private static final WorkStage STAGE = (WorkStage) PLAN.stages().get(1);
    private static final Place PLACE = new Place(STAGE, STAGE.steps().get(0), false);
    private static final Move.Conclude END = new Move.Conclude(Verdict.UNDECIDED, "so");
    private static final UnitOfMeasure VOLT = UnitOfMeasure.of("V");
    private static final Moment NOW = new Moment(java.time.Instant.EPOCH, 1, Duration.ZERO);

    private static final Demand STRAP = new Demand.AnswerPrecondition(PLAN.preconditions().get(0));
    private static final Demand AMBIENT = new Demand.AnswerPrecondition(PLAN.preconditions().get(1));
    private static final Demand METER = new Demand.NameInstrument(PLAN.instruments().get(0));
    private static final Demand LOG = new Demand.EnterFaultLog(PLACE, new Action.EnterFaultLog("log", true));
    private static final Demand EXPECTATION = new Demand.AnswerExpectation(PLACE, new Action.Expect("pwr", List.of(),
            new Action.Window("on", Duration.ofSeconds(2), Duration.ZERO, true), END));
    private static final Demand VOLTS = new Demand.TakeMeasurement(PLACE, new Action.Measure("volts", "meter", VOLT,
            Limits.atMost(Quantity.of("5", "V")), DecisionRule.SIMPLE, Optional.empty(), END, END), List.of());
    private static final Demand LOOK = new Demand.Look((SoakStage) PLAN.stages().get(2), false, NOW, Duration.ofHours(24), Duration.ZERO);
    private static final Demand RELEASE = new Demand.Release(PLACE, "bare", Role.SECOND_PERSON, "All bare.");
    private static final Demand COMPARE = new Demand.CompareEntries(PLACE, new Action.Compare("same", "Plate", "Bench", END));

    private static Fact fact(Demand demand, String typed) throws EntryRefusedException {
        return ((Entry.Told) EntryReader.read(demand, typed)).fact();
    }

    private static void assertRefused(Demand demand, String typed, String words) {
        EntryRefusedException refused = assertThrows(EntryRefusedException.class, () -> EntryReader.read(demand, typed));
        assertTrue(refused.getMessage().contains(words), refused.getMessage());
    }

    @Test
    void aBlindMeasurementShowsNeitherLimitsNorEarlierReadings() {
        Action.Measure measure = ((Demand.TakeMeasurement) VOLTS).measure();
        Action.Measure blind = new Action.Measure("volts", "meter", VOLT, measure.limits(), measure.rule(), measure.again(), END, END, Optional.empty(),
                Optional.of(Action.Measure.Entry.BLIND));
        Demand asked = new Demand.TakeMeasurement(PLACE, blind, List.of(Quantity.of("4.97", "V")));
        assertEquals("Measure volts with the Multimeter. It is entered blind: limits come afterwards.", new Questions(PLAN).of(asked).question());
        Fact.Questioned slip = new Fact.Questioned("volts", "497", Quantity.of("497", "V"), Quantity.of("4.97", "V"));
        assertEquals("The decimal point may have slipped. Is 497 V what the instrument shows?", Questions.questioned(asked, slip).question());
        assertTrue(new Questions(PLAN).of(VOLTS).question().contains("at most 5 V"));
    }

    @Test
    void whatCannotBeSwitchedOffWhileMakingSafeIsNotSentToMakeSafe() {
        Place makingSafe = new Place(PLACE.stage(), PLACE.step(), true);
        assertRefused(new Demand.Switch(PLACE, "supply", false), "it is stuck", "enter ! to make safe");
        assertRefused(new Demand.Switch(makingSafe, "supply", false), "it is stuck", "see that nobody touches the unit");
    }

    @Test
    void aLogIsCalledByItsName() {
        Demand named = new Demand.EnterFaultLog(PLACE, new Action.EnterFaultLog("log", false, Optional.of("Event log, as left")));
        assertEquals("Enter line by line: Event log, as left.", new Questions(PLAN).of(named).question());
        assertEquals("Enter the fault log as it came, line by line.", new Questions(PLAN).of(LOG).question());
    }

    @Test
    void preconditions() throws Exception {
        assertEquals(new Observation.PreconditionAnswered("strap", true, "4711", Optional.empty()), fact(STRAP, " Yes , 4711 "));
        assertEquals(new Observation.PreconditionAnswered("strap", false, "", Optional.empty()), fact(STRAP, "n"));
        assertRefused(STRAP, "yes", "Tester number");
        assertRefused(STRAP, "maybe, 4711", "Enter y or n.");
        Optional<Quantity> reading = Optional.of(Quantity.of("22.5", "degC"));
        assertEquals(new Observation.PreconditionAnswered("ambient", true, "", reading), fact(AMBIENT, "22,5"));
        assertEquals(new Observation.PreconditionAnswered("ambient", true, "", reading), fact(AMBIENT, "yes, 22.5 degC"));
        assertRefused(AMBIENT, "22.5 V", "degC");
        assertRefused(AMBIENT, "no", "");
        Demand plain = new Demand.AnswerPrecondition(new Precondition("call", "Within call.", Optional.empty(), Optional.empty(),
                Optional.empty()));
        assertEquals(new Observation.PreconditionAnswered("call", true, "", Optional.empty()), fact(plain, "y"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"yes | YES | ''", "Y | YES | ''", "as expected | YES | ''", "no | NO | ''", "n: red, flashing | NO | red, flashing",
            "no, dark | NO | dark", "not as expected; dark | NO | dark", "x | NOT_LOOKING | ''", "not  looking | NOT_LOOKING | ''",
            "nobody looked | NOT_LOOKING | ''"})
    void expectations(String typed, Sight sight, String seen) throws Exception {
        assertEquals(new Observation.Seen("pwr", sight, seen), fact(EXPECTATION, typed));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "perhaps", "yes it did", "not", "0"})
    void expectationsNeedAClearWord(String typed) {
        assertRefused(EXPECTATION, typed, "y (as expected), n (not as expected) or x (nobody looked)");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"23,9V | 23.9 V", "24.00 V | 24.00 V", "24 | 24 V", "-0.5 V | -0.5 V", "23900 mV | 23900 mV"})
    void measurementsKeepTheirDigitsAndTheRawText(String typed, String value) throws Exception {
        assertEquals(new Observation.Measured("volts", typed, Quantity.parse(value)), fact(VOLTS, typed));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "V", "24 A", "1.2.3 V", "twenty", "24 volt"})
    void whatIsNoVoltageIsRefused(String typed) {
        assertThrows(EntryRefusedException.class, () -> EntryReader.read(VOLTS, typed));
    }

    @Test
    void instruments() throws Exception {
        Observation.InstrumentNamed named = new Observation.InstrumentNamed("meter", "M-17", Optional.of(Quantity.of("0.02", "V")),
                new BigDecimal("2"),
                Optional.of(LocalDate.of(2027, 3, 1)));
        assertEquals(named, fact(METER, "M-17, 0.02 V, k 2, due 2027-03-01"));
        assertEquals(named, fact(METER, "M-17; due 2027-03-01; k=2; 0,02V"));
        assertEquals(named, fact(METER, "M-17, 0,02 V, K 2, DUE 2027-03-01"));
        assertEquals(Optional.empty(), ((Observation.InstrumentNamed) fact(METER, "M-17, 0.02 V, k 2, no due date")).due());
        assertRefused(METER, "M-17, 0.02 V, due 2027-03-01", "coverage factor");
        assertRefused(METER, "M-17, 0.02 V, k 2", "when its calibration is due");
        assertRefused(METER, "M-17, 0.02 V, k 2, due 1 March", "\"1 March\" is not a date");
        assertRefused(METER, "M-17, good, k 2, due 2027-03-01", "\"good\" is neither");
        assertRefused(METER, "", "Nothing was entered");
        Demand plain = new Demand.NameInstrument(new InstrumentSpec("torch", "Torch", Optional.empty(), Optional.empty(), BigDecimal.TEN));
        assertEquals(new Observation.InstrumentNamed("torch", "L-1", Optional.empty(), BigDecimal.TEN, Optional.empty()),
                fact(plain, "L-1, no due date"));
    }

    @Test
    void hazardsAreAcknowledgedOnPurpose() throws Exception {
        Demand hazard = new Demand.AcknowledgeHazard(PLAN.hazards().get(0));
        assertEquals(new Fact.HazardAcknowledged("mains"), fact(hazard, "understood"));
        assertEquals(new Fact.HazardAcknowledged("mains"), fact(hazard, "U"));
        assertRefused(hazard, "", "Read the hazard");
        assertRefused(hazard, "y", "Read the hazard");
    }

    @Test
    void faultLogs() throws Exception {
        List<FaultLine> two = List.of(new FaultLine("W01", "02:14, second night"), new FaultLine("S03", ""));
        assertEquals(new Observation.FaultLogEntered("log", two), fact(LOG, "W01  02:14, second night; S03"));
        assertEquals(new Observation.FaultLogEntered("log", two), fact(LOG, "W01 02:14, second night\n\nS03\n"));
        assertEquals(new Observation.FaultLogEntered("log", List.of()), fact(LOG, "None"));
        assertRefused(LOG, "", "\"none\"");
        assertRefused(LOG, "W01; none", "A log that is said to be empty has no lines.");
        assertRefused(LOG, "None\nW01", "A log that is said to be empty has no lines.");
        assertEquals(new Observation.FaultLogEntered("log", List.of(new Observation.FaultLine("W01", "none before"))), fact(LOG, "W01 none before"));
        assertRefused(LOG, "W01 \ufffd", "Have the scanner send UTF-8, or type it.");
    }

    @Test
    void looks() throws Exception {
        List<Observation.ConditionReading> readings = List.of(new Observation.ConditionReading("ambient", "22 degC", Quantity.of("22", "degC")),
                new Observation.ConditionReading("supply", "24,0V", Quantity.of("24.0", "V")));
        assertEquals(new Observation.Looked("endurance", Sight.YES, "", readings), fact(LOOK, "as expected; 22 degC; 24,0V"));
        assertEquals(new Observation.Looked("endurance", Sight.NO, "dark", readings), fact(LOOK, "no, dark; 22 degC; 24,0V"));
        assertRefused(LOOK, "yes; 22 degC", "2 readings");
        assertRefused(LOOK, "yes; 22 degC; 24 V; 1", "2 readings");
        assertRefused(LOOK, "yes; 22 V; 24 V", "degC");
    }

    @Test
    void releases() throws Exception {
        assertEquals(new Fact.Released("bare", new Actor("KM", Role.SECOND_PERSON), true), fact(RELEASE, "yes, KM"));
        assertEquals(new Fact.Released("bare", new Actor("KM", Role.SECOND_PERSON), false), fact(RELEASE, "n, KM"));
        assertRefused(RELEASE, "yes", "initials");
        assertRefused(RELEASE, "yes, K M", "");
    }

    @Test
    void comparisons() throws Exception {
        assertEquals(new Observation.Compared("same", "C16, new", "C16"), fact(COMPARE, "C16, new; C16"));
        assertEquals(new Observation.Compared("same", "a;b", "c"), ((Entry.Told) EntryReader.read(COMPARE, List.of("a;b", "c"))).fact());
        assertRefused(COMPARE, "C16", "Plate; Bench");
        assertRefused(COMPARE, "C16;", "Plate; Bench");
    }

    @Test
    void switchesMarksAndFiles() throws Exception {
        Demand on = new Demand.Switch(PLACE, "supply", true);
        assertEquals(new Fact.Switched("supply", true), fact(on, ""));
        assertEquals(new Fact.Switched("supply", true), fact(on, "done"));
        assertRefused(on, "no", "!");
        assertEquals(new Fact.Marked("on"), fact(new Demand.PressMark(PLACE, new Action.Mark("on", "Press.")), "now"));
        Demand attach = new Demand.AttachFile(PLACE, new Action.Attach("photo", "photo", "Plate"));
        assertEquals(new Entry.File("photo", Path.of("plate.jpg")), EntryReader.read(attach, " plate.jpg "));
        assertRefused(attach, "", "Nothing was entered");
        assertEquals(new Fact.PowerAnswered(false), fact(new Demand.TellPower(List.of("supply")), "no"));
    }

    @Test
    void charactersThatAScannerSendsAreRefused() throws Exception {
        Demand text = new Demand.EnterText(PLACE, new Action.EnterText("damage", "Damage"));
        assertEquals(fact(text, "dent on lid"), fact(text, "\u0002dent on lid\u0003\u200b\r"), "what a scanner frames it with");
        assertRefused(text, "C16\u001d4711", "can't be printed");
        assertRefused(text, "\u001b[2J", "can't be printed");
        assertRefused(text, "broken \ud83d", "can't be printed");
        assertRefused(text, "x".repeat(4001), "4000");
        assertEquals(new Observation.TextEntered("damage", "\u00e9cran ray\u00e9 \ud83d\udd27"), fact(text, " e\u0301cran raye\u0301 \ud83d\udd27 "));
    }

    @Test
    void nothingIsEnteredWhereTimeAnswers() {
        Demand wait = new Demand.AwaitTime(PLACE, new Action.Wait("wait", Duration.ofMinutes(5)), NOW);
        assertRefused(wait, "yes", "Nothing can be entered now.");
        assertRefused(new Demand.Nothing(Verdict.ACCEPTED, "so", false), "yes", "Nothing can be entered now.");
    }
}
