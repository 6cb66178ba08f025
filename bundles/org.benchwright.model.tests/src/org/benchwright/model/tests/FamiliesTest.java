package org.benchwright.model.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;

import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Indication;
import org.benchwright.model.Lamp;
import org.benchwright.model.LampIndication;
import org.benchwright.model.Mode;
import org.benchwright.model.ProcedureFactory;
import org.benchwright.model.ShownByMode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A family has what the families it is like have, and its own word counts over theirs. */
class FamiliesTest {

    private static final ProcedureFactory NEW = ProcedureFactory.eINSTANCE;

    private final Family base = family("base");
    private final Family middle = family("middle");
    private final Family own = family("own");

    private static Family family(String name) {
        Family family = NEW.createFamily();
        family.setName(name);
        return family;
    }

    private static Lamp lamp(Family family, String name) {
        Lamp lamp = NEW.createLamp();
        lamp.setName(name);
        family.getLamps().add(lamp);
        return lamp;
    }

    private static Mode mode(Family family, String name) {
        Mode mode = NEW.createMode();
        mode.setName(name);
        family.getModes().add(mode);
        return mode;
    }

    private static Indication shows(Family family, Mode mode) {
        ShownByMode shown = NEW.createShownByMode();
        shown.setMode(mode);
        LampIndication indication = NEW.createLampIndication();
        shown.getIndications().add(indication);
        family.getModeIndications().add(shown);
        return indication;
    }

    @BeforeEach
    void inLine() {
        own.setBase(middle);
        middle.setBase(base);
    }

    @Test
    void theLineBeginsWithTheFamilyItself() {
        assertEquals(List.of(own, middle, base), Families.lineage(own));
        assertEquals(List.of(base), Families.lineage(base));
    }

    @Test
    void aCircleIsWalkedOnce() {
        base.setBase(own);
        assertEquals(List.of(own, middle, base), Families.lineage(own));
        base.setBase(base);
        assertEquals(List.of(base), Families.lineage(base));
    }

    @Test
    void aFamilyIsLikeItselfAndThoseBeforeItOnly() {
        assertTrue(Families.isLike(own, base));
        assertTrue(Families.isLike(own, own));
        assertFalse(Families.isLike(base, own));
    }

    @Test
    void anOwnLampCountsOverAnInheritedOneOfThatName() {
        Lamp inherited = lamp(base, "pwr");
        lamp(base, "ok");
        Lamp nearer = lamp(middle, "ok");
        Lamp added = lamp(own, "out");
        assertEquals(List.of(added, nearer, inherited), Families.lamps(own));
    }

    @Test
    void aLampWithoutANameIsLeftOut() {
        base.getLamps().add(NEW.createLamp());
        assertEquals(List.of(), Families.lamps(own));
    }

    @Test
    void theNearestWordOnAModeCounts() {
        Mode run = mode(base, "run");
        Indication inherited = shows(base, run);
        assertEquals(List.of(inherited), Families.indications(own, run));
        Indication nearer = shows(middle, run);
        assertEquals(List.of(nearer), Families.indications(own, run));
        assertEquals(List.of(inherited), Families.indications(base, run));
        assertEquals(List.of(), Families.indications(own, mode(base, "stopped")));
    }

    @Test
    void aModeDeclaredAnewKeepsWhatShowsTheOldOne() {
        Indication inherited = shows(base, mode(base, "run"));
        assertEquals(List.of(inherited), Families.indications(own, mode(own, "run")));
    }

    @Test
    void theNearestStopAndSupplyAndMaskCount() {
        assertEquals(Optional.empty(), Families.stop(own));
        base.setStop(NEW.createStopBehaviour());
        assertSame(base.getStop(), Families.stop(own).orElseThrow());
        middle.setStop(NEW.createStopBehaviour());
        assertSame(middle.getStop(), Families.stop(own).orElseThrow());
        base.setSerial("B-#");
        assertEquals(Optional.of("B-#"), Families.serialMask(own));
        assertEquals(Optional.empty(), Families.supply(own));
    }
}
