package org.benchwright.engine.internal;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.WatchFact;

/**
 * Who works on a test, and who releases in it: nobody does both.
 *
 * @param workers   everybody who carried out some of it, by id in small letters
 * @param releasers everybody who gave or refused a release, by id in small letters
 */
record People(Set<String> workers, Set<String> releasers) {

    static final People NOBODY = new People(Set.of(), Set.of());

    /**
     * In which role a fact is told. Somebody else's word for it is none: what an auditor, or a watch, would have answered at a card was answered
     * by nobody.
     */
    static Role teller(Fact fact) {
        if (fact instanceof WatchFact) {
            return Role.WATCH;
        }
        boolean bench = fact instanceof Fact.Interrupted || fact instanceof Fact.ClockChanged || fact instanceof Fact.BenchProved;
        return bench ? Role.BENCH : Role.TECHNICIAN;
    }

    /** With who told a fact. A release is told on behalf of whoever gives it; a note is no work. */
    People after(Fact fact, Actor actor) {
        if (fact instanceof Fact.Released r) {
            return new People(workers, plus(releasers, r.by()));
        }
        return works(fact) ? new People(plus(workers, actor), releasers) : this;
    }

    private static Set<String> plus(Set<String> people, Actor actor) {
        if (people.contains(key(actor))) {
            return people;
        }
        Set<String> more = new HashSet<>(people);
        more.add(key(actor));
        return Set.copyOf(more);
    }

    private static boolean works(Fact fact) {
        return teller(fact) == Role.TECHNICIAN && !(fact instanceof Fact.Noted);
    }

    /** True if this actor has carried out some of the test. */
    boolean haveWorked(Actor actor) {
        return workers.contains(key(actor));
    }

    /**
     * True if this actor would carry out what they have released themselves. Making safe and ending the test stay open to everybody: a unit
     * is never left as it is for want of hands.
     *
     * @param makingSafe whether the test is in make safe
     */
    boolean wouldWorkOnOwnRelease(Fact fact, Actor actor, boolean makingSafe) {
        boolean open = makingSafe || fact instanceof Fact.Abandoned || fact instanceof Fact.Released;
        return !open && works(fact) && releasers.contains(key(actor));
    }

    private static String key(Actor actor) {
        return actor.id().toLowerCase(Locale.ROOT);
    }
}
