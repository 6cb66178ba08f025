package org.benchwright.workshop.internal;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

import org.benchwright.engine.plan.Plan;

import com.fasterxml.jackson.databind.JsonNode;

/** Plans as the ledger keeps them: JSON in UTF-8. The same plan always gives the same bytes. */
public final class PlanCodec {

    private final RecordCodec codec = new RecordCodec(TypeNames.plan());
    private final JsonText json = new JsonText();

    /** The plan's bytes. */
    public byte[] bytes(Plan plan) {
        return json.write(codec.fields(plan)).getBytes(StandardCharsets.UTF_8);
    }

    /**
     * The plan.
     *
     * @throws UndecodableException if the bytes are no plan of a format known here
     */
    public Plan plan(byte[] bytes) throws UndecodableException {
        JsonNode node = json.read(text(bytes));
        String format = node.path("format").asText();
        if (!format.equals(String.valueOf(Plan.CURRENT_FORMAT))) {
            throw new UndecodableException("plan: unknown format \"" + format + "\"");
        }
        return codec.record(node, Plan.class, "plan");
    }

    private static String text(byte[] bytes) throws UndecodableException {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new UndecodableException("plan: not UTF-8", e);
        }
    }
}
