package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;

import org.benchwright.ui.internal.Latest;
import org.junit.jupiter.api.Test;

/** Of several readings only the one that was begun last is shown. */
class LatestTest {

    private final List<String> shown = new ArrayList<>();
    private final Latest latest = new Latest();

    @Test
    void oneThatWasBegunBeforeAnotherIsNotShownWhicheverEndsFirst() {
        Latest.Reading first = latest.begin();
        Latest.Reading second = latest.begin();
        second.show(() -> shown.add("second"));
        first.show(() -> shown.add("first"));
        assertEquals(List.of("second"), shown);
        Latest.Reading third = latest.begin();
        second.show(() -> shown.add("second, late"));
        third.show(() -> shown.add("third"));
        assertEquals(List.of("second", "third"), shown);
    }

    @Test
    void theLatestMayTellHowFarItHasComeAsOftenAsItLikes() {
        Latest.Reading only = latest.begin();
        only.show(() -> shown.add("half"));
        only.show(() -> shown.add("all"));
        assertEquals(List.of("half", "all"), shown);
    }

    @Test
    void readingsOfOtherThingsDoNotCount() {
        Latest.Reading ours = latest.begin();
        new Latest().begin();
        ours.show(() -> shown.add("ours"));
        assertEquals(List.of("ours"), shown);
    }
}
