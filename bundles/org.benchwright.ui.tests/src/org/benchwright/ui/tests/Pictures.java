package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.PlatformUI;

/** Takes the manual's pictures of the window, in the build so that they never show what is no more. */
final class Pictures {

    private static final Path FOLDER = Path.of(System.getProperty("benchwright.screens", "target/screens"));
    private static final Point SMALL = new Point(1280, 800);

    private Pictures() {
    }

    /** What is done while the dark look is on. */
    @FunctionalInterface
    interface Work {
        void done() throws Exception;
    }

    /** Takes a picture of the whole window; fails if it is blank. */
    static void take(String name) {
        Shell shell = Screen.window().getShell();
        Screen.waitForDrawing();
        Rectangle bounds = shell.getBounds();
        Rectangle client = Display.getCurrent().map(shell, null, shell.getClientArea());
        // Without a window manager there is no trim, though the shell reckons with one.
        bounds = new Rectangle(client.x, Math.min(bounds.y, client.y), client.width, client.y + client.height - Math.min(bounds.y, client.y));
        save(Screen.picture(bounds), name);
    }

    /** Takes a picture of a dialog, and of nothing that lies behind it. */
    static void take(Shell dialog, String name) {
        Screen.waitForDrawing();
        save(Screen.picture(Display.getCurrent().map(dialog, null, dialog.getClientArea())), name);
    }

    /** As on a large screen, and as on a small one. */
    static void largeAndSmall(String name) {
        take(name);
        Shell shell = Screen.window().getShell();
        Rectangle large = shell.getBounds();
        shell.setMaximized(false);
        shell.setBounds(large.x, large.y, SMALL.x, SMALL.y);
        Screen.waitFor("a small window", () -> shell.getSize().equals(SMALL));
        take(name + "-small");
        shell.setBounds(large);
        shell.setMaximized(true);
        Screen.waitFor("the large window", () -> shell.getSize().x == large.width);
    }

    /** Does something in the dark look; afterwards it is light again. */
    static void dark(Work work) throws Exception {
        Theme.use(PlatformUI.getWorkbench(), true);
        try {
            work.done();
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
        }
    }

    private static void save(ImageData data, String name) {
        assertTrue(colours(data) > 20, name + " is blank");
        ImageLoader loader = new ImageLoader();
        loader.data = new ImageData[] {data};
        try {
            Files.createDirectories(FOLDER);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        loader.save(FOLDER.resolve(name + ".png").toString(), SWT.IMAGE_PNG);
    }

    private static int colours(ImageData data) {
        Set<Integer> colours = new HashSet<>();
        for (int y = 0; y < data.height; y += 3) {
            for (int x = 0; x < data.width; x += 3) {
                colours.add(data.getPixel(x, y));
            }
        }
        return colours.size();
    }
}
