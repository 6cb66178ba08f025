package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.Digest;
import org.benchwright.core.PointAddress;
import org.benchwright.core.Ticker;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.Endpoint.Security;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.PointValues;
import org.benchwright.watch.WatchSources;
import org.benchwright.watch.tests.FaultyLine.Fault;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reading an OPC UA server by node-opcua, over a line that is good or bad. */
class OpcUaPeerTest {

    private static final Duration TIMEOUT = Duration.ofSeconds(4);
    private static final PointAddress STATE = new PointAddress.Node("ns=1;s=Unit.State");
    private static final PointAddress AMBIENT = new PointAddress.Node("ns=1;s=Unit.Ambient");
    private static final PointAddress SERVER = new PointAddress.ServerState();

    /**
     * GetEndpoints, CreateSession, ActivateSession, CloseSession, CloseSecureChannel, Read; Create-, Modify-, Transfer- and DeleteSubscriptions,
     * SetPublishingMode, Publish, Republish; Create-, Modify- and DeleteMonitoredItems.
     */
    private static final Set<Integer> READING = Set.of(428, 461, 467, 473, 452, 631, 787, 793, 841, 847, 799, 826, 832, 751, 763, 781);

    @TempDir
    static Path peerFolder;
    private static Peer peer;

    @TempDir
    Path folder;
    private FaultyLine line;
    private WatchSources sources;

    @BeforeAll
    static void startPeer() throws Exception {
        peer = Peer.opcUa(0, peerFolder);
    }

    @AfterAll
    static void stopPeer() {
        int writes = peer.writes();
        peer.close();
        assertEquals(0, writes, "requests that would change something");
    }

    @BeforeEach
    void start() throws Exception {
        peer.set("state", 1);
        peer.set("ambient", 22.5);
        line = new FaultyLine(peer.port());
        sources = new WatchSources(folder, Clock.systemUTC(), Ticker.system());
    }

    @AfterEach
    void stop() throws Exception {
        sources.close();
        line.close();
    }

    private PointReader reader(int port, Security security, boolean subscribe, PointAddress... points) {
        return sources.open(new Endpoint.OpcUa("opc.tcp://127.0.0.1:" + port, security, subscribe), new OneUnit(List.of(points)), TIMEOUT);
    }

    private static Map<PointAddress, BigDecimal> values(PointValues read) {
        return read.values();
    }

    @Test
    void nodesAndTheServersStateArePolled() throws Exception {
        try (PointReader reader = reader(peer.port(), Security.NONE, false, STATE, AMBIENT, SERVER)) {
            assertEquals(Map.of(STATE, BigDecimal.ONE, AMBIENT, new BigDecimal("22.5"), SERVER, BigDecimal.ZERO), values(Reading.again(reader)));
            peer.set("state", 3);
            assertEquals(new BigDecimal(3), values(Reading.again(reader)).get(STATE));
        }
    }

    @Test
    void aSubscriptionTellsChangesByItself() throws Exception {
        try (PointReader reader = reader(peer.port(), Security.NONE, true, STATE)) {
            assertEquals(Map.of(STATE, BigDecimal.ONE), values(Reading.again(reader)));
            peer.set("state", 3);
            long until = System.nanoTime() + Duration.ofSeconds(60).toNanos();
            while (!values(Reading.again(reader)).get(STATE).equals(new BigDecimal(3))) {
                assertTrue(System.nanoTime() < until, "the change was never told");
                Thread.sleep(100);
            }
        }
    }

    @Test
    void aSubscriptionThatIsNotHeardOfIsNotSeen() throws Exception {
        try (PointReader reader = reader(line.port(), Security.NONE, true, STATE)) {
            Reading.again(reader);
            line.become(Fault.HALF_OPEN);
            Thread.sleep(TIMEOUT.multipliedBy(2).plusSeconds(2).toMillis());
            Reading.failure(reader);
            line.become(Fault.NONE);
            peer.set("state", 2);
            assertEquals(Map.of(STATE, new BigDecimal(2)), values(Reading.again(reader)));
        }
    }

