package org.benchwright.ledger.internal;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchwright.core.Digest;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.internal.JsonValue.Flag;
import org.benchwright.ledger.internal.JsonValue.Items;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Nothing;
import org.benchwright.ledger.internal.JsonValue.Text;

/**
 * Reads canonical form (RFC 8785, without numbers, texts in Unicode NFC) and nothing else: what {@link CanonicalText} would have written in
 * another way is refused. So one pass over a stored event tells both what it says and that it is written as it must be.
 */
final class CanonicalReader {

    private static final String SHORT_ESCAPES = "\"\\btnfr";
    private static final String ESCAPED = "\"\\\b\t\n\f\r";
    private static final String HEX = "0123456789abcdef";
    /** How the name of a document begins. */
    private static final String REFERENCE = "sha256:";

    private final String text;
    private int at;

    private CanonicalReader(String text) {
        this.text = text;
    }

    /** The object that {@code text} is the canonical form of. */
    static Members read(String text) throws PayloadException {
        CanonicalReader reader = new CanonicalReader(text);
        reader.expect("{");
        Members members = reader.members(1);
        if (reader.at != text.length()) {
            throw refused();
        }
        return members;
    }

    /**
     * What has to be known of an object when its values don't matter.
     *
     * @param named      whether the name that was asked for is a member of the object itself
     * @param references the documents that are named anywhere in it
     */
    record Skimmed(boolean named, List<Digest> references) {
    }

    /**
     * Reads one event: the texts of its own members, and of its payload no more than whether it has a member of that name, and the documents
     * that it names. Refuses exactly what {@link #read} refuses.
     *
     * @param payload name of the member that is not read but skimmed
     * @param wanted  name that is looked for in it
     * @param texts   takes the other members, which have to be texts
     */
    static Skimmed skim(String text, String payload, String wanted, Map<String, String> texts) throws PayloadException {
        CanonicalReader reader = new CanonicalReader(text);
        reader.expect("{");
        Skimmed skimmed = reader.event(payload, wanted, texts);
        if (reader.at != text.length()) {
            throw refused();
        }
        return skimmed;
    }

    private Skimmed event(String payload, String wanted, Map<String, String> texts) throws PayloadException {
        List<Digest> references = new ArrayList<>();
        boolean named = false;
        String before = null;
        do {
            String name = nameAfter(before);
            before = name;
            if (name.equals(payload)) {
                expect("{");
                named = skimMembers(2, wanted, references);
                texts.put(name, "");
            } else {
                expect("\"");
                texts.put(name, string());
            }
        } while (more('}'));
        return new Skimmed(named, references);
    }

    private void skim(int depth, List<Digest> references) throws PayloadException {
        if (depth > CanonicalJson.DEPTH) {
            throw refused();
        }
        switch (next()) {
            case '"':
                skimString(references);
                break;
            case '{':
                skimMembers(depth, "", references);
                break;
            case '[':
                if (!ends(']')) {
                    do {
                        skim(depth + 1, references);
                    } while (more(']'));
                }
                break;
            case 't':
                expect("rue");
                break;
            case 'f':
                expect("alse");
                break;
            case 'n':
                expect("ull");
                break;
            default:
                throw refused();
        }
    }

    private boolean skimMembers(int depth, String wanted, List<Digest> references) throws PayloadException {
        boolean named = false;
        if (ends('}')) {
            return false;
        }
        String before = null;
        do {
            String name = nameAfter(before);
            before = name;
            named |= name.equals(wanted);
            skim(depth + 1, references);
        } while (more('}'));
        return named;
    }

    /** A text of which nothing is kept but the document that it may name. */
    private void skimString(List<Digest> references) throws PayloadException {
        int begin = at;
        for (char unit = next(); unit != '"'; unit = next()) {
            if (unit == '\\' || unit >= CanonicalJson.FIRST_COMBINING) {
                // Rare, and for the careful way.
                at = begin;
                DocumentReference.parse(string()).ifPresent(references::add);
                return;
            }
            if (unit < ' ') {
                throw refused();
            }
        }
        if (text.startsWith(REFERENCE, begin)) {
            DocumentReference.parse(text.substring(begin, at - 1)).ifPresent(references::add);
        }
    }

