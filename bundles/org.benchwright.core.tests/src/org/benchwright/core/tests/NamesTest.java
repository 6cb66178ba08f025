package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.core.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The words that records and texts name people, hazards and verdicts by. */
class NamesTest {

    /** ANSI Z535.4 signal words, their panel colours and what they are about; ISO 3864-2 has the first three. */
    @ParameterizedTest
    @CsvSource({ "danger, true, red", "warning, true, orange", "caution, true, yellow", "notice, false, blue" })
    void signalWordsAreThoseOfTheStandards(String word, boolean injury, String colour) {
        SignalWord signal = SignalWord.find(word).orElseThrow();
        assertEquals(injury, signal.aboutInjury());
        assertEquals(colour, signal.panelColour());
        assertEquals(word, signal.word());
        assertFalse(signal.meaning().isBlank());
    }

    @Test
    void dangerComesFirst() {
        assertEquals(List.of(SignalWord.DANGER, SignalWord.WARNING, SignalWord.CAUTION, SignalWord.NOTICE), List.of(SignalWord.values()));
        assertEquals(Optional.empty(), SignalWord.find("hazard"));
    }

    @ParameterizedTest
    @ValueSource(strings = { "", " ", "a b", "a/b", "../x", "\u00e4", "'; drop",
        "12345678901234567890123456789012345678901234567890123456789012345" })
    void refusesIdsThatAreNoKeyIds(String id) {
        assertThrows(IllegalArgumentException.class, () -> new Actor(id, Role.TECHNICIAN));
    }

    @Test
    void actorsAreNamedByRoleAndId() {
        assertEquals("technician QN", new Actor("QN", Role.TECHNICIAN).toString());
        assertEquals("second person RB-2", new Actor("RB-2", Role.SECOND_PERSON).toString());
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void rolesAreFoundByTheirWords(Role role) {
        assertEquals(Optional.of(role), Role.find(role.word()));
        assertEquals(role.word(), role.label());
    }

    @ParameterizedTest
    @EnumSource(Verdict.class)
    void verdictsAreFoundByTheirWords(Verdict verdict) {
        assertEquals(Optional.of(verdict), Verdict.find(verdict.word()));
        assertEquals(Optional.empty(), Verdict.find(verdict.name()));
    }
}
