package org.benchwright.language.internal.text;

import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverterException;
import org.eclipse.xtext.nodemodel.INode;

/** Texts in double quotes. A backslash takes the character behind it as it is, a quote or a backslash mostly. */
final class QuotedTextConverter implements IValueConverter<String> {

    @Override
    public String toValue(String text, INode node) {
        if (text == null || text.length() < 2) {
            return "";
        }
        StringBuilder value = new StringBuilder(text.length());
        int end = text.length() - 1;
        for (int i = 1; i < end; i++) {
            char c = text.charAt(i);
            if (c == '\\' && i + 1 < end) {
                i++;
                c = text.charAt(i);
            }
            if (isHidden(c)) {
                throw new ValueConverterException(SyntaxText.HIDDEN_CHARACTER.text("U+%04X".formatted((int) c)), node, null);
            }
            value.append(c);
        }
        return value.toString();
    }

    /** Characters that a terminal obeys instead of showing them, and those that turn the direction in which others are read. */
    private static boolean isHidden(char c) {
        return Character.isISOControl(c) && c != '\t' || c >= '\u202a' && c <= '\u202e' || c >= '\u2066' && c <= '\u2069';
    }

    @Override
    public String toString(String value) {
        return '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