    private JsonValue value(int depth) throws PayloadException {
        if (depth > CanonicalJson.DEPTH) {
            throw refused();
        }
        switch (next()) {
            case '"':
                return new Text(string());
            case '{':
                return members(depth);
            case '[':
                return items(depth);
            case 't':
                expect("rue");
                return new Flag(true);
            case 'f':
                expect("alse");
                return new Flag(false);
            case 'n':
                expect("ull");
                return new Nothing();
            default:
                throw refused();
        }
    }

    private Items items(int depth) throws PayloadException {
        List<JsonValue> values = new ArrayList<>();
        if (ends(']')) {
            return new Items(values);
        }
        do {
            values.add(value(depth + 1));
        } while (more(']'));
        return new Items(values);
    }

    private Members members(int depth) throws PayloadException {
        Map<String, JsonValue> values = new LinkedHashMap<>();
        if (ends('}')) {
            return new Members(values);
        }
        String before = null;
        do {
            String name = nameAfter(before);
            before = name;
            values.put(name, value(depth + 1));
        } while (more('}'));
        return new Members(values);
    }

    /** A member's name with the colon behind it; refused unless it is greater than the one before, which is null at the first. */
    private String nameAfter(String before) throws PayloadException {
        expect("\"");
        String name = string();
        if (before != null && before.compareTo(name) >= 0) {
            throw refused();
        }
        expect(":");
        return name;
    }

    private boolean ends(char close) {
        if (at < text.length() && text.charAt(at) == close) {
            at++;
            return true;
        }
        return false;
    }

    private boolean more(char close) throws PayloadException {
        char found = next();
        if (found != ',' && found != close) {
            throw refused();
        }
        return found == ',';
    }

    /** The text up to its closing quote. */
    private String string() throws PayloadException {
        int begin = at;
        boolean ascii = true;
        for (char unit = next(); unit != '"'; unit = next()) {
            if (unit == '\\') {
                at--;
                return escaped(begin);
            }
            if (unit < ' ') {
                throw refused();
            }
            ascii &= unit < 0x80;
        }
        return normal(text.substring(begin, at - 1), ascii);
    }

    private String escaped(int begin) throws PayloadException {
        StringBuilder found = new StringBuilder(text.substring(begin, at));
        for (char unit = next(); unit != '"'; unit = next()) {
            if (unit < ' ') {
                throw refused();
            }
            found.append(unit == '\\' ? escape() : unit);
        }
        return normal(found.toString(), false);
    }

    private char escape() throws PayloadException {
        char kind = next();
        int known = SHORT_ESCAPES.indexOf(kind);
        if (known >= 0) {
            return ESCAPED.charAt(known);
        }
        if (kind != 'u') {
            throw refused();
        }
        expect("00");
        int high = HEX.indexOf(next());
        int low = HEX.indexOf(next());
        char unit = (char) (high * 16 + low);
        if (high < 0 || high > 1 || low < 0 || ESCAPED.indexOf(unit) >= 0) {
            throw refused();
        }
        return unit;
    }

    private static String normal(String value, boolean ascii) throws PayloadException {
        if (!ascii && !CanonicalJson.normalise(value).equals(value)) {
            throw refused();
        }
        return value;
    }

    private char next() throws PayloadException {
        if (at == text.length()) {
            throw refused();
        }
        return text.charAt(at++);
    }

    private void expect(String wanted) throws PayloadException {
        if (!text.startsWith(wanted, at)) {
            throw refused();
        }
        at += wanted.length();
    }

    private static PayloadException refused() {
        return new PayloadException(Messages.text("event.malformed"));
    }
}
