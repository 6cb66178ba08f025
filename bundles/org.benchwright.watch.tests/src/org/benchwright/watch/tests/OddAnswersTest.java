package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;

import org.benchwright.core.PointAddress.NumberForm;
import org.benchwright.core.PointAddress.Register;
import org.benchwright.core.PointAddress.Table;
import org.benchwright.core.Ticker;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.WatchSources;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Answers over Modbus that no sound server gives, byte by byte as the Modbus Application Protocol Specification writes frames. */
class OddAnswersTest {

    private static final Duration TIMEOUT = Duration.ofSeconds(1);
    private static final Register RUNS = new Register(Table.DISCRETE_INPUT, 3, NumberForm.BIT, false, false);
    private static final int REQUEST_BYTES = 12;

    private ServerSocket server;
    private WatchSources sources;
    private volatile String answer = "";
    private volatile String asked = "";

    @BeforeEach
    void start() throws Exception {
        server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        sources = new WatchSources(Path.of("unused"), Clock.systemUTC(), Ticker.system());
        daemon(() -> {
            while (true) {
                Socket near = server.accept();
                daemon(() -> serve(near));
            }
        });
    }

    @AfterEach
    void stop() throws Exception {
        sources.close();
        server.close();
    }

    private interface Work {
        void carryOut() throws IOException;
    }

    private static void daemon(Work work) {
        Thread thread = new Thread(() -> {
            try {
                work.carryOut();
            } catch (IOException closed) {
                // The test is over.
            }
        }, "odd answers");
        thread.setDaemon(true);
        thread.start();
    }

    /** Answers each request with the bytes of the test, T being the request's transaction. */
    private void serve(Socket near) throws IOException {
        try (near) {
            InputStream in = near.getInputStream();
            OutputStream out = near.getOutputStream();
            for (byte[] request = in.readNBytes(REQUEST_BYTES); request.length == REQUEST_BYTES; request = in.readNBytes(REQUEST_BYTES)) {
                String hex = HexFormat.of().withUpperCase().formatHex(request);
                asked = hex.substring(4);
                out.write(HexFormat.of().parseHex(answer.replace("T", hex.substring(0, 4)).replace(" ", "")));
                out.flush();
            }
        }
    }

    private PointReader reader() {
        return sources.open(new Endpoint.Modbus("127.0.0.1", server.getLocalPort(), 1), new OneUnit(List.of(RUNS)), TIMEOUT);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "T 0000 0004 02 02 01 01 | is asked, and unit 2 answers; what it reads may be another unit's",
            "T 0000 0003 01 82 04 | answers with exception 4: the unit can't answer now",
            "T 0000 0003 01 82 06 | answers with exception 6: the unit can't answer now",
            "T 0000 0003 01 82 0A | answers with exception 10: the gateway doesn't reach the unit; is it on, and is its unit id right?",
            "T 0000 0003 01 82 0B | answers with exception 11: the gateway doesn't reach the unit; is it on, and is its unit id right?",
            "T 0000 0003 01 82 03 | answers with exception 3: the address or unit id of a point may be wrong",
            "T 0000 0002 01 02 | answers with more or less than was asked for",
            "T 0000 0004 01 02 09 01 | answers with more or less than was asked for",
            "T 0000 0005 01 02 02 01 01 | answers with more or less than was asked for"})
    void whatIsWrongWithAnAnswerIsSaid(String bytes, String words) throws Exception {
        answer = bytes;
        try (PointReader reader = reader()) {
            Reading.assertRefuses("modbus 127.0.0.1:" + server.getLocalPort() + " unit 1 " + words, reader);
        }
    }

    @Test
    void anAnswerOfAnotherProtocolIsNone() throws Exception {
        answer = "T 0001 0004 01 02 01 01";
        try (PointReader reader = reader()) {
            Reading.assertFails("no answer from modbus 127.0.0.1:" + server.getLocalPort() + " unit 1 within 1 s", reader);
        }
    }

    /** The unit's own answer counts although a neighbour's came first, and what is asked is to read one discrete input. */
    @Test
    void theUnitsOwnAnswerIsTaken() throws Exception {
        answer = "T 0000 0004 07 02 01 00 T 0000 0004 01 02 01 01";
        try (PointReader reader = reader()) {
            assertEquals(Map.of(RUNS, BigDecimal.ONE), Reading.again(reader).values());
            assertEquals("0000" + "0006" + "01" + "02" + "0003" + "0001", asked);
        }
    }
}
