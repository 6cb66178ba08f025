package org.benchwright.ui.internal.author;

import java.util.List;
import java.util.Optional;

import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.present.HelpPage;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.help.PageOfPart;
import org.benchwright.ui.internal.help.PageView;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.handlers.HandlerUtil;

/** Shows the page of the remark that is selected in Remarks or is at the caret, else the page of the language or of the active view. */
public final class ExplainHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        IWorkbenchPage page = HandlerUtil.getActiveWorkbenchWindowChecked(event).getActivePage();
        if (HandlerUtil.getActivePart(event) instanceof RemarksView
                && HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection rows
                && rows.getFirstElement() instanceof Remark remark) {
            PageView.show(page, remark.code());
            return null;
        }
        Optional<NamedPlace> editor = HandlerUtil.getActivePart(event) instanceof IEditorPart ? NamedPlace.of(event) : Optional.empty();
        if (editor.isPresent()) {
            explain(page, editor.get());
        } else {
            PageView.show(page, Optional.ofNullable(HandlerUtil.getActivePartId(event)).map(PageOfPart::of).orElse(HelpPage.README));
        }
        return null;
    }

    private static void explain(IWorkbenchPage page, NamedPlace place) {
        Background.soon(Message.AUTHOR_EXPLAIN.text(), monitor -> {
            List<Remark> remarks = RemarksAt.caret(place.session(), place);
            OnDisplay.later(place.shell(), () -> remarks.stream().findFirst().map(Remark::code)
                    .ifPresentOrElse((RemarkCode code) -> PageView.show(page, code), () -> PageView.show(page, HelpPage.LANGUAGE)));
        });
    }
}
