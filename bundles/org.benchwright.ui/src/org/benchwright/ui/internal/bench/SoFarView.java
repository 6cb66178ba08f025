package org.benchwright.ui.internal.bench;

import java.util.List;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.look.Story;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;

/** So far: what happened in the selected test, the latest at the end. */
public final class SoFarView extends ViewPart {

    private Desk desk;
    private Story story;
    private List<TimelineLine> told = List.of();
    private final DeskListener listener = (change, test) -> changed();

    @Override
    public void createPartControl(Composite parent) {
        desk = getSite().getService(Desk.class);
        story = new Story(parent, 1);
        story.control().addDisposeListener(event -> desk.remove(listener));
        desk.add(listener);
        show();
    }

    private void changed() {
        OnDisplay.later(story.control(), this::show);
    }

    private void show() {
        List<TimelineLine> lines = desk.selectedTest().map(OpenTest::shown).map(shown -> shown.soFar()).orElse(List.of());
        if (!lines.equals(told) || lines.isEmpty()) {
            told = lines;
            story.clear();
            lines.forEach(story::line);
            if (lines.isEmpty()) {
                story.paragraph(Message.SO_FAR_NONE.text());
            }
            story.showEnd();
        }
    }

    @Override
    public void setFocus() {
        story.control().setFocus();
    }
}
