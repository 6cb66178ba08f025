package org.benchwright.ui.internal.help;

import java.util.Optional;

import org.benchwright.language.RemarkCode;
import org.benchwright.present.HelpPage;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.e4.core.services.events.IEventBroker;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IToolBarManager;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.part.ViewPart;
import org.osgi.service.event.EventHandler;

/** The manual: one page of it to read, with its headings, a search within it, and the way back to what was read before. */
public final class PageView extends ViewPart {

    /** What the text of the page is known by among other texts. */
    public static final String SHEET = "manual";

    private final EventHandler lookChanged = event -> redress();
    private IEventBroker broker;
    private Composite whole;
    private PageSheet sheet;
    private PageBar bar;
    private Trail trail = Trail.EMPTY;
    private Action back;
    private Action forward;

    @Override
    public void createPartControl(Composite parent) {
        whole = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(whole);
        bar = new PageBar(whole);
        sheet = new PageSheet(whole, this::follow);
        bar.of(sheet);
        sheet.control().setData(SHEET);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar.control());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sheet.control());
        sheet.say(Message.EXPLAIN_NONE.text());
        broker = getSite().getService(IEventBroker.class);
        broker.subscribe(IThemeEngine.Events.THEME_CHANGED, lookChanged);
        IToolBarManager tools = getViewSite().getActionBars().getToolBarManager();
        back = tool(tools, Message.MANUAL_BACK, () -> go(trail.by(-1)));
        forward = tool(tools, Message.MANUAL_FORWARD, () -> go(trail.by(1)));
        tool(tools, Message.MANUAL_CONTENTS, () -> go(trail.to(Place.CONTENTS)));
        onKey("org.eclipse.ui.navigate.backwardHistory", () -> go(trail.by(-1)));
        onKey("org.eclipse.ui.navigate.forwardHistory", () -> go(trail.by(1)));
        onKey("org.eclipse.ui.edit.findReplace", bar::search);
        standing();
    }

    private static Action tool(IToolBarManager tools, Message words, Runnable does) {
        Action action = new Action(words.text()) {
            @Override
            public void run() {
                does.run();
            }
        };
        tools.add(action);
        return action;
    }

    /** While this view is active its keys are the workbench's own for the same purpose. */
    private void onKey(String command, Runnable does) {
        getSite().getService(IHandlerService.class).activateHandler(command, new AbstractHandler() {
            @Override
            public Object execute(ExecutionEvent event) {
                does.run();
                return null;
            }
        });
    }

    /** Shows the page of a remark's code. */
    public static void show(IWorkbenchPage page, RemarkCode code) {
        show(page, Place.of(code));
    }

    /** Shows a page of the manual. */
    public static void show(IWorkbenchPage page, HelpPage manual) {
        show(page, Place.of(manual));
    }

    private static void show(IWorkbenchPage page, Place place) {
        try {
            PageView view = (PageView) page.showView(Ids.PAGE_VIEW, null, IWorkbenchPage.VIEW_VISIBLE);
            view.go(view.trail.to(place));
        } catch (PartInitException failed) {
            MessageDialog.openInformation(page.getWorkbenchWindow().getShell(), Message.AUTHOR_EXPLAIN.text(),
                    Labels.letters(String.valueOf(failed.getMessage())));
        }
    }

    /** Web pages are not opened: a bench may have no network, and a manual no business there. */
    private void follow(String link) {
        if (link.contains(":")) {
            bar.say(Message.MANUAL_ELSEWHERE.text(link));
        } else {
            trail.now().map(now -> now.follow(link)).ifPresent(place -> go(trail.to(place)));
        }
    }

    private void go(Trail next) {
        next.now().ifPresent(place -> Background.soon(Message.AUTHOR_EXPLAIN.text(), monitor -> {
            Optional<ManualPage> page = ManualPage.read(place);
            OnDisplay.later(whole, () -> page.ifPresentOrElse(read -> arrive(next, read),
                    () -> bar.say(Message.MANUAL_ELSEWHERE.text(place.page()))));
        }));
    }

    private void arrive(Trail next, ManualPage page) {
        trail = next;
        sheet.show(page);
        bar.headings(sheet.headings());
        standing();
    }

    private void standing() {
        back.setEnabled(trail.current() > 0);
        forward.setEnabled(trail.current() < trail.places().size() - 1);
    }

    private void redress() {
        OnDisplay.later(whole, sheet::redress);
    }

    @Override
    public void setFocus() {
        sheet.control().setFocus();
    }

    @Override
    public void dispose() {
        broker.unsubscribe(lookChanged);
        super.dispose();
    }
}
