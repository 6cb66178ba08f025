package org.benchwright.language.internal.text;

import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverterException;
import org.eclipse.xtext.nodemodel.INode;

/** Whole numbers from 0. */
final class CountConverter implements IValueConverter<Integer> {

    @Override
    public Integer toValue(String text, INode node) {
        if (text == null || text.isEmpty()) {
            // The parser has said already that a number is missing.
            return 0;
        }
        try {
            return Integer.valueOf(text);
        } catch (NumberFormatException tooLarge) {
            throw new ValueConverterException(SyntaxText.COUNT_TOO_LARGE.text(Integer.toString(Integer.MAX_VALUE)), node, null);
        }
    }

    @Override
    public String toString(Integer value) {
        return value.toString();
    }
}
