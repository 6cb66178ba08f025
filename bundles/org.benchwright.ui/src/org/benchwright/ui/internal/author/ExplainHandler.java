package org.benchwright.ui.internal.author;

import java.util.List;

import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.handlers.HandlerUtil;

/** Shows the page of the remark that is selected in Remarks, or is at the caret. */
public final class ExplainHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        IWorkbenchPage page = HandlerUtil.getActiveWorkbenchWindowChecked(event).getActivePage();
        if (HandlerUtil.getActivePart(event) instanceof RemarksView
                && HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection rows
                && rows.getFirstElement() instanceof Remark remark) {
            show(page, remark.code());
            return null;
        }
        NamedPlace.of(event).ifPresent(place -> Background.soon(Message.AUTHOR_EXPLAIN, monitor -> {
            List<Remark> remarks = RemarksAt.caret(place.session(), place);
            OnDisplay.later(place.shell(), () -> remarks.stream().findFirst().map(Remark::code)
                    .ifPresentOrElse(code -> show(page, code), () -> tell(page, Message.AUTHOR_NO_REMARK.text())));
        }));
        return null;
    }

    private static void show(IWorkbenchPage page, RemarkCode code) {
        try {
            ((RemarkPageView) page.showView(Ids.REMARK_PAGE_VIEW, null, IWorkbenchPage.VIEW_VISIBLE)).show(code);
        } catch (PartInitException failed) {
            tell(page, String.valueOf(failed.getMessage()));
        }
    }

    private static void tell(IWorkbenchPage page, String words) {
        MessageDialog.openInformation(page.getWorkbenchWindow().getShell(), Message.AUTHOR_EXPLAIN.text(), words);
    }
}
