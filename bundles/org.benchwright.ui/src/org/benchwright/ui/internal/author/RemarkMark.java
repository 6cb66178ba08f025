package org.benchwright.ui.internal.author;

import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.ui.internal.Message;
import org.eclipse.jface.text.source.Annotation;

/** A remark as it is shown in the text. */
public final class RemarkMark extends Annotation {

    private static final String PLATFORM = "org.eclipse.ui.workbench.texteditor.";

    private final Remark remark;

    RemarkMark(Remark remark) {
        super(type(remark.severity()), false, Message.REMARKS_KEYS.text(remark.words(), remark.severity().word(), remark.code().word()));
        this.remark = remark;
    }

    /** What it stands for. */
    public Remark remark() {
        return remark;
    }

    private static String type(Severity severity) {
        return PLATFORM + severity.word();
    }
}
