package org.benchwright.report.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Scale;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.report.Charts;
import org.benchwright.report.Look;
import org.benchwright.report.Page;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.xml.sax.InputSource;

class ChartsTest {

    private static final String HOSTILE = "<script>alert(1)</script> & \"quoted\"";
    private static final List<Double> PLACES = List.of(0.0, 1.0, 2.0);

    private static Plot named(String title) {
        return new Plot(title, "person", "part, %", Scale.NAMES, List.of("QN", "TB", "TB"),
                List.of(new Series("accepted", Role.BARS, PLACES, List.of(71.0, 75.0, 40.0)),
                        new Series("lower", Role.ENDS, PLACES, List.of(60.0, 61.0, 20.0))));
    }

    private static Plot numbered(Scale scale, Role role) {
        return new Plot("readings", "time", "V", scale, List.of(), List.of(new Series("r", role, PLACES, List.of(24.0, 24.1, 23.9)),
                new Series("none", Role.SIGNALS, List.of(), List.of())));
    }

    private static BufferedImage picture(Plot plot, Look look) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(Charts.png(plot, look, 640, 320)));
    }

    @ParameterizedTest
    @EnumSource(Look.class)
    void picturesHaveTheirSizeAndTheGroundOfTheirLook(Look look) throws Exception {
        BufferedImage image = picture(named("yield"), look);
        assertEquals(640, image.getWidth());
        assertEquals(320, image.getHeight());
        int ground = image.getRGB(2, 2) & 0xFF;
        assertEquals(look == Look.DARK, ground < 64, "ground " + ground);
        assertTrue(contrast(image) > 120, "words and bars stand out from the ground");
    }

    private static int contrast(BufferedImage image) {
        int ground = image.getRGB(2, 2) & 0xFF;
        int most = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                most = Math.max(most, Math.abs((image.getRGB(x, y) & 0xFF) - ground));
            }
        }
        return most;
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void everyRoleLeavesInkOnBothScales(Role role) throws Exception {
        for (Scale scale : new Scale[] {Scale.NUMBERS, Scale.DATES}) {
            assertTrue(contrast(picture(numbered(scale, role), Look.PRINT)) > 120);
            assertTrue(Charts.svg(numbered(scale, role), Look.PRINT, 640, 320).contains("<svg"));
        }
    }

    /** All other numbers of a sheet have points, whoever prints it. */
    @Test
    void numbersOfTheAxesAreTheSameInEveryCountry() {
        Plot fine = new Plot("readings", "h", "V", Scale.NUMBERS, List.of(),
                List.of(new Series("r", Role.LINE, PLACES, List.of(24.05, 24.15, 23.95))));
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.UK);
            String here = Charts.svg(fine, Look.PRINT, 640, 320);
            Locale.setDefault(Locale.GERMANY);
            assertEquals(here, Charts.svg(fine, Look.PRINT, 640, 320));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void drawingsAreXmlThatRunsNothing() throws Exception {
        String svg = Charts.svg(named(HOSTILE), Look.PRINT, 640, 320);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        var document = factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        assertEquals("svg", document.getDocumentElement().getTagName());
        assertEquals(0, document.getElementsByTagName("script").getLength());
        assertEquals(0, document.getElementsByTagName("image").getLength());
        assertTrue(document.getElementsByTagName("path").getLength() > 20, "letters are drawn as outlines: no font is asked for");
        assertNotEquals(svg, Charts.svg(named(HOSTILE), Look.DARK, 640, 320));
    }

    @Test
    void refusesNonsense() {
        Plot empty = new Plot("", "", "", Scale.NUMBERS, List.of(), List.of(new Series("", Role.LINE, List.of(), List.of())));
        assertThrows(IllegalArgumentException.class, () -> Charts.png(empty, Look.LIGHT, 640, 320));
        assertThrows(IllegalArgumentException.class, () -> Charts.svg(named(""), Look.LIGHT, 10, 320));
        assertThrows(IllegalArgumentException.class, () -> Charts.png(named(""), Look.LIGHT, 640, 100_000));
        assertThrows(IllegalArgumentException.class, () -> new Series("", Role.LINE, PLACES, List.of()));
        assertThrows(IllegalArgumentException.class, () -> new SheetTable("../up", List.of("a"), List.of()));
        assertThrows(IllegalArgumentException.class, () -> new SheetTable("a", List.of("a"), List.of(List.of("1", "2"))));
    }

    @Test
    void aPageHoldsEverythingItself() {
        SheetTable table = new SheetTable("t", List.of(HOSTILE), List.of(List.of(HOSTILE)));
        String html = new Page(HOSTILE, List.of("All families."), List.of(new Page.Section("Yield", List.of(HOSTILE),
                Optional.of(named(HOSTILE)), List.of(table)))).html();
        assertFalse(html.contains("<script"), html);
        assertFalse(html.contains("src="), "nothing is loaded");
        assertFalse(html.contains("<!DOCTYPE svg"), "the drawing is part of the page");
        assertTrue(html.contains("<svg") && html.contains("&lt;script&gt;"), "what was hostile is text");
        assertTrue(html.contains("prefers-color-scheme: dark"), "readable in the dark");
        assertTrue(html.contains("default-src 'none'"), "and a browser is told so");
    }
}
