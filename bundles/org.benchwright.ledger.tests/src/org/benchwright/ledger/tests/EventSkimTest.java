package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.EventCodec;
import org.benchwright.ledger.internal.PlainEvents;
import org.benchwright.ledger.internal.References;
import org.benchwright.ledger.internal.SignaturePart;
import org.junit.jupiter.api.Test;

/** What verification skims of an event's bytes is what the careful reader reads, and it refuses what that refuses. */
class EventSkimTest {

    private static final String DIGEST = "sha256:" + "0123456789abcdef".repeat(4);

    private static final List<String> PAYLOADS = List.of("{}", "{\"a\":\"23.90\",\"b\":[\"x\",{\"c\":null}],\"d\":true}",
            "{\"file\":\"" + DIGEST + "\",\"more\":[\"" + DIGEST + "\",\"sha256:no\"]}",
            "{\"note\":\"Pr\u00fcfling l\u00e4uft\",\"t\":\"\\n\\u0001\\\"\"}",
            "{\"e\":\"\u00e9 \u2713 \ud83d\udd27\",\"f\":\"" + DIGEST + "\"}", "{\"signature\":{\"key\":\"k\",\"name\":\"n\"}}",
            "{\"signature\":\"no\"}", "{\"inner\":{\"signature\":\"x\"}}", "{\"deep\":" + "[".repeat(61) + "\"x\"" + "]".repeat(61) + "}",
            "{\"deep\":" + "[".repeat(62) + "\"x\"" + "]".repeat(62) + "}", "{\"deep\":" + "[".repeat(63) + "\"x\"" + "]".repeat(63) + "}");

    private static byte[] event(String payload) {
        return ("{\"actor\":\"QN\",\"format\":\"benchwright.event/1\",\"instant\":\"2026-03-02T07:30:00Z\",\"kind\":\"observed\",\"offset\":\"PT1.5S\","
                + "\"payload\":" + payload + ",\"role\":\"technician\",\"sequence\":\"3\",\"sitting\":\"1\",\"test\":\"T-4K7M2-QXD9R\"}")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static Optional<EventCodec.Said> skim(byte[] bytes) {
        try {
            return Optional.of(EventCodec.skim(bytes));
        } catch (PayloadException refused) {
            return Optional.empty();
        }
    }

    /** Whether the bytes are an event. */
    private static boolean compare(byte[] bytes) {
        Optional<Event> careful;
        try {
            careful = Optional.of(EventCodec.decode(bytes));
        } catch (PayloadException refused) {
            careful = Optional.empty();
        }
        Optional<EventCodec.Said> skimmed = skim(bytes);
        String text = new String(bytes, StandardCharsets.UTF_8);
        Optional<PlainEvents.Plain> plain = new PlainEvents().read(bytes);
        plain.ifPresent(read -> {
            assertEquals(skimmed.map(EventCodec.Said::event), Optional.of(read.event()), text);
            assertEquals(skimmed.map(EventCodec.Said::references), Optional.of(read.references()), text);
        });
        assertEquals(careful.isPresent(), skimmed.isPresent(), text);
        if (careful.isPresent()) {
            Event event = careful.get();
            Event seen = skimmed.get().event();
            assertEquals(References.in(event.payload()), skimmed.get().references(), text);
            boolean signed = event.payload().values().containsKey(SignaturePart.NAME);
            assertEquals(signed ? event : new Event(event.test(), event.sequence(), event.instant(), event.sitting(), event.offset(), event.actor(),
                    event.kind(), seen.payload()), seen, text);
            assertEquals(signed, !seen.payload().values().isEmpty(), text);
        }
        return careful.isPresent();
    }

    @Test
    void everyKindOfPayloadIsSkimmedAsItIsRead() {
        PAYLOADS.forEach(payload -> compare(event(payload)));
        assertTrue(PAYLOADS.size() > 10);
    }

    @Test
    void plainEventsAreThoseWithoutSignatureEscapesRareLettersOrTooManyLevels() {
        List<Boolean> plain = PAYLOADS.stream().map(payload -> new PlainEvents().read(event(payload)).isPresent()).toList();
        assertEquals(List.of(true, true, true, false, false, false, false, true, true, false, false), plain);
    }

    @Test
    void whatWasKeptOfOneEventIsNotTakenForAnother() {
        PlainEvents events = new PlainEvents();
        String usual = new String(event("{}"), StandardCharsets.UTF_8);
        List<String> others = List.of(usual, usual.replace("QN", "LW"), usual.replace("technician", "auditor"), usual.replace("observed", "opened"),
                usual.replace("T-4K7M2-QXD9R", "T-4K7M2-QXD9T"), usual.replace("\"3\"", "\"4\""),
                usual.replace("PT1.5S", "PT0S"), usual.replace("QN", "Q N"), usual);
        for (String text : others) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            assertEquals(skim(bytes).map(EventCodec.Said::event), events.read(bytes).map(PlainEvents.Plain::event), text);
        }
    }

    @Test
    void brokenBytesAreRefusedByBothOrByNone() {
        Random random = new Random(9);
        List<byte[]> events = new ArrayList<>();
        PAYLOADS.forEach(payload -> events.add(event(payload)));
        int taken = 0;
        for (int i = 0; i < 60_000; i++) {
            byte[] bytes = events.get(random.nextInt(events.size())).clone();
            int at = random.nextInt(bytes.length);
            switch (random.nextInt(4)) {
                case 0 -> bytes[at] = (byte) random.nextInt(256);
                case 1 -> bytes[at] = "{}[]\",:\\ 0a\u0000n".getBytes(StandardCharsets.UTF_8)[random.nextInt(13)];
                case 2 -> bytes = Arrays.copyOf(bytes, at);
                default -> bytes = twice(bytes, at, Math.min(bytes.length, at + 1 + random.nextInt(30)));
            }
            taken += compare(bytes) ? 1 : 0;
        }
        assertTrue(taken > 1000 && taken < 59_000, "both kinds must come up: " + taken);
    }

    private static byte[] twice(byte[] bytes, int from, int to) {
        byte[] longer = new byte[bytes.length + to - from];
        System.arraycopy(bytes, 0, longer, 0, to);
        System.arraycopy(bytes, from, longer, to, bytes.length - from);
        return longer;
    }
}
