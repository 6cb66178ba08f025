package org.benchwright.workshop.internal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** JSON as text: fields in alphabetical order, no white space; twice the same field is refused. */
final class JsonText {

    /** Made once: it is dear, and safe in several threads as it is never configured again. */
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .build();

    String write(ObjectNode node) {
        try {
            // A tree keeps the order of its fields; as a map it is sorted.
            return MAPPER.writeValueAsString(MAPPER.convertValue(node, Object.class));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of plain values could not be written", e);
        }
    }

    JsonNode read(String text) throws UndecodableException {
        try {
            JsonNode node = MAPPER.readTree(text);
            if (node == null || node.isMissingNode()) {
                throw new UndecodableException("empty text");
            }
            return node;
        } catch (JsonProcessingException e) {
            throw new UndecodableException("not JSON: " + e.getOriginalMessage(), e);
        }
    }
}
