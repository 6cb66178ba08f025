package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampPattern;
import org.benchwright.ui.internal.bench.CardSizes;
import org.benchwright.ui.internal.look.Blink;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

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

    @Test
    void capitalsAreAtLeastSixtyPixelsHigh() {
        Display display = Display.getCurrent();
        Fonts fonts = new Fonts(display);
        Image image = new Image(display, 200, 200);
        GC gc = new GC(image);
        try {
            gc.setFont(fonts.of(CardSizes.LARGE, false));
            gc.drawText("H", 20, 20);
            int rows = darkRows(image.getImageData());
            assertTrue(rows >= 60, rows + " pixels");
        } finally {
            gc.dispose();
            image.dispose();
            fonts.dispose();
        }
    }

    private static int darkRows(ImageData data) {
        int rows = 0;
        for (int y = 0; y < data.height; y++) {
            boolean dark = false;
            for (int x = 0; x < data.width; x++) {
                dark |= data.palette.getRGB(data.getPixel(x, y)).getHSB()[2] < 0.5f;
            }
            rows += dark ? 1 : 0;
        }
        return rows;
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
