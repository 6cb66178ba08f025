package org.benchwright.present.internal;

import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.core.Quantity;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.WatchFact;

/** What happened, in words for people. */
final class EventWords {

    private EventWords() {
    }

    /**
     * The words for an event.
     *
     * @param names what readers know a check and its items by
     * @param times how instants are told
     */
    static String of(EventBody body, CheckNames names, Times times) {
        if (body instanceof Observation.TextEntered f) {
            return Message.TOLD_ENTRY.text(names.apply(f.check()), f.text());
        } else if (body instanceof Observation.Attached f) {
            return Message.TOLD_ATTACHED.text(names.apply(f.check()), f.name(), f.digest().hex().substring(0, 12));
        } else if (body instanceof Observation.ItemConfirmed f) {
            return Message.TOLD_ENTRY.text(names.part(f.check(), f.item()), yes(f.yes()));
        }
        return body instanceof Derived derived ? derived(derived).orElseGet(() -> plain(derived)) : fact((Fact) body, times);
    }

    /** Words for what a person wants to be told at once; empty for what is only on record. */
    static Optional<String> derived(Derived derived) {
        if (derived instanceof Derived.CheckDecided d) {
            return Optional.of(d.words());
        } else if (derived instanceof Derived.Repeated d) {
            return Optional.of(Message.SAID_REPEATED.text(Questions.spaced(d.check().isEmpty() ? d.step() : d.check()), d.reason()));
        } else if (derived instanceof Derived.Moved d) {
            return Optional.of(Message.SAID_MOVED.text(Questions.spaced(d.step().isEmpty() ? d.stage() : d.step()), WholeSeconds.in(d.because())));
        } else if (derived instanceof Derived.PreconditionExpired d) {
            return Optional.of(Message.SAID_EXPIRED.text(Questions.spaced(d.precondition())));
        } else if (derived instanceof Derived.SoakBegun d) {
            return Optional.of(Message.SAID_SOAK_BEGUN.text(Durations.words(d.nextDue())));
        } else if (derived instanceof Derived.SoakWitnessed d) {
            return Optional.of(Message.SAID_WITNESSED.text(Durations.words(Durations.wholeSeconds(d.witnessed())),
                    Durations.words(Durations.wholeSeconds(d.nextDue()))));
        } else if (derived instanceof Derived.SoakEnded d) {
            return Optional.of(WholeSeconds.in(d.words()));
        } else if (derived instanceof Derived.DepartureNoted d) {
            return Optional.of(Message.SAID_DEPARTURE.text(WholeSeconds.in(d.words())));
        } else if (derived instanceof Derived.NonconformityNoted d) {
            return Optional.of(Message.SAID_NONCONFORMITY.text(WholeSeconds.in(d.words())));
        } else if (derived instanceof Derived.ConclusionReached d) {
            return Optional.of(Message.SAID_CONCLUSION.text(d.verdict().word(), WholeSeconds.in(d.reason())));
        }
        return Optional.empty();
    }

    private static String plain(Derived derived) {
        if (derived instanceof Derived.StepOpened d) {
            return (d.visit() > 1 ? Message.SAID_STEP_AGAIN : Message.SAID_STEP).text(Questions.spaced(d.step()), String.valueOf(d.visit()));
        } else if (derived instanceof Derived.WaitBegan d) {
            return Message.SAID_WAIT_BEGAN.text(Questions.spaced(d.check()));
        } else if (derived instanceof Derived.StepDecided d) {
            return Message.SAID_STEP_DECIDED.text(Questions.spaced(d.step()), outcome(d.outcome()));
        } else if (derived instanceof Derived.Concluded d) {
            return Message.SAID_CONCLUDED.text(d.verdict().word(), WholeSeconds.in(d.reason()));
        } else if (derived instanceof Derived.RehearsalEnded d) {
            return Message.SAID_REHEARSAL_ENDED.text(d.wouldBe().word(), WholeSeconds.in(d.reason()));
        }
        return Message.SAID_MADE_SAFE.text();
    }

    /** An outcome in words. */
    static String outcome(Derived.Outcome outcome) {
        return switch (outcome) {
            case CONFORMS -> Message.OUTCOME_CONFORMS.text();
            case DOES_NOT_CONFORM -> Message.OUTCOME_DOES_NOT_CONFORM.text();
            case UNDECIDED -> Message.OUTCOME_UNDECIDED.text();
            case RELEASED -> Message.OUTCOME_RELEASED.text();
        };
    }

    private static String fact(Fact fact, Times times) {
        if (fact instanceof Fact.Opened f) {
            return Message.TOLD_OPENED.text(f.serial(), f.procedure(), String.valueOf(f.revision())) + f.approval().map(approval ->
                    Message.TOLD_APPROVAL.text(approval.preparedBy(), approval.approvedBy(),
                            times.day(approval.instant()))).orElse("") + RepairWords.opening(f);
        } else if (fact instanceof Fact.HazardAcknowledged f) {
            return Message.TOLD_HAZARD.text(Questions.spaced(f.hazard()));
        } else if (fact instanceof Fact.HazardKnown f) {
            return Hands.HAZARD_KNOWN.text(Questions.spaced(f.hazard()), f.test());
        } else if (fact instanceof Observation.InstrumentNamed f) {
            return Message.TOLD_INSTRUMENT.text(Questions.spaced(f.instrument()), f.asset(),
                    f.uncertainty().map(Quantity::toString).orElse("-"), f.due().map(Object::toString).orElse("-")) + register(f);
        } else if (fact instanceof Fact.Switched f) {
            return (f.live() ? Message.TOLD_ON : Message.TOLD_OFF).text(Questions.spaced(f.item()));
        } else if (fact instanceof Fact.Marked f) {
            return Message.TOLD_MARK.text(Questions.spaced(f.mark()));
        } else if (fact instanceof Fact.ToneGiven f) {
            return Message.TOLD_TONE.text(Questions.spaced(f.check()));
        } else if (fact instanceof Fact.WaitElapsed f) {
            return Message.TOLD_WAIT_OVER.text(Questions.spaced(f.check()));
        } else if (fact instanceof Fact.Applied f) {
            return Message.TOLD_APPLIED.text(Questions.spaced(f.check()));
        } else if (fact instanceof Fact.Released f) {
            return (f.given() ? Message.TOLD_RELEASED : Message.TOLD_REFUSED).text(Questions.spaced(f.check()), f.by().toString());
        }
        return around(fact, times);
    }

