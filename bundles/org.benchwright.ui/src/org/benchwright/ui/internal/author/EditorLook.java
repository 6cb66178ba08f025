package org.benchwright.ui.internal.author;

import org.benchwright.ui.internal.look.Palette;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.e4.core.services.events.IEventBroker;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.jface.preference.IPreferenceStore;
import org.eclipse.jface.preference.PreferenceConverter;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.editors.text.EditorsUI;
import org.eclipse.ui.texteditor.AbstractTextEditor;
import org.osgi.service.event.EventHandler;

/** The editor's ground, caret line and selection in the look that is on, and word when that changes. */
final class EditorLook {

    private static final String CURRENT_LINE = "currentLineColor";
    private static final String LINE_NUMBERS = "lineNumberColor";
    private static final int READABLE_POINTS = 12;

    private final Runnable repaint;
    private final EventHandler changed = event -> change();

    EditorLook(Runnable repaint) {
        this.repaint = repaint;
    }

    /** Takes the present look, and each that comes. */
    void follow() {
        apply();
        enlarge();
        broker().subscribe(IThemeEngine.Events.THEME_CHANGED, changed);
    }

    /** Follows no more. */
    void leave() {
        if (PlatformUI.isWorkbenchRunning()) {
            broker().unsubscribe(changed);
        }
    }

    private static IEventBroker broker() {
        return PlatformUI.getWorkbench().getService(IEventBroker.class);
    }

    private void change() {
        apply();
        repaint.run();
    }

    private static void apply() {
        boolean dark = Theme.dark(PlatformUI.getWorkbench());
        Palette palette = Theme.palette();
        IPreferenceStore store = EditorsUI.getPreferenceStore();
        set(store, AbstractTextEditor.PREFERENCE_COLOR_BACKGROUND, palette.panel());
        set(store, AbstractTextEditor.PREFERENCE_COLOR_FOREGROUND, palette.text());
        store.setValue(AbstractTextEditor.PREFERENCE_COLOR_BACKGROUND_SYSTEM_DEFAULT, false);
        store.setValue(AbstractTextEditor.PREFERENCE_COLOR_FOREGROUND_SYSTEM_DEFAULT, false);
        set(store, AbstractTextEditor.PREFERENCE_COLOR_SELECTION_BACKGROUND, dark ? new Color(44, 78, 108) : new Color(184, 212, 234));
        set(store, AbstractTextEditor.PREFERENCE_COLOR_SELECTION_FOREGROUND, palette.text());
        store.setValue(AbstractTextEditor.PREFERENCE_COLOR_SELECTION_BACKGROUND_SYSTEM_DEFAULT, false);
        store.setValue(AbstractTextEditor.PREFERENCE_COLOR_SELECTION_FOREGROUND_SYSTEM_DEFAULT, false);
        set(store, CURRENT_LINE, dark ? new Color(36, 42, 47) : new Color(236, 240, 243));
        set(store, LINE_NUMBERS, palette.quiet());
    }

    /** The platform's usual size is for a screen at arm's length; at a bench one reads from further off. */
    private static void enlarge() {
        FontData[] font = JFaceResources.getTextFont().getFontData();
        if (font[0].getHeight() < READABLE_POINTS) {
            for (FontData each : font) {
                each.setHeight(READABLE_POINTS);
            }
            JFaceResources.getFontRegistry().put(JFaceResources.TEXT_FONT, font);
        }
    }

    private static void set(IPreferenceStore store, String key, Color colour) {
        RGB rgb = colour.getRGB();
        if (!PreferenceConverter.getColor(store, key).equals(rgb)) {
            PreferenceConverter.setValue(store, key, rgb);
        }
    }
}
