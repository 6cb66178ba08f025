package org.benchwright.ledger.internal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.internal.JsonValue.Flag;
import org.benchwright.ledger.internal.JsonValue.Items;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Nothing;
import org.benchwright.ledger.internal.JsonValue.Text;

/**
 * JSON text in, canonical bytes (RFC 8785) out. On the way in strings are brought to Unicode NFC, and what would not survive is refused:
 * numbers, half surrogate pairs, names that occur twice, more than {@value #DEPTH} levels.
 */
public final class CanonicalJson {

    /** The first character that NFC may do something with. */
    static final char FIRST_COMBINING = 0x300;
    private static final char REPLACEMENT = 0xFFFD;

    /** Levels of arrays and objects that are read; hostile nesting must not use up the stack. */
    public static final int DEPTH = 64;

    private static final JsonFactory FACTORY = new JsonFactory();

    private CanonicalJson() {
    }

    /** The object in {@code text}. */
    public static Members parse(String text) throws PayloadException {
        try (JsonParser parser = FACTORY.createParser(text)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw new PayloadException(Messages.text("payload.notAnObject"));
            }
            Members members = members(parser, 1);
            if (parser.nextToken() != null) {
                throw new PayloadException(Messages.text("payload.more"));
            }
            return members;
        } catch (IOException malformed) {
            throw new PayloadException(Messages.text("payload.malformed"), malformed);
        }
    }

    /** The object in {@code text}, whose texts are in Unicode NFC already; any other form is refused. */
    static Members parseComposed(String text) throws PayloadException {
        try (JsonParser parser = FACTORY.createParser(text)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if ((token == JsonToken.FIELD_NAME || token == JsonToken.VALUE_STRING) && !normalise(parser.getText()).equals(parser.getText())) {
                    throw new PayloadException(Messages.text("payload.malformed"));
                }
            }
        } catch (IOException malformed) {
            throw new PayloadException(Messages.text("payload.malformed"), malformed);
        }
        return parse(text);
    }

    /** The object in UTF-8 {@code bytes}. */
    public static Members parse(byte[] bytes) throws PayloadException {
        return parse(utf8(bytes));
    }

    /** The object in UTF-8 {@code bytes} that are its canonical form already; any other form is refused. */
    public static Members parseCanonical(byte[] bytes) throws PayloadException {
        return CanonicalReader.read(utf8(bytes));
    }

    static String utf8(byte[] bytes) throws PayloadException {
        // What is malformed comes out as a replacement character, and doesn't go back to the same bytes.
        String text = new String(bytes, StandardCharsets.UTF_8);
        if (text.indexOf(REPLACEMENT) >= 0 && !Arrays.equals(text.getBytes(StandardCharsets.UTF_8), bytes)) {
            throw new PayloadException(Messages.text("payload.malformed"));
        }
        return text;
    }

    /** The one byte sequence that RFC 8785 has for {@code value}. */
    public static byte[] bytes(Members value) {
        return CanonicalText.bytes(value);
    }

    /** {@code value} for people to read; members stay in their order. */
    public static String indented(Members value) {
        try {
            StringWriter text = new StringWriter();
            try (JsonGenerator generator = FACTORY.createGenerator(text).useDefaultPrettyPrinter()) {
                write(value, generator);
            }
            return text.toString();
        } catch (IOException impossible) {
            throw new IllegalStateException("a value that was built is valid JSON", impossible);
        }
    }

    /** {@link #bytes} as text. */
    public static String text(Members value) {
        return new String(bytes(value), StandardCharsets.UTF_8);
    }

    /** {@code raw} in Unicode NFC; half of a surrogate pair is refused, it has no UTF-8. */
    public static String normalise(String raw) throws PayloadException {
        boolean composed = true;
        for (int i = 0; i < raw.length(); i++) {
            char unit = raw.charAt(i);
            // Nothing before the combining characters can be composed or taken apart by NFC.
            composed &= unit < FIRST_COMBINING;
            if (!Character.isSurrogate(unit)) {
                continue;
            }
            if (Character.isLowSurrogate(unit) || i + 1 == raw.length() || !Character.isLowSurrogate(raw.charAt(i + 1))) {
                throw new PayloadException(Messages.text("payload.surrogate"));
            }
            i++;
        }
        return composed ? raw : Normalizer.normalize(raw, Normalizer.Form.NFC);
    }

    private static JsonValue value(JsonParser parser, JsonToken token, int depth) throws IOException, PayloadException {
        if (depth > DEPTH) {
            throw new PayloadException(Messages.text("payload.deep", DEPTH));
        }
        return switch (token) {
            case VALUE_STRING -> new Text(normalise(parser.getText()));
            case VALUE_TRUE -> new Flag(true);
            case VALUE_FALSE -> new Flag(false);
            case VALUE_NULL -> new Nothing();
            case START_ARRAY -> items(parser, depth);
            case START_OBJECT -> members(parser, depth);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> throw new PayloadException(
                    Messages.text("payload.number", parser.getText()));
            default -> throw new PayloadException(Messages.text("payload.malformed"));
        };
    }

    private static Items items(JsonParser parser, int depth) throws IOException, PayloadException {
        List<JsonValue> values = new ArrayList<>();
        for (JsonToken token = next(parser); token != JsonToken.END_ARRAY; token = next(parser)) {
            values.add(value(parser, token, depth + 1));
        }
        return new Items(values);
    }

    private static Members members(JsonParser parser, int depth) throws IOException, PayloadException {
        Map<String, JsonValue> values = new LinkedHashMap<>();
        for (JsonToken token = next(parser); token != JsonToken.END_OBJECT; token = next(parser)) {
            String name = normalise(parser.currentName());
            if (values.put(name, value(parser, next(parser), depth + 1)) != null) {
                throw new PayloadException(Messages.text("payload.twice", name));
            }
        }
        return new Members(values);
    }

    private static JsonToken next(JsonParser parser) throws IOException, PayloadException {
        JsonToken token = parser.nextToken();
        if (token == null) {
            throw new PayloadException(Messages.text("payload.malformed"));
        }
        return token;
    }

    private static void write(JsonValue value, JsonGenerator to) throws IOException {
        if (value instanceof Text text) {
            to.writeString(text.value());
        } else if (value instanceof Flag flag) {
            to.writeBoolean(flag.value());
        } else if (value instanceof Items items) {
            to.writeStartArray();
            for (JsonValue item : items.values()) {
                write(item, to);
            }
            to.writeEndArray();
        } else if (value instanceof Members members) {
            to.writeStartObject();
            for (Map.Entry<String, JsonValue> member : members.values().entrySet()) {
                to.writeFieldName(member.getKey());
                write(member.getValue(), to);
            }
            to.writeEndObject();
        } else {
            to.writeNull();
        }
    }
}
