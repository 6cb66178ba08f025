package org.benchwright.ui.internal.author;

import java.util.Set;
import java.util.stream.Stream;

import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.action.IContributionItem;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;

/** The menu in the editor has what helps to write a procedure. What the platform adds for writing programs is taken out as it is shown. */
final class EditorMenu {

    /** What is kept of the platform's, by its commands. */
    private static final Set<String> KEPT = Set.of("org.eclipse.ui.edit.undo", "org.eclipse.ui.file.revert", "org.eclipse.ui.file.save",
            "org.eclipse.ui.edit.cut", "org.eclipse.ui.edit.copy", "org.eclipse.ui.edit.paste", "org.eclipse.ui.edit.text.shiftRight",
            "org.eclipse.ui.edit.text.shiftLeft");
    private static final String OURS = "org.benchwright.";
    private static final String TIDIED = EditorMenu.class.getName();

    private EditorMenu() {
    }

    /**
     * Tidies the menu each time before it is shown.
     *
     * @param text  the editor's text; its menu comes later than this is called
     * @param whole the text with what stands beside it, which has no menu
     */
    static void tidy(StyledText text, Composite whole) {
        text.addListener(SWT.MenuDetect, event -> {
            Menu menu = text.getMenu();
            if (menu != null && menu.getData(TIDIED) == null) {
                menu.setData(TIDIED, Boolean.TRUE);
                menu.addListener(SWT.Show, shown -> tidy(menu));
            }
        });
        for (Control beside : whole.getChildren()) {
            if (beside != text) {
                beside.addListener(SWT.MenuDetect, event -> event.doit = false);
            }
        }
    }

    private static void tidy(Menu menu) {
        Stream.of(menu.getItems()).filter(item -> !isSeparator(item) && !kept(item.getData())).forEach(MenuItem::dispose);
        boolean separated = true;
        for (MenuItem item : menu.getItems()) {
            if (separated && isSeparator(item)) {
                item.dispose();
            } else {
                separated = isSeparator(item);
            }
        }
        if (separated && menu.getItemCount() > 0) {
            menu.getItem(menu.getItemCount() - 1).dispose();
        }
    }

    private static boolean isSeparator(MenuItem item) {
        return (item.getStyle() & SWT.SEPARATOR) != 0;
    }

    private static boolean kept(Object contribution) {
        if (contribution instanceof ActionContributionItem item) {
            return item.getAction().getActionDefinitionId() != null && KEPT.contains(item.getAction().getActionDefinitionId());
        }
        return contribution instanceof IContributionItem item && item.getId() != null && item.getId().startsWith(OURS);
    }
}
