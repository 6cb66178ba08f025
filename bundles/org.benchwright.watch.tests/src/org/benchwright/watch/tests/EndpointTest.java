package org.benchwright.watch.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;

import org.benchwright.core.PointAddress;
import org.benchwright.core.Ticker;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.EndpointFormatException;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.WatchSources;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a unit is reached, as somebody may write it. */
class EndpointTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"modbus plc-7 | modbus plc-7:502 unit 1", "modbus [::1]:5020 unit 0 | modbus [::1]:5020 unit 0",
            "opcua opc.tcp://bench_plc | opcua opc.tcp://bench_plc security basic256sha256",
            "opcua OPC.TCP://192.0.2.8:4841/units/a security NONE subscribed | opcua opc.tcp://192.0.2.8:4841/units/a security none subscribed",
            "opcua opc.tcp://[2001:db8::1]:4840 security none | opcua opc.tcp://[2001:db8::1]:4840 security none",
            "simulated stops after 2 min silent from 1 s for 2 s | simulated stops after 2 min silent from 1 s for 2 s"})
    void isReadAsWritten(String written, String words) throws Exception {
        assertEquals(words, Endpoint.parse(written).words());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"opcua opc.tcp://192.0.2.8:99999 | 99999 is not between 1 and 65535",
        "opcua opc.tcp://192.0.2.8:0 | 0 is not between 1 and 65535",
            "opcua opc.tcp://:4840 | does not say where a unit is reached", "opcua opc.tcp://192.0.2.8:-1 | does not say where a unit is reached",
            "opcua http://192.0.2.8 | does not say where a unit is reached", "modbus 192.0.2.8:502:502 | does not say where a unit is reached",
            "modbus 192.0.2.8 unit 256 | 256 is not between 0 and 255", "simulated silent from 5 s | does not say where a unit is reached"})
    void whatNobodyCanReachIsRefused(String written, String words) {
        String said = assertThrows(EndpointFormatException.class, () -> Endpoint.parse(written)).getMessage();
        assertTrue(said.contains(words), said);
    }

    /** No name begins with a dot, so that none is asked for on the network. */
    @Test
    void aNameThatNobodyKnowsIsSaid() throws Exception {
        try (WatchSources sources = new WatchSources(Path.of("unused"), Clock.systemUTC(), Ticker.system());
                PointReader reader = sources.open(Endpoint.parse("opcua opc.tcp://.bench:4840 security none"),
                        new OneUnit(List.of(new PointAddress.ServerState())), Duration.ofSeconds(4))) {
            Reading.assertRefuses("the name .bench is not known in this network", reader);
        }
    }
}
