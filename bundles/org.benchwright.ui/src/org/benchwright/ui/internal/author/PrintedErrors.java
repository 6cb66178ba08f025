package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.Remark;
import org.benchwright.language.editing.Place;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;

/** The errors that have to be mended before the text can be shown as it stands, below it; a line is gone to by pressing it. */
final class PrintedErrors {

    private static final int MOST = 4;

    private final StyledText text;
    private List<Remark> errors = List.of();

    PrintedErrors(Composite parent, Consumer<Place> gone) {
        text = new StyledText(parent, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP);
        text.setMargins(16, 8, 16, 8);
        text.setLayoutData(new GridData(SWT.FILL, SWT.END, true, false));
        text.addListener(SWT.MouseUp, event -> at(new Point(event.x, event.y)).ifPresent(gone));
        hide(true);
    }

    /** @param shown true if an earlier text is shown above */
    void show(List<Remark> now, boolean shown) {
        errors = now;
        String head = now.isEmpty() ? "" : (shown ? Message.PRINTED_BEFORE : Message.PRINTED_NOT_YET).text(now.size());
        Stream<String> lines = now.stream().limit(MOST)
                .map(error -> Message.PRINTED_ERROR.text(error.file().getFileName().toString(), String.valueOf(error.line()), error.words()));
        String words = Stream.concat(Stream.of(head), lines).collect(Collectors.joining("\n"));
        boolean other = !words.equals(text.getText());
        if (other) {
            text.setText(words);
        }
        text.setStyleRange(new StyleRange(0, head.length(), Theme.palette().urgent(), null, SWT.BOLD));
        if (other) {
            hide(now.isEmpty());
            text.requestLayout();
        }
    }

    private void hide(boolean hidden) {
        text.setVisible(!hidden);
        ((GridData) text.getLayoutData()).exclude = hidden;
    }

    private Optional<Place> at(Point point) {
        int line = text.getLineIndex(point.y) - 1;
        int offset = text.getOffsetAtPoint(point);
        int logical = offset < 0 ? line : text.getLineAtOffset(offset) - 1;
        return logical < 0 || logical >= errors.size() ? Optional.empty()
                : Optional.of(new Place(errors.get(logical).file(), errors.get(logical).offset(), errors.get(logical).length()));
    }
}