    /** A unit has few sessions for others: one that nobody ends is kept until its time is over. */
    @Test
    void theServerKnowsThatItsSessionsAreOverWhenTheWatchEnds() throws Exception {
        try (Peer own = Peer.opcUa(0, peerFolder)) {
            for (boolean subscribed : new boolean[] {false, true}) {
                PointReader reader = reader(own.port(), Security.NONE, subscribed, SERVER);
                Reading.again(reader);
                assertTrue(own.sessions() > 0);
                reader.close();
            }
            sources.close();
            assertEquals(0, own.sessions());
        }
    }

    /**
     * What a watch asks, by the bytes on the line. Services are known by the ids of their encodings (OPC 10000-6, annex A, NodeIds.csv): those of
     * a session, and reading, and of a subscription that the client alone holds; none that changes a node, and none that calls one.
     */
    @Test
    void nothingButReadingIsAskedOnTheLine() throws Exception {
        for (boolean subscribed : new boolean[] {false, true}) {
            try (PointReader reader = reader(line.port(), Security.NONE, subscribed, STATE, AMBIENT)) {
                Reading.again(reader);
                Reading.again(reader);
            }
        }
        sources.close();
        Set<Integer> asked = new TreeSet<>();
        line.asked().forEach(bytes -> asked.addAll(services(bytes)));
        assertTrue(asked.containsAll(Set.of(428, 461, 467, 631, 787, 751, 826, 473)), asked.toString());
        assertEquals(Set.of(), asked.stream().filter(id -> !READING.contains(id)).collect(Collectors.toSet()));
    }

    /** The services in what one connection asked: a message is its kind, its size, channel, token, number and request, then its encoding's id. */
    private static Set<Integer> services(byte[] bytes) {
        Set<Integer> found = new TreeSet<>();
        ByteBuffer all = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        for (int at = 0; at + 28 <= bytes.length; at += all.getInt(at + 4)) {
            String kind = new String(bytes, at, 3, StandardCharsets.US_ASCII);
            if (kind.equals("MSG") || kind.equals("CLO")) {
                assertEquals(1, bytes[at + 24], "an id of four bytes");
                found.add(Short.toUnsignedInt(all.getShort(at + 26)));
            }
        }
        return found;
    }

