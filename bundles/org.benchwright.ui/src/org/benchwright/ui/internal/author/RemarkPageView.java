package org.benchwright.ui.internal.author;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.RemarkPages;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.look.Story;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;

/** What a remark means: its page, with an example that earns it and the same mended. */
public final class RemarkPageView extends ViewPart {

    private Story story;

    @Override
    public void createPartControl(Composite parent) {
        story = new Story(parent, 1);
        story.paragraph(Message.EXPLAIN_NONE.text());
    }

    /** Shows the page of a code. */
    void show(RemarkCode code) {
        story.clear();
        story.heading(code.word());
        new PageLines(RemarkPages.text(code)).lines().forEach(story::paragraph);
        story.control().setTopIndex(0);
    }

    @Override
    public void setFocus() {
        story.control().setFocus();
    }
}
