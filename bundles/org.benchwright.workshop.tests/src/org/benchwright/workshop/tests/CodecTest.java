package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Quantity;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Plan;
import org.benchwright.workshop.internal.EventCodec;
import org.benchwright.workshop.internal.PlanCodec;
import org.benchwright.workshop.internal.UndecodableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Events and plans come back from the ledger as they went in, and nothing else comes back at all. */
class CodecTest {

    private static final int VALUES = 200;
    private static final int PLANS = 30;

    private final EventCodec events = new EventCodec();
    private final PlanCodec plans = new PlanCodec();

    static Stream<Class<? extends Record>> bodies() {
        return Reach.leaves(EventBody.class).stream().map(type -> type.asSubclass(Record.class));
    }

    @ParameterizedTest
    @MethodSource("bodies")
    void everyBodyComesBackAsItWas(Class<? extends Record> type) throws Exception {
        RandomRecords random = new RandomRecords(type.getName().hashCode());
        for (int i = 0; i < VALUES; i++) {
            EventBody body = (EventBody) random.of(type);
            String payload = events.payload(body);
            assertEquals(body, events.body(events.kind(body), payload));
            assertEquals(payload, events.payload(events.body(events.kind(body), payload)));
        }
    }

    @Test
    void everyPlanComesBackAsItWas() throws Exception {
        for (int seed = 0; seed < PLANS; seed++) {
            Plan made = new RandomRecords(seed).of(Plan.class);
            Plan plan = new Plan(Plan.CURRENT_FORMAT, made.name(), made.title(), made.revision(), made.purpose(), made.retestOf(),
                    made.provesBenchFor(), made.family(), made.claim(), made.hazards(), made.protectedItems(), made.instruments(),
                    made.preconditions(), made.preconditionUnmet(), made.stages(), made.makeSafe(), made.end());
            byte[] bytes = plans.bytes(plan);
            assertEquals(plan, plans.plan(bytes));
            assertArrayEquals(bytes, plans.bytes(plans.plan(bytes)));
        }
        assertEquals(SamplePlan.acceptance(), plans.plan(plans.bytes(SamplePlan.acceptance())));
    }

    @Test
    void aPayloadReadsAsItIsDocumented() {
        Fact body = new Observation.Measured("supply_volts", "23,90V", Quantity.of("23.90", "V"));
        assertEquals("measured", events.kind(body));
        assertEquals("{\"check\":\"supply_volts\",\"raw\":\"23,90V\",\"value\":\"23.90 V\"}", events.payload(body));
        Fact without = new Observation.PreconditionAnswered("strap", true, "4711", Optional.empty());
        assertEquals("{\"met\":true,\"precondition\":\"strap\",\"text\":\"4711\"}", events.payload(without));
        assertEquals("{\"check\":\"log\",\"lines\":[]}", events.payload(new Observation.FaultLogEntered("log", List.of())));
    }

    @Test
    void textsAreKeptInNormalForm() {
        Fact.Noted asKept = (Fact.Noted) events.asKept(new Fact.Noted("e\u0301tage"));
        assertEquals("\u00e9tage", asKept.text());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
            "noted     | {\"text\":\"a\",\"more\":\"b\"}        | noted: unknown field \"more\"",
            "noted     | {}                                     | noted.text is missing",
            "noted     | {\"text\":1}                           | noted.text: a string was expected",
            "noted     | {\"text\":null}                        | noted.text: a string was expected",
            "noted     | {\"text\":\"a\",\"text\":\"b\"}        | not JSON: Duplicate field 'text'",
            "noted     | {\"text\":\"a\"} {}                    | not JSON: Trailing token (of type START_OBJECT) found",
            "noted     | [\"a\"]                                | noted: an object was expected",
            "noticed   | {\"text\":\"a\"}                       | unknown kind of event \"noticed\"",
            "measured  | {\"check\":\"a\",\"raw\":\"\",\"value\":\"24V\"} | measured.value: \"24V\" is not understood",
            "measured  | {\"check\":\"a\",\"raw\":\"\",\"value\":\"24 volt\"} | measured.value: \"24 volt\" is not understood",
            "struck    | {\"sequence\":\"+7\"}                  | struck.sequence: \"+7\" is not understood",
            "struck    | {\"sequence\":\"07\"}                  | struck.sequence: \"07\" is not understood",
            "switched  | {\"item\":\"a\",\"live\":\"true\"}     | switched.live: true or false was expected",
            "seen      | {\"check\":\"a\",\"asSeen\":\"\",\"answer\":\"MAYBE\"} | seen.answer: \"MAYBE\" is not understood",
            "interrupted | {\"gap\":\"60 s\"}                   | interrupted.gap: \"60 s\" is not understood",
            "interrupted | {\"gap\":\"PT60S\"}                  | interrupted.gap: \"PT60S\" is not understood",
            "fault-log-entered | {\"check\":\"a\",\"lines\":{}} | fault-log-entered.lines: a list was expected",
            "fault-log-entered | {\"check\":\"a\",\"lines\":[{\"code\":\"W01\"}]} | fault-log-entered.lines[0].text is missing"})
    void whatWasNotWrittenHereIsRefused(String kind, String payload, String words) {
        UndecodableException refused = assertThrows(UndecodableException.class, () -> events.body(kind, payload));
        assertTrue(refused.getMessage().startsWith(words), refused.getMessage());
    }

    @Test
    void aPlanOfAnotherFormatIsRefused() {
        String text = new String(plans.bytes(SamplePlan.acceptance()), StandardCharsets.UTF_8);
        String newer = text.replace("\"format\":\"1\"", "\"format\":\"2\"");
        assertFalse(newer.equals(text));
        UndecodableException refused = assertThrows(UndecodableException.class, () -> plans.plan(newer.getBytes(StandardCharsets.UTF_8)));
        assertEquals("plan: unknown format \"2\"", refused.getMessage());
    }

    @Test
    void aMoveWhereAnActionBelongsIsRefused() {
        String text = new String(plans.bytes(SamplePlan.acceptance()), StandardCharsets.UTF_8);
        String forged = text.replace("\"type\":\"confirm\"", "\"type\":\"conclude\"");
        assertFalse(forged.equals(text));
        UndecodableException refused = assertThrows(UndecodableException.class, () -> plans.plan(forged.getBytes(StandardCharsets.UTF_8)));
        assertTrue(refused.getMessage().endsWith("unknown type \"conclude\""), refused.getMessage());
    }

    @Test
    void bytesThatAreNoTextAreRefused() {
        assertThrows(UndecodableException.class, () -> plans.plan(new byte[] {(byte) 0xff, (byte) 0xfe}));
        assertThrows(UndecodableException.class, () -> plans.plan(new byte[0]));
    }
}
