package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.stream.Stream;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampPattern;
import org.benchwright.present.EntryKind;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.look.Blink;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** What is drawn. */
@ExtendWith(QuietLog.class)
class LookTest {

    @Test
    void lampsFlashInTheMiddleOfTheirBands() {
        // IEC 60073: 24 to 48 flashes a minute are slow, 84 to 168 normal.
        assertEquals(0.6, Blink.hertz(new FlashRate.Slow()), 1e-9);
        assertEquals(2.1, Blink.hertz(new FlashRate.Normal()), 1e-9);
        LampPattern slow = new LampPattern.Flashing(new FlashRate.Slow());
        int changes = 0;
        for (long at = 1; at < Duration.ofSeconds(60).toMillis(); at++) {
            changes += Blink.lit(slow, at * 1_000_000) != Blink.lit(slow, (at - 1) * 1_000_000) ? 1 : 0;
        }
        assertTrue(changes >= 2 * 35 && changes <= 2 * 37, changes + " changes in a minute");
        assertFalse(Blink.lit(new LampPattern.Off(), 0));
        assertTrue(Blink.lit(new LampPattern.Steady(), 999_999_999));
    }

    /** Measured on the card itself, on a screen of 1920 x 1080: the tallest thing in the columns of the first letter is that letter. */
    @Test
    void capitalsOfInstructionAndCountdownAreAtLeastSixtyPixelsHigh() throws Exception {
        Rectangle screen = Display.getCurrent().getPrimaryMonitor().getBounds();
        assertEquals(new Rectangle(0, 0, 1920, 1080), screen);
        OpenTest test = Technician.open(Technician.C16, "C16-600001", false);
        Answers answers = Answers.of("accepted");
        Technician.seen(test);
        assertTrue(test.shown().card().instruction().startsWith("THE "), test.shown().card().instruction());
        waitForCapitals("instruction");
        while (test.shown().kind() != EntryKind.TIME) {
            Technician.answer(test, answers);
        }
        Technician.seen(test);
        waitForCapitals("countdown");
    }

    /** Waits until the card is drawn so; tells how high they are where it never is. */
    private static void waitForCapitals(String what) {
        Screen.waitForDrawing();
        int[] last = {0};
        try {
            Screen.waitFor(what, () -> {
                last[0] = tallest(Screen.card());
                return last[0] >= 60 && last[0] < 90;
            });
        } catch (AssertionError never) {
            throw new AssertionError(what + ": " + last[0] + " pixels", never);
        }
    }

    /** Height in pixels of the tallest run of rows with ink in them, in the first columns of what a control shows. */
    private static int tallest(Control control) {
        Point at = control.toDisplay(0, 0);
        ImageData data = Screen.picture(new Rectangle(at.x + 24, at.y, 40, control.getSize().y));
        int tallest = 0;
        int run = 0;
        for (int y = 0; y < data.height; y++) {
            run = inked(data, y) ? run + 1 : 0;
            tallest = Math.max(tallest, run);
        }
        return tallest;
    }

    private static boolean inked(ImageData data, int y) {
        boolean inked = false;
        for (int x = 0; x < data.width; x++) {
            inked |= brightness(data, x, y) < 0.5f;
        }
        return inked;
    }

    private static float brightness(ImageData data, int x, int y) {
        return data.palette.getRGB(data.getPixel(x, y)).getHSB()[2];
    }

    /** What the system draws, the menu, must not shine in a dim room either. */
    @Test
    void theMenuBarIsDarkInTheDarkLook() {
        Theme.use(PlatformUI.getWorkbench(), true);
        try {
            Screen.waitFor("a dark menu bar", () -> menuBrightness() < 0.4f);
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Screen.waitFor("a bright menu bar", () -> menuBrightness() > 0.6f);
        }
    }

    private static float menuBrightness() {
        Rectangle shell = Screen.window().getShell().getBounds();
        return brightness(Screen.picture(new Rectangle(shell.x + shell.width / 2, 4, 200, 10)), 100, 5);
    }

    /** Whoever can't see the frame doesn't find the box; 3 to 1 is what WCAG 2.2 (1.4.11) asks of it. */
    @Test
    void theFrameOfACheckBoxStandsOutInBothLooks() throws Exception {
        HouseWindowTest.show();
        Button box = Screen.one(Button.class, button -> button.getText().startsWith("Also those that left"));
        Screen.waitFor("a frame in the light look", () -> frame(box) >= 3);
        Theme.use(PlatformUI.getWorkbench(), true);
        try {
            Screen.waitFor("a frame in the dark look", () -> brightness(Screen.picture(at(box)), 1, 1) < 0.3f && frame(box) >= 3);
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
        }
    }

    private static Rectangle at(Control control) {
        Point corner = control.toDisplay(0, 0);
        return new Rectangle(corner.x, corner.y, control.getSize().x, control.getSize().y);
    }

    /** How much the strongest colour in the middle line of the box stands out from what is around it, from 1 to 21. */
    private static double frame(Button box) {
        ImageData data = Screen.picture(at(box));
        double ground = luminance(data, 1, 1);
        double most = 1;
        // Left of the words.
        for (int x = 0; x < 18; x++) {
            double here = luminance(data, x, data.height / 2);
            most = Math.max(most, (Math.max(here, ground) + 0.05) / (Math.min(here, ground) + 0.05));
        }
        return most;
    }

    /** Relative luminance as WCAG 2.2 defines it. */
    private static double luminance(ImageData data, int x, int y) {
        RGB colour = data.palette.getRGB(data.getPixel(x, y));
        return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
    }

    private static double linear(int part) {
        double share = part / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    /** The buttons that make a folder of tabs small or large. */
    @Test
    void theCornersOfFoldersHaveTheLookThatIsOn(@TempDir Path temporary) throws Exception {
        Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        try {
            assertTrue(corners() > 2, "folders on the screen");
            Theme.use(PlatformUI.getWorkbench(), true);
            Screen.waitFor("dark ones", () -> cornersDarker(0.5f) == corners());
            Theme.use(PlatformUI.getWorkbench(), false);
            Screen.waitFor("bright ones", () -> cornersDarker(0.5f) == 0);
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
            Engineer.closeAll();
        }
    }

    private static Stream<ToolBar> cornerBars() {
        return Screen.all(ToolBar.class).filter(bar -> bar.getParent() instanceof CTabFolder && bar.getSize().x > 0);
    }

    private static long corners() {
        return cornerBars().count();
    }

    private static long cornersDarker(float than) {
        return cornerBars().filter(bar -> {
            Point at = bar.toDisplay(1, 1);
            return brightness(Screen.picture(new Rectangle(at.x, at.y, 1, 1)), 0, 0) < than;
        }).count();
    }

    @Test
    void lightAndDarkAreTwoLooks() {
        boolean before = Theme.dark(PlatformUI.getWorkbench());
        var ground = Theme.palette().ground();
        Theme.change(PlatformUI.getWorkbench());
        Screen.settle();
        assertNotEquals(before, Theme.dark(PlatformUI.getWorkbench()));
        assertNotEquals(ground, Theme.palette().ground());
        Theme.change(PlatformUI.getWorkbench());
        Screen.settle();
        assertEquals(before, Theme.dark(PlatformUI.getWorkbench()));
    }
}
