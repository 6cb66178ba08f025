package org.benchwright.language.internal.text;

import java.math.BigDecimal;

import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverterException;
import org.eclipse.xtext.nodemodel.INode;

/** Decimal numbers; the digits behind the point are kept as written. */
final class NumberConverter implements IValueConverter<BigDecimal> {

    /** More digits than any instrument shows; bounds the work that a text can ask for. */
    private static final int LONGEST = 40;

    @Override
    public BigDecimal toValue(String text, INode node) {
        if (text == null || text.isEmpty()) {
            // The parser has said already that a number is missing.
            return null;
        }
        if (text.length() > LONGEST) {
            throw new ValueConverterException(SyntaxText.NUMBER_TOO_LONG.text(Integer.toString(LONGEST)), node, null);
        }
        try {
            return new BigDecimal(text);
        } catch (NumberFormatException notANumber) {
            throw new ValueConverterException(SyntaxText.NOT_A_NUMBER.text(text), node, null);
        }
    }

    @Override
    public String toString(BigDecimal value) {
        return value.toPlainString();
    }
}
