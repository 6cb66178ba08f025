package org.benchwright.present.internal;

import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.core.Actor;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;

/** By what a record is found beside what its row shows. */
final class Findable {

    private Findable() {
    }

    /** People, instruments, departures, nonconformities and days of a test, each once. */
    static List<String> of(TestRun run) {
        return run.events().stream().flatMap(event -> Stream.concat(Stream.of(day(event), person(event.actor())), words(event.body())))
                .distinct().toList();
    }

    private static String day(TestEvent event) {
        return event.moment().instant().atZone(ZoneId.systemDefault()).toLocalDate().toString();
    }

    private static String person(Actor actor) {
        return actor.toString();
    }

    private static Stream<String> words(EventBody body) {
        if (body instanceof Fact.Released released) {
            return Stream.of(person(released.by()));
        } else if (body instanceof Observation.InstrumentNamed instrument) {
            return Stream.of(Questions.spaced(instrument.instrument()) + " " + instrument.asset());
        } else if (body instanceof Derived.DepartureNoted || body instanceof Derived.NonconformityNoted) {
            return EventWords.derived((Derived) body).stream();
        }
        return Stream.empty();
    }
}
