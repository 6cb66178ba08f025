package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.core.Quantity;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;

/** What is asked for each demand, and how it is entered. */
public final class Questions {

    private final Plan plan;
    private final Indications indications;

    /** @param plan the plan that is carried out */
    public Questions(Plan plan) {
        this.plan = plan;
        this.indications = new Indications(plan.family());
    }

    /**
     * A question.
     *
     * @param instruction what to do first, empty where the step says it
     * @param question    what is asked
     * @param parts       what to enter, one after the other
     */
    public record Question(String instruction, String question, List<String> parts) {

        static Question of(String question, String... parts) {
            return new Question("", question, List.of(parts));
        }
    }

    /** The question of a demand. */
    public Question of(Demand demand) {
        if (demand instanceof Demand.AnswerPrecondition d) {
            return precondition(d.precondition());
        } else if (demand instanceof Demand.AcknowledgeHazard) {
            return Question.of(Message.ASK_HAZARD.text(), Message.HOW_UNDERSTOOD.text());
        } else if (demand instanceof Demand.NameInstrument d) {
            return instrument(d.instrument());
        } else if (demand instanceof Demand.Switch d) {
            Message action = d.live() ? Message.DO_SWITCH_ON : Message.DO_SWITCH_OFF;
            Message question = d.live() ? Message.ASK_SWITCHED_ON : Message.ASK_SWITCHED_OFF;
            return new Question(action.text(d.item()), question.text(d.item()), List.of(Message.HOW_DONE.text()));
        } else if (demand instanceof Demand.PressMark d) {
            return Question.of(d.mark().prompt(), Message.HOW_PRESS.text());
        } else if (demand instanceof Demand.TellPower d) {
            return Question.of(Message.ASK_POWER.text(String.join(", ", d.live())), Message.HOW_YES_NO.text());
        } else if (demand instanceof Demand.Look d) {
            return look(d);
        } else if (demand instanceof Demand.Nothing d) {
            return Question.of(Message.SAY_ENDED.text(d.outcome().word(), d.reason()));
        }
        return timed(demand);
    }

    private Question timed(Demand demand) {
        if (demand instanceof Demand.AwaitTone d) {
            return Question.of(Message.ASK_WATCH.text(indications.of(d.expect().sequence())));
        } else if (demand instanceof Demand.AwaitTime d) {
            return Question.of(Message.ASK_WAIT.text(Durations.words(d.time().time())));
        } else if (demand instanceof Demand.AnswerExpectation d) {
            return Question.of(indications.question(d.expect()), Message.HOW_SEEN.text());
        }
        return entry(demand);
    }

    private Question entry(Demand demand) {
        if (demand instanceof Demand.TakeMeasurement d) {
            return measurement(d);
        } else if (demand instanceof Demand.ReadCell d) {
            return cell(d);
        } else if (demand instanceof Demand.GiveReason d) {
            return Question.of(Message.ASK_REASON.text(d.because()), Message.HOW_TEXT.text());
        } else if (demand instanceof Demand.EnterText d) {
            return Question.of(d.entry().label(), Message.HOW_TEXT.text());
        } else if (demand instanceof Demand.EnterFaultLog d) {
            return Question.of(faultLog(d.entry()), Message.HOW_FAULT_LOG.text());
        } else if (demand instanceof Demand.CompareEntries d) {
            return Question.of(Message.ASK_COMPARE.text(), d.compare().left(), d.compare().right());
        } else if (demand instanceof Demand.AttachFile d) {
            return Question.of(Message.ASK_ATTACH.text(d.attach().kind(), d.attach().label()), Message.HOW_FILE.text());
        }
        return confirmation(demand);
    }

    /** A unit may keep several logs; plans from before that don't say which one is meant. */
    private static String faultLog(Action.EnterFaultLog entry) {
        return entry.title().map(Message.ASK_LOG::text).orElseGet(() -> (entry.asFound() ? Message.ASK_FAULT_LOG_FOUND : Message.ASK_FAULT_LOG).text());
    }

    private Question confirmation(Demand demand) {
        if (demand instanceof Demand.ConfirmStatement d) {
            return Question.of(Message.ASK_CONFIRM.text(d.confirm().statement()), Message.HOW_YES_NO.text());
        } else if (demand instanceof Demand.ConfirmItem d) {
            return Question.of(item(d), Message.HOW_YES_NO.text());
        } else if (demand instanceof Demand.Release d) {
            return Question.of(Message.ASK_RELEASE.text(d.statement(), d.by().label()), Message.HOW_RELEASE.text());
        } else if (demand instanceof Demand.Apply d) {
            String quantity = d.apply().quantity().toString();
            String instruction = d.apply().instrument().isEmpty() ? Message.DO_APPLY.text(quantity)
                    : Message.DO_APPLY_WITH.text(quantity, title(d.apply().instrument()));
            return new Question(instruction, Message.ASK_APPLIED.text(quantity), List.of(Message.HOW_DONE.text()));
        }
        throw new IllegalStateException("no question for " + demand);
    }

