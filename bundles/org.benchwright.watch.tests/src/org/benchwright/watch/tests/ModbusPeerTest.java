package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;

import org.benchwright.core.PointAddress;
import org.benchwright.core.PointAddress.NumberForm;
import org.benchwright.core.PointAddress.Register;
import org.benchwright.core.PointAddress.Table;
import org.benchwright.core.Ticker;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.WatchSources;
import org.benchwright.watch.tests.FaultyLine.Fault;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reading a Modbus server by libmodbus, over a line that is good or bad. */
class ModbusPeerTest {

    private static final Duration TIMEOUT = Duration.ofSeconds(1);
    private static final Register RUNS = new Register(Table.DISCRETE_INPUT, 3, NumberForm.BIT, false, false);

    private Peer peer;
    private FaultyLine line;
    private WatchSources sources;

    @BeforeEach
    void start() throws Exception {
        peer = Peer.modbus(0);
        line = new FaultyLine(peer.port());
        sources = new WatchSources(Path.of("unused"), Clock.systemUTC(), Ticker.system());
        peer.set("input", 3, 1);
    }

    @AfterEach
    void stop() throws Exception {
        sources.close();
        line.close();
        int writes = peer.writes();
        peer.close();
        assertEquals(0, writes, "requests that would change something");
    }

    private PointReader reader(int port, int unit, PointAddress... points) {
        return sources.open(new Endpoint.Modbus("127.0.0.1", port, unit), new OneUnit(List.of(points)), TIMEOUT);
    }

    private PointReader throughLine() {
        return reader(line.port(), 1, RUNS);
    }

    private String at(int port, int unit) {
        return "modbus 127.0.0.1:" + port + " unit " + unit;
    }

    @Test
    void allFourTablesAreRead() throws Exception {
        peer.set("coil", 17, 1);
        peer.set("ireg", 30, 240);
        peer.set("hreg", 0, 65535);
        Register coil = new Register(Table.COIL, 17, NumberForm.BIT, false, false);
        Register off = new Register(Table.COIL, 16, NumberForm.BIT, false, false);
        Register input = new Register(Table.INPUT_REGISTER, 30, NumberForm.UNSIGNED_16, false, false);
        Register holding = new Register(Table.HOLDING_REGISTER, 0, NumberForm.SIGNED_16, false, false);
        try (PointReader reader = reader(peer.port(), 1, RUNS, coil, off, input, holding)) {
            assertEquals(Map.of(RUNS, BigDecimal.ONE, coil, BigDecimal.ONE, off, BigDecimal.ZERO, input, new BigDecimal(240), holding,
                    new BigDecimal(-1)), Reading.again(reader).values());
        }
    }

    /** Words in the order in which the unit sends them; -2.5 is C020 0000 and C004 0000 0000 0000 in IEEE 754, computed by hand. */
    @ParameterizedTest
    @CsvSource({
            "UNSIGNED_16, false, false, 65535, FFFF 0000 0000 0000", "SIGNED_16, false, true, 513, 0102 0000 0000 0000",
            "UNSIGNED_32, false, false, 4294901761, FFFF 0001 0000 0000", "UNSIGNED_32, true, false, 131071, FFFF 0001 0000 0000",
            "SIGNED_32, false, false, -65535, FFFF 0001 0000 0000", "SIGNED_32, true, true, 16842751, FFFF 0001 0000 0000",
            "FLOAT_32, false, false, -2.5, C020 0000 0000 0000", "FLOAT_32, true, false, -2.5, 0000 C020 0000 0000",
            "FLOAT_32, false, true, -2.5, 20C0 0000 0000 0000", "FLOAT_32, false, false, 0.1, 3DCC CCCD 0000 0000",
            "UNSIGNED_64, false, false, 18446744073709551615, FFFF FFFF FFFF FFFF", "SIGNED_64, false, false, -1, FFFF FFFF FFFF FFFF",
            "SIGNED_64, true, false, 1, 0001 0000 0000 0000", "FLOAT_64, false, false, -2.5, C004 0000 0000 0000",
            "FLOAT_64, true, true, -2.5, 0000 0000 0000 04C0"})
    void numbersAreWhatTheirBitsMean(NumberForm form, boolean lowFirst, boolean swapped, BigDecimal value, String words) throws Exception {
        String[] each = words.split(" ");
        for (int i = 0; i < each.length; i++) {
            peer.set("hreg", 100 + i, Integer.parseInt(each[i], 16));
        }
        Register point = new Register(Table.HOLDING_REGISTER, 100, form, lowFirst, swapped);
        try (PointReader reader = reader(peer.port(), 1, point)) {
            assertEquals(0, value.compareTo(Reading.again(reader).values().get(point)));
        }
    }

