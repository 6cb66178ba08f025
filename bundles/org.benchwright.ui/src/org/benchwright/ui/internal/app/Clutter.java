package org.benchwright.ui.internal.app;

import java.util.List;
import java.util.Set;

import org.eclipse.e4.ui.model.application.ui.MUIElement;
import org.eclipse.e4.ui.model.application.ui.basic.MWindow;
import org.eclipse.e4.ui.workbench.modeling.EModelService;
import org.eclipse.ui.IWorkbenchWindow;

/** What the platform puts into every window and nobody at a bench needs: it is not shown. */
final class Clutter {

    private static final Set<String> UNWANTED = Set.of("SearchField", "Search-PS Glue", "Spacer Glue", "PerspectiveSpacer",
            "org.eclipse.ui.edit.text.actionSet.annotationNavigation", "org.eclipse.ui.edit.text.actionSet.navigation",
            "org.eclipse.ui.edit.text.actionSet.presentation",
            "org.eclipse.ui.workbench.navigate", "org.eclipse.search.searchActionSet", "org.eclipse.debug.ui.main.toolbar");

    private Clutter() {
    }

    static void hide(IWorkbenchWindow window) {
        EModelService model = window.getService(EModelService.class);
        List<MUIElement> all = model.findElements(window.getService(MWindow.class), null, MUIElement.class, null,
                EModelService.ANYWHERE);
        all.stream().filter(element -> element.getElementId() != null && UNWANTED.contains(element.getElementId()))
                .forEach(element -> element.setToBeRendered(false));
    }
}
