package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;

import org.benchwright.present.Command;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Keys that work at any time, and what looks like them but is an answer. */
class CommandTest {

    @Test
    void keys() {
        assertEquals(Optional.of(new Command.MakeSafe("")), Command.parse("!"));
        assertEquals(Optional.of(new Command.MakeSafe("smoke")), Command.parse(" ! smoke "));
        assertEquals(Optional.of(new Command.MakeSafe("smoke")), Command.parse("!smoke"));
        assertEquals(Optional.of(new Command.Strike()), Command.parse("-"));
        assertEquals(Optional.of(new Command.Note("a new sticker")), Command.parse("+ a new sticker"));
        assertEquals(Optional.of(new Command.Help()), Command.parse("?"));
        assertEquals(Optional.of(new Command.SoFar()), Command.parse("??"));
        assertEquals(Optional.of(new Command.Leave()), Command.parse("q"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-0.016 mA", "+5 V", "y", "none", "quiet", "24 V", "-- "})
    void answers(String typed) {
        assertEquals(Optional.empty(), Command.parse(typed));
    }
}
