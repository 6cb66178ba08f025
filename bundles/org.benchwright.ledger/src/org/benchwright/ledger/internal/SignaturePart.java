package org.benchwright.ledger.internal;

import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Text;

/**
 * The member {@value #NAME} of a signed event's payload, as texts.
 *
 * @param meaning     word of the meaning
 * @param printedName who signed
 * @param instant     when, the same as the event's
 * @param fingerprint of the key, hexadecimal
 * @param value       the signature, hexadecimal; empty before it is made
 */
public record SignaturePart(String meaning, String printedName, String instant, String fingerprint, String value) {

    /** Name of the member that holds it. */
    public static final String NAME = "signature";

    private static final Set<String> NAMES = Set.of("meaning", "name", "instant", "key", "value");

    /** The part in {@code payload}; empty when there is none or it is not of this form. */
    public static Optional<SignaturePart> in(Members payload) {
        return payload.members(NAME).filter(part -> part.values().keySet().equals(NAMES)
                && part.values().values().stream().allMatch(Text.class::isInstance))
                .map(part -> new SignaturePart(text(part, "meaning"), text(part, "name"), text(part, "instant"), text(part, "key"),
                        text(part, "value")));
    }

    private static String text(Members part, String name) {
        return part.text(name).orElseThrow();
    }

    /** This part with the signature in it. */
    public SignaturePart signed(byte[] signature) {
        return new SignaturePart(meaning, printedName, instant, fingerprint, HexFormat.of().formatHex(signature));
    }

    /** The signature's bytes; empty when the text is not hexadecimal. */
    public Optional<byte[]> signature() {
        try {
            return Optional.of(HexFormat.of().parseHex(value));
        } catch (IllegalArgumentException notHexadecimal) {
            return Optional.empty();
        }
    }

    /** The member's value. */
    public Members members() {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        members.put("meaning", new Text(meaning));
        members.put("name", new Text(printedName));
        members.put("instant", new Text(instant));
        members.put("key", new Text(fingerprint));
        members.put("value", new Text(value));
        return new Members(members);
    }
}
