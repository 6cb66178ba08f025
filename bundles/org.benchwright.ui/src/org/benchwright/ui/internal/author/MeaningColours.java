package org.benchwright.ui.internal.author;

import java.util.Map;

import org.benchwright.language.editing.Meaning;
import org.eclipse.jface.text.TextAttribute;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;

/** How each meaning looks. What words of the language and hazards say is bold, what is beside the matter slanted: colour is never alone. */
final class MeaningColours {

    private static final Map<Meaning, TextAttribute> LIGHT = Map.of(
            Meaning.KEYWORD, attribute(new Color(22, 76, 122), SWT.BOLD),
            Meaning.DECLARATION, attribute(new Color(122, 58, 0), SWT.BOLD),
            Meaning.REFERENCE, attribute(new Color(122, 58, 0), SWT.NORMAL),
            Meaning.TEXT, attribute(new Color(26, 92, 42), SWT.NORMAL),
            Meaning.AMOUNT, attribute(new Color(104, 28, 128), SWT.NORMAL),
            Meaning.INDICATION, attribute(new Color(0, 90, 86), SWT.NORMAL),
            Meaning.SIGNAL, attribute(new Color(170, 20, 26), SWT.BOLD),
            Meaning.VERDICT, attribute(new Color(150, 0, 84), SWT.BOLD),
            Meaning.COMMENT, attribute(new Color(84, 94, 102), SWT.ITALIC),
            Meaning.PLAIN, attribute(new Color(21, 25, 28), SWT.NORMAL));

    private static final Map<Meaning, TextAttribute> DARK = Map.of(
            Meaning.KEYWORD, attribute(new Color(126, 186, 234), SWT.BOLD),
            Meaning.DECLARATION, attribute(new Color(244, 182, 120), SWT.BOLD),
            Meaning.REFERENCE, attribute(new Color(244, 182, 120), SWT.NORMAL),
            Meaning.TEXT, attribute(new Color(178, 220, 162), SWT.NORMAL),
            Meaning.AMOUNT, attribute(new Color(216, 172, 244), SWT.NORMAL),
            Meaning.INDICATION, attribute(new Color(112, 216, 200), SWT.NORMAL),
            Meaning.SIGNAL, attribute(new Color(255, 138, 118), SWT.BOLD),
            Meaning.VERDICT, attribute(new Color(255, 164, 204), SWT.BOLD),
            Meaning.COMMENT, attribute(new Color(152, 164, 172), SWT.ITALIC),
            Meaning.PLAIN, attribute(new Color(232, 236, 239), SWT.NORMAL));

    private MeaningColours() {
    }

    /** How a meaning looks in the light or the dark look. */
    static TextAttribute of(Meaning meaning, boolean dark) {
        return (dark ? DARK : LIGHT).get(meaning);
    }

    private static TextAttribute attribute(Color colour, int style) {
        return new TextAttribute(colour, null, style);
    }
}
