package org.benchwright.ledger.internal;

import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Text;

/**
 * The member {@value #NAME} of a signed event's payload, as texts.
 *
 * @param meaning     word of the meaning
 * @param printedName who signed
 * @param instant     when, the same as the event's
 * @param fingerprint of the key, hexadecimal
 * @param register    number of the last event of the register of people that the bench knew when it was signed; empty in records from
 *                    before there was one, and in the books
 * @param value       the signature, hexadecimal; empty before it is made
 */
public record SignaturePart(String meaning, String printedName, String instant, String fingerprint, Optional<String> register,
        String value) {

    /** Name of the member that holds it. */
    public static final String NAME = "signature";

    /** Name of the member that says how far the register was known. */
    public static final String REGISTER = "register";

    private static final Set<String> NAMES = Set.of("meaning", "name", "instant", "key", "value");
    private static final Set<String> ALSO_REGISTER = Set.of("meaning", "name", "instant", "key", "value", REGISTER);

    /** The part in {@code payload}; empty when there is none or it is not of this form. */
    public static Optional<SignaturePart> in(Members payload) {
        return payload.members(NAME).filter(part -> isForm(part.values().keySet())
                && part.values().values().stream().allMatch(Text.class::isInstance))
                .map(part -> new SignaturePart(text(part, "meaning"), text(part, "name"), text(part, "instant"), text(part, "key"),
                        part.text(REGISTER), text(part, "value")));
    }

    private static boolean isForm(Set<String> names) {
        return names.equals(NAMES) || names.equals(ALSO_REGISTER);
    }

    private static String text(Members part, String name) {
        return part.text(name).orElseThrow();
    }

    /** This part with the signature in it. */
    public SignaturePart signed(byte[] signature) {
        return new SignaturePart(meaning, printedName, instant, fingerprint, register, HexFormat.of().formatHex(signature));
    }

    /** The number in {@link #register}, when it is written as numbers of events are. */
    public OptionalLong registerKnown() {
        String text = register.orElse("");
        return text.matches("[1-9][0-9]{0,17}") ? OptionalLong.of(Long.parseLong(text)) : OptionalLong.empty();
    }

    /** Whether the signature is that key's over {@code statement}; a text that is not hexadecimal is none. */
    public boolean isBy(SignerKey key, byte[] statement) {
        try {
            return key.verifies(statement, HexFormat.of().parseHex(value));
        } catch (IllegalArgumentException notHexadecimal) {
            return false;
        }
    }

    /** The member's value. */
    public Members members() {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        members.put("meaning", new Text(meaning));
        members.put("name", new Text(printedName));
        members.put("instant", new Text(instant));
        members.put("key", new Text(fingerprint));
        register.ifPresent(number -> members.put(REGISTER, new Text(number)));
        members.put("value", new Text(value));
        return new Members(members);
    }
}
