package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;

/**
 * How old a test is. A watch has a clock of its own, which does not move that of the sitting: what people time counts from what a sitting
 * told, whatever a watch has told meanwhile.
 *
 * @param last        the last event
 * @param ofSitting   the last event of a sitting
 * @param toldByWatch true if the last event was told by a watch, or follows from what it told
 */
record TestAge(Optional<Stamp> last, Optional<Stamp> ofSitting, boolean toldByWatch) {

    /** Of a test that is not opened. */
    static final TestAge UNOPENED = new TestAge(Optional.empty(), Optional.empty(), false);

    /** The test is as old as its next event, too. */
    TestAge after(TestEvent event) {
        boolean byWatch = event.body() instanceof WatchFact || toldByWatch && event.body() instanceof Derived;
        Optional<Stamp> now = Optional.of(new Stamp(event.moment(), byWatch ? byWall(event.moment()) : at(event.moment())));
        return new TestAge(now, byWatch ? ofSitting : now, byWatch);
    }

    /** The last event, with the test's age. */
    Stamp now() {
        return opened(last);
    }

    /**
     * How old the test is at a moment of a sitting. Within one its own clock alone tells: what a watch told by a wall clock that was put forward
     * does not make the test older. Between two sittings there is no clock but the wall's.
     */
    Duration at(Moment moment) {
        Duration age = ofSitting.map(known -> known.age().plus(moment.since(known.moment()))).orElse(Duration.ZERO);
        return ofSitting.filter(known -> known.moment().sitting() == moment.sitting()).isPresent() ? age : notBefore(age);
    }

    /** How old the test is by wall time, for what a watch tells: its process and that of the sitting have no other clock in common. */
    private Duration byWall(Moment moment) {
        Stamp known = opened(ofSitting);
        return notBefore(known.age().plus(Duration.between(known.moment().instant(), moment.instant())));
    }

    /**
     * The same moment as the sitting's own clock would have it. What a watch told has the wall's time alone, and the offset of the event
     * before it: counted from that, a time would be over long before {@link #at} says so.
     */
    Moment onClockOfSitting(Stamp then) {
        Stamp known = opened(ofSitting);
        return new Moment(then.moment().instant(), known.moment().sitting(), known.moment().offset().plus(then.age()).minus(known.age()));
    }

    private Duration notBefore(Duration age) {
        return last.map(Stamp::age).filter(before -> before.compareTo(age) > 0).orElse(age);
    }

    private static Stamp opened(Optional<Stamp> stamp) {
        return stamp.orElseThrow(() -> new IllegalStateException("the test is not opened"));
    }
}