    private static String item(Demand.ConfirmItem d) {
        boolean erase = d.choose().verb() == Action.Choose.Verb.ERASE;
        if (d.chosen()) {
            return (erase ? Message.ASK_ERASED : Message.ASK_LOADED).text(d.item().title());
        }
        Message spared = erase ? Message.ASK_NOT_ERASED : Message.ASK_NOT_LOADED;
        String question = spared.text(d.item().title());
        return d.item().protect() ? Message.ASK_PROTECTED.text(question) : question;
    }

    /** What a precondition asks. */
    public Question precondition(Precondition p) {
        String statement = p.statement();
        if (p.reading().isPresent()) {
            return new Question(statement, Message.ASK_READING.text(p.reading().get().toString()), List.of(Message.HOW_QUANTITY.text()));
        } else if (p.text().isPresent()) {
            return new Question(statement, Message.ASK_HOLDS.text(), List.of(Message.HOW_YES_TEXT.text(p.text().get())));
        }
        return new Question(statement, Message.ASK_HOLDS.text(), List.of(Message.HOW_YES_NO.text()));
    }

    /** What is asked about an instrument before it is used. */
    public Question instrument(InstrumentSpec spec) {
        String question = Message.ASK_INSTRUMENT.text(spec.title());
        String limit = spec.maxUncertainty().map(u -> " " + Message.SAY_MOST_UNCERTAINTY.text(u.toString(),
                spec.coverage().toPlainString())).orElse("");
        return Question.of(question + limit, Message.HOW_INSTRUMENT.text(exampleOfUncertainty(spec)));
    }

    /** An uncertainty in the unit of the instrument that is asked for, to show how one is written. */
    static String exampleOfUncertainty(InstrumentSpec spec) {
        return spec.maxUncertainty().map(Quantity::toString)
                .orElseGet(() -> "0.02 " + spec.range().map(range -> range.unit().word()).orElse("V"));
    }

    /** What is asked about a reading that looks like a slip; where it is entered blind, nothing is given away. */
    public static Question questioned(Demand demand, Fact.Questioned reading) {
        boolean blind = demand instanceof Demand.TakeMeasurement m && m.measure().blind();
        String question = blind ? Hands.ASK_QUESTIONED_BLIND.text(reading.value().toString())
                : Hands.ASK_QUESTIONED.text(reading.instead().toString(), reading.value().toString());
        return Question.of(question, Hands.HOW_QUESTIONED.text());
    }

    private Question measurement(Demand.TakeMeasurement d) {
        Action.Measure m = d.measure();
        if (m.blind()) {
            return Question.of(Hands.ASK_BLIND.text(spaced(m.id()), title(m.instrument())), Message.HOW_NUMBER.text(m.unit().word()));
        }
        String question = Message.ASK_MEASURE.text(spaced(m.id()), title(m.instrument()), m.limits().toString());
        String earlier = d.earlier().isEmpty() ? "" : " " + Message.SAY_EARLIER.text(
                d.earlier().stream().map(Quantity::toString).collect(Collectors.joining(", ")));
        return Question.of(question + earlier, Message.HOW_NUMBER.text(m.unit().word()));
    }

    private String title(String instrument) {
        return plan.instrument(instrument).map(InstrumentSpec::title).orElse(instrument);
    }

    private static Question cell(Demand.ReadCell d) {
        List<String> at = new ArrayList<>();
        for (int i = 0; i < d.at().size(); i++) {
            Action.AxisValue value = d.at().get(i);
            at.add(spaced(d.grid().axes().get(i).name()) + " " + value.label());
        }
        int count = d.grid().axes().stream().mapToInt(axis -> axis.values().size()).reduce(1, Math::multiplyExact);
        String settle = d.grid().settle().isZero() ? "" : " " + Message.SAY_SETTLE.text(Durations.words(d.grid().settle()));
        return Question.of(Message.ASK_CELL.text(String.valueOf(d.cell() + 1), String.valueOf(count), String.join(", ", at),
                spaced(d.grid().reading())) + settle, Message.HOW_NUMBER.text(d.grid().unit().word()));
    }

    private Question look(Demand.Look d) {
        List<String> parts = new ArrayList<>();
        parts.add(Message.HOW_LOOK.text());
        d.soak().conditions().forEach(c -> parts.add(Message.HOW_CONDITION.text(spaced(c.name()), c.limits().toString())));
        String shows = indications.of(d.soak().keep());
        return new Question((d.begins() ? Message.DO_BEGIN_SOAK : Message.DO_LOOK).text(),
                Message.ASK_LOOK.text(shows), parts);
    }

    /** A name of the procedure as people read it. */
    public static String spaced(String name) {
        return name.replace('_', ' ').toLowerCase(Locale.ROOT);
    }
}