    @Test
    void anUnknownCertificateIsRefusedUntilSomebodyTrustsIt() throws Exception {
        try (PointReader reader = reader(peer.port(), Security.BASIC256SHA256, false, STATE)) {
            String words = Reading.refusal(reader);
            Path refused = only(folder.resolve("refused"));
            String fingerprint = Digest.of(Files.readAllBytes(refused)).hex();
            assertEquals(fingerprint + ".der", refused.getFileName().toString());
            assertEquals("the certificate of opc.tcp://127.0.0.1:" + peer.port() + " is not trusted. It was put into " + folder.resolve("refused")
                    + " for a look; compare its fingerprint " + fingerprint + " with the unit's, and move it to " + folder.resolve("trusted")
                    + " to trust it", words);
            Files.move(refused, folder.resolve("trusted").resolve("unit.der"));
            assertEquals(Map.of(STATE, BigDecimal.ONE), values(Reading.again(reader)));
        }
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("own-key.der"))));
    }

    private static Path only(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> all = files.toList();
            assertEquals(1, all.size(), all.toString());
            return all.get(0);
        }
    }

    @Test
    void anExpiredCertificateIsRefused(@TempDir Path other) throws Exception {
        try (Peer expired = Peer.opcUa(0, other, "expired");
                PointReader reader = reader(expired.port(), Security.BASIC256SHA256, false, STATE)) {
            Reading.assertRefuses("the certificate of opc.tcp://127.0.0.1:" + expired.port()
                    + " was valid from 2020-01-01T00:00:00Z to 2020-01-31T00:00:00Z only", reader);
        }
    }

    @Test
    void theUnitsOwnTimeIsKeptHoweverWrongItIs() throws Exception {
        peer.set("skew", 7200);
        try (PointReader reader = reader(peer.port(), Security.NONE, false, STATE)) {
            Instant source = Reading.again(reader).source().orElseThrow();
            long ahead = Duration.between(Instant.now(), source).toSeconds();
            assertTrue(ahead > 7100 && ahead < 7300, source.toString());
        } finally {
            peer.set("skew", 0);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"ns=1;s=Unit.Nothing", "ns=9;i=4711"})
    void aNodeThatTheServerDoesNotHaveIsSaid(String id) throws Exception {
        try (PointReader reader = reader(peer.port(), Security.NONE, false, new PointAddress.Node(id))) {
            String words = Reading.refusal(reader);
            assertTrue(words.contains("node " + id + " has no good value"), words);
        }
    }

    @Test
    void aTextIsNoNumber() throws Exception {
        try (PointReader reader = reader(peer.port(), Security.NONE, false, new PointAddress.Node("ns=1;s=Unit.Name"))) {
            String words = Reading.refusal(reader);
            assertTrue(words.endsWith("node ns=1;s=Unit.Name has a value that is neither a number nor on or off"), words);
        }
    }

    @Test
    void whereNobodyListensTheConnectionIsRefused() throws Exception {
        line.close();
        try (PointReader reader = reader(line.port(), Security.NONE, false, STATE)) {
            assertTrue(Reading.refusal(reader).endsWith("refuses the connection; is the unit on, and its server running?"));
        }
    }

    /** Whatever the system says of an address that no single unit can have. */
    @Test
    void whereNoWayLeadsThatIsSaid() throws Exception {
        Endpoint nowhere = new Endpoint.OpcUa("opc.tcp://255.255.255.255:4840", Security.NONE, false);
        try (PointReader reader = sources.open(nowhere, new OneUnit(List.of(STATE)), TIMEOUT)) {
            String words = Reading.refusal(reader);
            assertTrue(words.startsWith("no way leads to opcua opc.tcp://255.255.255.255:4840 security none ("), words);
        }
    }

    @Test
    void aReaderThatIsClosedConnectsNoMore() throws Exception {
        PointReader reader = reader(peer.port(), Security.NONE, false, STATE);
        Reading.again(reader);
        reader.close();
        Reading.assertFails("the watch was ended", reader);
    }

    @Test
    void aServerThatIsStartedAgainIsSeenAgain() throws Exception {
        // With the other peer's certificate: making one takes seconds.
        Peer first = Peer.opcUa(0, peerFolder);
        int port = first.port();
        try (PointReader reader = reader(port, Security.NONE, false, STATE)) {
            first.set("state", 1);
            assertEquals(Map.of(STATE, BigDecimal.ONE), values(Reading.again(reader)));
            first.close();
            Reading.failure(reader);
            try (Peer second = Peer.opcUa(port, peerFolder)) {
                second.set("state", 4);
                assertEquals(Map.of(STATE, new BigDecimal(4)), values(Reading.again(reader)));
            }
        } finally {
            first.close();
        }
    }

    @ParameterizedTest
    @EnumSource(value = Fault.class, names = "NONE", mode = EnumSource.Mode.EXCLUDE)
    void aBadLineIsSaidInTimeAndSeenThroughOnceItIsGood(Fault fault) throws Exception {
        try (PointReader reader = reader(line.port(), Security.NONE, false, STATE)) {
            assertEquals(Map.of(STATE, BigDecimal.ONE), values(Reading.again(reader)));
            line.become(fault);
            long began = System.nanoTime();
            Reading.failure(reader);
            assertTrue(System.nanoTime() - began < TIMEOUT.plusSeconds(30).toNanos(), "told too late");
            line.become(Fault.NONE);
            peer.set("state", 5);
            assertEquals(Map.of(STATE, new BigDecimal(5)), values(Reading.again(reader)));
        }
    }
}
