package org.benchwright.ledger.people;

import java.time.LocalDate;
import java.util.Objects;

/**
 * That a person may carry out a procedure on units of a family.
 *
 * @param family    the family's name, or {@link #ANY}
 * @param procedure the procedure's name, or {@link #ANY}
 * @param from      first day, in UTC
 * @param until     last day, in UTC
 * @param ended     true if it was ended before that day
 */
public record Authorisation(String family, String procedure, LocalDate from, LocalDate until, boolean ended) {

    /** Stands for every family or procedure. */
    public static final String ANY = "*";

    public Authorisation {
        Objects.requireNonNull(family);
        Objects.requireNonNull(procedure);
        Objects.requireNonNull(from);
        Objects.requireNonNull(until);
    }

    /** Whether it is about that procedure on units of that family, whether it holds or not. */
    public boolean isAbout(String theFamily, String theProcedure) {
        return (family.equals(ANY) || family.equals(theFamily)) && (procedure.equals(ANY) || procedure.equals(theProcedure));
    }

    /** Whether it holds on that day. */
    public boolean holdsOn(LocalDate day) {
        return !ended && !day.isBefore(from) && !day.isAfter(until);
    }

    Authorisation end() {
        return new Authorisation(family, procedure, from, until, true);
    }
}
