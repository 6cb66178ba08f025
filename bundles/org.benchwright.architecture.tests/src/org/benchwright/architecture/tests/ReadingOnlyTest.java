package org.benchwright.architecture.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Watching a unit is reading. The libraries can write, so that no class of the product may name a request or a method of theirs that changes
 * anything in a unit.
 */
class ReadingOnlyTest {

    /** Requests and methods of Modbus and OPC UA that change something, raw ones that could, and the servers. */
    private static final Pattern CHANGES = Pattern.compile(".*(Write|MaskWrite|ReadWrite|HistoryUpdate|CallMethod|AddNodes|AddReferences|DeleteNodes|"
            + "DeleteReferences|RegisterServer|SetTriggering|Server(?!_)).*|.*\\.(write.*|maskWrite.*|readWrite.*|send.*|historyUpdate.*|call.*|addNodes.*|"
            + "addReferences.*|deleteNodes.*|deleteReferences.*|registerServer.*|registerNodes.*|setValue.*)", Pattern.DOTALL);

    @Test
    void nothingThatChangesAUnitIsNamed() {
        Set<String> named = CompiledClasses.ALL.named("com.digitalpetri.modbus", "org.eclipse.milo");
        assertTrue(named.contains("ModbusClient.readCoilsAsync") || named.contains("ModbusTcpClient.readCoilsAsync"), named.toString());
        assertTrue(named.contains("OpcUaClient.readValuesAsync"), named.toString());
        assertEquals(List.of(), named.stream().filter(name -> CHANGES.matcher(name).matches()).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"WriteSingleCoilRequest", "ModbusTcpClient.writeSingleCoilAsync", "MaskWriteRegisterRequest", "ModbusTcpClient.sendRawAsync",
            "ReadWriteMultipleRegistersRequest", "OpcUaClient.writeValuesAsync", "WriteValue", "OpcUaClient.callAsync", "CallMethodRequest",
            "OpcUaClient.historyUpdateAsync", "ModbusTcpServer", "OpcUaClient.addNodesAsync"})
    void theRuleFindsThem(String name) {
        assertTrue(CHANGES.matcher(name).matches());
    }
}
