package org.benchwright.workshop.internal;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

import org.benchwright.engine.FieldReturn;

/** Returns from the field as the ledger keeps them: {@code {"complaint":...,"fault":...,"on":...}}, beside the signature. */
final class ReturnCodec {

    private static final String ON = "on";
    private static final String COMPLAINT = "complaint";
    private static final String FAULT = "fault";
    private static final Set<String> FIELDS = Set.of(ON, COMPLAINT, FAULT);

    private final JsonText json = new JsonText();

    String payload(FieldReturn back) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put(ON, back.on().toString());
        node.put(COMPLAINT, back.complaint());
        node.put(FAULT, back.fault().word());
        return json.write(node);
    }

    FieldReturn read(String payload) throws UndecodableException {
        JsonNode node = SignedFields.of(payload, FIELDS);
        try {
            return new FieldReturn(LocalDate.parse(text(node, ON)), text(node, COMPLAINT),
                    FieldReturn.Fault.find(text(node, FAULT)).orElseThrow(() -> new UndecodableException("unknown " + FAULT)));
        } catch (DateTimeException e) {
            throw new UndecodableException(ON + " is no day", e);
        }
    }

    private static String text(JsonNode node, String field) throws UndecodableException {
        return Optional.ofNullable(node.get(field)).filter(JsonNode::isTextual).map(JsonNode::textValue)
                .orElseThrow(() -> new UndecodableException(field + " is missing"));
    }
}
