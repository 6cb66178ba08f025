package org.benchwright.language.internal;

import java.util.Collection;
import java.util.Comparator;

import org.benchwright.language.SourceText;

/** The text of a procedure with all that it refers to, as it is kept with an approval. */
public final class ProcedureText {

    private ProcedureText() {
    }

    /** All texts, each under a comment line with its file's name, the procedure's own first, then the others by path. */
    public static String of(SourceText own, Collection<SourceText> used) {
        StringBuilder text = new StringBuilder();
        append(text, own);
        used.stream().filter(each -> !each.path().equals(own.path())).sorted(Comparator.comparing(SourceText::path))
                .forEach(each -> append(text, each));
        return text.toString();
    }

    private static void append(StringBuilder text, SourceText file) {
        text.append("// ").append(file.path().getFileName()).append('\n').append(file.text());
        if (!file.text().endsWith("\n")) {
            text.append('\n');
        }
    }
}
