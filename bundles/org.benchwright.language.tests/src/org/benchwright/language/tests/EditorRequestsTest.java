package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.server.EditorServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Requests that no answer fits, byte by byte: whatever an editor asks, it gets a code of the protocol and words, and nothing
 * from inside.
 */
class EditorRequestsTest {

    private static final Pattern CODE = Pattern.compile("\"id\":7,\"error\":\\{\"code\":(-?\\d+)");
    private static final String INITIALIZE = "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}";
    private static final String EXIT = "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}";

    /**
     * -32601 is "method not found", -32602 "invalid params", -32603 "internal error", -32600 "invalid request", -32700
     * "parse error": JSON-RPC 2.0, section 5.1.
     */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
            "textDocument/documentHighlight | {\"textDocument\":{\"uri\":\"file:///x.procedure\"},\"position\":{\"line\":0,\"character\":0}} | -32601",
            "textDocument/signatureHelp | {\"textDocument\":{\"uri\":\"file:///x.procedure\"},\"position\":{\"line\":0,\"character\":0}} | -32601",
            "textDocument/codeLens | {\"textDocument\":{\"uri\":\"file:///x.procedure\"}} | -32601",
            "bench/nothing | {} | -32601",
            "textDocument/hover | {\"textDocument\":{\"uri\":\"file:///x.procedure\"},\"position\":{\"line\":4294967296,\"character\":0}} | -32700",
            "textDocument/rangeFormatting | {} | -32600",
            "textDocument/hover | null | -32603",
            "textDocument/hover | {\"textDocument\":null,\"position\":{\"line\":0,\"character\":0}} | -32602",
            "textDocument/rename | {\"textDocument\":{\"uri\":\"file:///x.procedure\"},\"position\":{\"line\":0,\"character\":0}} | -32602"})
    void whatCannotBeAnsweredIsSaid(String method, String parameters, int code) throws Exception {
        String said = serve(INITIALIZE, "{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"" + method + "\",\"params\":"
                + parameters + "}");
        Matcher found = CODE.matcher(said);
        assertEquals(List.of(code), found.results().map(each -> Integer.valueOf(each.group(1))).toList(), said);
        assertFalse(said.contains("\\tat ") || said.contains("Exception"), said);
    }

    /**
     * -32002 is "server not initialized", -32600 "invalid request": the protocol's basic structure, initialize and shutdown.
     */
    @Test
    void nothingIsAnsweredBeforeTheBeginningAndAfterTheEnd() throws Exception {
        String hover = "{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"textDocument/hover\",\"params\":{\"textDocument\":{\"uri\":\"file:///x.procedure\"},"
                + "\"position\":{\"line\":0,\"character\":0}}}";
        String before = serve(hover, INITIALIZE);
        assertTrue(before.contains("\"id\":7,\"error\":{\"code\":-32002") && before.contains("\"id\":1,\"result\""), before);
        String after = serve(INITIALIZE, "{\"jsonrpc\":\"2.0\",\"id\":2,\"method\":\"shutdown\"}", hover);
        assertTrue(after.contains("\"id\":7,\"error\":{\"code\":-32600"), after);
    }

    private static String serve(String... messages) throws Exception {
        List<String> all = new ArrayList<>(List.of(messages));
        all.add(EXIT);
        StringBuilder in = new StringBuilder();
        all.forEach(each -> in.append("Content-Length: ").append(each.getBytes(StandardCharsets.UTF_8).length)
                .append("\r\n\r\n").append(each));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        EditorServer.serve("0", ApprovedRevisions::none,
                new ByteArrayInputStream(in.toString().getBytes(StandardCharsets.UTF_8)), out);
        return out.toString(StandardCharsets.UTF_8);
    }
}
