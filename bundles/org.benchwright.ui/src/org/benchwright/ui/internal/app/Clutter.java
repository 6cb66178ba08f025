package org.benchwright.ui.internal.app;

import java.util.List;
import java.util.Set;

import org.eclipse.e4.core.services.events.IEventBroker;
import org.eclipse.e4.ui.model.application.ui.MUIElement;
import org.eclipse.e4.ui.model.application.ui.basic.MWindow;
import org.eclipse.e4.ui.workbench.UIEvents;
import org.eclipse.e4.ui.workbench.modeling.EModelService;
import org.eclipse.ui.IWorkbenchWindow;
import org.osgi.service.event.Event;

/** What the platform puts into every window and nobody at a bench needs: it is not shown. */
final class Clutter {

    private static final Set<String> UNWANTED = Set.of("SearchField", "Search-PS Glue", "Spacer Glue", "PerspectiveSpacer",
            "org.eclipse.ui.edit.text.actionSet.annotationNavigation", "org.eclipse.ui.edit.text.actionSet.navigation",
            "org.eclipse.ui.edit.text.actionSet.presentation",
            "org.eclipse.ui.workbench.navigate", "org.eclipse.search.searchActionSet", "org.eclipse.debug.ui.main.toolbar");

    private Clutter() {
    }

    /** Hides what is there, and what comes: an editor brings its buttons with it only when it is opened. */
    static void hide(IWorkbenchWindow window) {
        EModelService model = window.getService(EModelService.class);
        List<MUIElement> all = model.findElements(window.getService(MWindow.class), null, MUIElement.class, null,
                EModelService.ANYWHERE);
        all.forEach(Clutter::hide);
        IEventBroker broker = window.getService(IEventBroker.class);
        broker.subscribe(UIEvents.ElementContainer.TOPIC_CHILDREN, Clutter::came);
        broker.subscribe(UIEvents.UIElement.TOPIC_TOBERENDERED, Clutter::came);
    }

    private static void came(Event event) {
        if (UIEvents.isADD(event)) {
            UIEvents.asIterable(event, UIEvents.EventTags.NEW_VALUE).forEach(Clutter::hide);
        } else if (UIEvents.isSET(event)) {
            hide(event.getProperty(UIEvents.EventTags.ELEMENT));
        }
    }

    private static void hide(Object element) {
        if (element instanceof MUIElement shown && shown.isToBeRendered() && shown.getElementId() != null
                && UNWANTED.contains(shown.getElementId())) {
            shown.setToBeRendered(false);
        }
    }
}