    @Test
    void aNumberThatIsNoneIsNotSeen() throws Exception {
        peer.set("hreg", 100, 0x7FC0);
        try (PointReader reader = reader(peer.port(), 1, new Register(Table.HOLDING_REGISTER, 100, NumberForm.FLOAT_32, false, false))) {
            Reading.assertRefuses(at(peer.port(), 1) + " answers with what is no answer: NaN", reader);
        }
    }

    @Test
    void anAddressThatTheUnitDoesNotHaveIsSaid() throws Exception {
        try (PointReader reader = reader(peer.port(), 1, new Register(Table.INPUT_REGISTER, 9000, NumberForm.UNSIGNED_16, false, false))) {
            Reading.assertRefuses(at(peer.port(), 1) + " answers with exception 2: the address or unit id of a point may be wrong", reader);
            Reading.assertRefuses(at(peer.port(), 1) + " answers with exception 2: the address or unit id of a point may be wrong", reader);
        }
    }

    @Test
    void aWrongUnitIdIsNotAnswered() throws Exception {
        try (PointReader reader = reader(peer.port(), 7, RUNS)) {
            Reading.assertFails("no answer from " + at(peer.port(), 7) + " within 1 s", reader);
        }
    }

    @Test
    void whereNobodyListensTheConnectionIsRefused() throws Exception {
        line.close();
        try (PointReader reader = throughLine()) {
            Reading.assertRefuses(at(line.port(), 1) + " refuses the connection; is the unit on, and its server running?", reader);
        }
    }

    /** Whatever the system says of an address that no single unit can have. */
    @Test
    void whereNoWayLeadsNoConnectionIsSaidToBeLost() throws Exception {
        try (PointReader reader = sources.open(new Endpoint.Modbus("255.255.255.255", 502, 1), new OneUnit(List.of(RUNS)), TIMEOUT)) {
            String words = Reading.refusal(reader);
            assertTrue(words.startsWith("no way leads to modbus 255.255.255.255:502 unit 1 ("), words);
        }
    }

    @Test
    void aReaderThatIsClosedConnectsNoMore() throws Exception {
        PointReader reader = reader(peer.port(), 1, RUNS);
        Reading.again(reader);
        reader.close();
        Reading.assertFails("the watch was ended", reader);
    }

    @ParameterizedTest
    @CsvSource({"HALF_OPEN, no answer from .* within 1 s", "SLOW, no answer from .* within 1 s",
        "RESET, (no answer from .* within 1 s|the connection to .* was lost)",
            "GARBAGE, (no answer from .* within 1 s|the connection to .* was lost|.* answers with what is no answer: .*)"})
    void aBadLineIsSaidInTimeAndSeenThroughOnceItIsGood(Fault fault, String words) throws Exception {
        try (PointReader reader = throughLine()) {
            assertEquals(Map.of(RUNS, BigDecimal.ONE), Reading.again(reader).values());
            line.become(fault);
            long began = System.nanoTime();
            String said = Reading.failure(reader);
            assertTrue(said.matches(words), said);
            assertTrue(System.nanoTime() - began < TIMEOUT.plusSeconds(30).toNanos(), "told too late");
            line.become(Fault.NONE);
            peer.set("input", 3, 0);
            assertEquals(Map.of(RUNS, BigDecimal.ZERO), Reading.again(reader).values());
        }
    }

    @Test
    void aServerThatIsStartedAgainIsSeenAgain() throws Exception {
        try (PointReader reader = reader(peer.port(), 1, RUNS)) {
            assertEquals(Map.of(RUNS, BigDecimal.ONE), Reading.again(reader).values());
            int port = peer.port();
            peer.close();
            Reading.failure(reader);
            peer = Peer.modbus(port);
            assertEquals(Map.of(RUNS, BigDecimal.ZERO), Reading.again(reader).values());
        }
    }
}
