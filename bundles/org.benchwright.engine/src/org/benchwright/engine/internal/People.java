package org.benchwright.engine.internal;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.event.Fact;

/**
 * Who works on a test, and who releases in it: nobody does both.
 *
 * @param workers   everybody who carried out some of it, by id in small letters
 * @param releasers everybody who gave or refused a release, by id in small letters
 */
record People(Set<String> workers, Set<String> releasers) {

    static final People NOBODY = new People(Set.of(), Set.of());

    /** With who told a fact. A release is told on behalf of whoever gives it; a note and the mark that a second person calls are no work. */
    People after(Fact fact, Actor actor) {
        if (fact instanceof Fact.Released r) {
            return new People(workers, plus(releasers, r.by()));
        }
        return works(fact, actor) ? new People(plus(workers, actor), releasers) : this;
    }

    private static Set<String> plus(Set<String> people, Actor actor) {
        if (people.contains(key(actor))) {
            return people;
        }
        Set<String> more = new HashSet<>(people);
        more.add(key(actor));
        return Set.copyOf(more);
    }

    private static boolean works(Fact fact, Actor actor) {
        boolean machine = actor.role() == Role.BENCH || actor.role() == Role.WATCH;
        boolean call = actor.role() == Role.SECOND_PERSON && fact instanceof Fact.Marked;
        return !machine && !call && !(fact instanceof Fact.Noted) && !(fact instanceof Fact.Interrupted);
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
        return !open && works(fact, actor) && releasers.contains(key(actor));
    }

    private static String key(Actor actor) {
        return actor.id().toLowerCase(Locale.ROOT);
    }
}