    private static String register(Observation.InstrumentNamed named) {
        return named.entry().map(entry -> (entry.certificate().isEmpty() ? HouseWords.TOLD_REGISTER : HouseWords.TOLD_REGISTER_CERTIFICATE)
                .text(entry.title(), entry.certificate())).orElseGet(HouseWords.TOLD_BY_HAND::text);
    }

    private static String around(Fact fact, Times times) {
        if (fact instanceof Fact.Struck f) {
            return Message.TOLD_STRUCK.text(String.valueOf(f.sequence()));
        } else if (fact instanceof Fact.TakenOver f) {
            return Hands.TAKEN_OVER.text(f.from());
        } else if (fact instanceof Fact.Identified f) {
            return Hands.IDENTIFIED.text(f.serial());
        } else if (fact instanceof Fact.Placed f) {
            return Hands.PLACED.text(f.position());
        } else if (fact instanceof Fact.BenchProved f) {
            return Hands.BENCH_PROVED.text(f.test(), times.words(f.until()));
        } else if (fact instanceof Fact.Noted f) {
            return Message.TOLD_NOTE.text(f.text());
        } else if (fact instanceof Fact.Abandoned f) {
            return Message.TOLD_ABANDONED.text(f.reason());
        } else if (fact instanceof Fact.Interrupted f) {
            return Message.TOLD_INTERRUPTED.text(WholeSeconds.in(Durations.words(f.gap())));
        } else if (fact instanceof Fact.PowerAnswered f) {
            return (f.kept() ? Message.TOLD_POWER_KEPT : Message.TOLD_POWER_LOST).text();
        } else if (fact instanceof Fact.ClockChanged f) {
            return Message.TOLD_CLOCK.text(WholeSeconds.in(Durations.words(f.by())));
        } else if (fact instanceof Observation.ReasonGiven f) {
            return Message.TOLD_REASON.text(f.reason());
        }
        return observed(fact, times);
    }

    private static String observed(Fact fact, Times times) {
        if (fact instanceof Observation.PreconditionAnswered f) {
            String reading = f.reading().map(Quantity::toString).orElse(f.text());
            return entry(f.precondition(), yes(f.met()) + (reading.isEmpty() ? "" : ", " + reading));
        } else if (fact instanceof Observation.Seen f) {
            return entry(f.check(), sight(f.answer()) + (f.asSeen().isEmpty() ? "" : ": " + f.asSeen()));
        } else if (fact instanceof Observation.Tapped f) {
            return Hands.TAPPED.text(Questions.spaced(f.check()), f.taps().size(),
                    Durations.words(f.taps().get(f.taps().size() - 1)));
        } else if (fact instanceof Fact.Questioned f) {
            return Hands.QUESTIONED.text(Questions.spaced(f.check()), f.value().toString(), f.instead().toString());
        } else if (fact instanceof Observation.Measured f) {
            return entry(f.check(), f.value().toString());
        } else if (fact instanceof Observation.CellRead f) {
            return entry(f.check() + " " + (f.cell() + 1), f.value().toString());
        } else if (fact instanceof Observation.Confirmed f) {
            return entry(f.check(), yes(f.yes()));
        } else if (fact instanceof Observation.Compared f) {
            return entry(f.check(), f.left() + " / " + f.right());
        }
        return gathered(fact, times);
    }

    private static String gathered(Fact fact, Times times) {
        if (fact instanceof Observation.FaultLogEntered f) {
            return entry(f.check(), f.lines().isEmpty() ? Message.TOLD_EMPTY_LOG.text()
                    : f.lines().stream().map(l -> (l.code() + " " + l.text()).strip()).collect(Collectors.joining("; ")));
        } else if (fact instanceof Observation.Looked f) {
            return entry(f.stage(), sight(f.answer()) + (f.asSeen().isEmpty() ? "" : ": " + f.asSeen()) + f.readings().stream()
                    .map(r -> ", " + Questions.spaced(r.condition()) + " " + r.value()).collect(Collectors.joining()));
        }
        if (fact instanceof WatchFact f) {
            return WatchWords.of(f, times);
        }
        throw new IllegalStateException("no words for " + fact);
    }

    private static String entry(String what, String value) {
        return Message.TOLD_ENTRY.text(Questions.spaced(what), value);
    }

    private static String yes(boolean yes) {
        return (yes ? Message.SAY_YES : Message.SAY_NO).text();
    }

    private static String sight(Observation.Sight sight) {
        return switch (sight) {
            case YES -> Message.SAY_AS_EXPECTED.text();
            case NO -> Message.SAY_NOT_AS_EXPECTED.text();
            case NOT_LOOKING -> Message.SAY_NOT_LOOKING.text();
        };
    }
}
