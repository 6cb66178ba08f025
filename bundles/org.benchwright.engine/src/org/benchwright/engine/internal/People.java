package org.benchwright.engine.internal;

import java.util.Locale;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.event.Fact;

/** Who works on a test, and who releases in it: nobody does both. */
final class People {

    private People() {
    }

    /** Takes down who told a fact. A release is told on behalf of whoever gives it; a note and a second person's call are no work. */
    static void noted(RunState s, Fact fact, Actor actor) {
        if (fact instanceof Fact.Released r) {
            s.releasers().add(key(r.by()));
        } else if (works(fact, actor)) {
            s.workers().add(key(actor));
        }
    }

    private static boolean works(Fact fact, Actor actor) {
        boolean machine = actor.role() == Role.BENCH || actor.role() == Role.WATCH;
        return !machine && actor.role() != Role.SECOND_PERSON && !(fact instanceof Fact.Noted) && !(fact instanceof Fact.Interrupted);
    }

    /** True if this actor has carried out some of the test. */
    static boolean hasWorked(RunState s, Actor actor) {
        return s.workers().contains(key(actor));
    }

    /**
     * True if this actor would carry out what they have released themselves. Making safe and ending the test stay open to everybody: a unit
     * is never left as it is for want of hands.
     */
    static boolean worksOnOwnRelease(RunState s, Fact fact, Actor actor) {
        boolean open = s.makingSafe() || fact instanceof Fact.Abandoned || fact instanceof Fact.Released;
        return !open && works(fact, actor) && s.releasers().contains(key(actor));
    }

    private static String key(Actor actor) {
        return actor.id().toLowerCase(Locale.ROOT);
    }
}
