package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.JudgedValue;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.report.TestReport;
import org.benchwright.report.TestReport.Amendment;
import org.benchwright.report.TestReport.Attachment;
import org.benchwright.report.TestReport.Heading;
import org.benchwright.report.TestReport.Instrument;
import org.benchwright.report.TestReport.Result;
import org.benchwright.report.TestReport.StoryLine;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.SignedNote;

/** A kept test as values for paper. */
public final class ReportValues {

    /** Kinds of signed event after which a certificate says something else than before. */
    private static final Set<String> CHANGING = Set.of("amended", "departure-decided", "recalled", "superseded", "voided");

    private final TestRun run;
    private final List<Result> results = new ArrayList<>();
    private final Map<String, Instrument> instruments = new LinkedHashMap<>();
    private final List<String> departures = new ArrayList<>();
    private final List<String> nonconformities = new ArrayList<>();
    private final List<Attachment> attachments = new ArrayList<>();
    private final Set<String> people = new LinkedHashSet<>();
    /** How often each check of the open step was decided. */
    private final Map<String, Integer> readings = new HashMap<>();
    private String step = "";

    private ReportValues(TestRun run) {
        this.run = run;
        run.events().forEach(this::read);
    }

    /**
     * The values of a test.
     *
     * @param notes what was signed after its seal
     * @param proof text of the proof of its last event, if there is one
     */
    public static TestReport of(KeptTest test, List<SignedNote> notes, Optional<String> proof) {
        return new ReportValues(test.run()).report(test, notes, proof);
    }

    private TestReport report(KeptTest test, List<SignedNote> notes, Optional<String> proof) {
        List<Amendment> amendments = notes.stream().map(note -> new Amendment(note.sequence(), note.instant(), note.kind(), note.by(),
                note.words(), CHANGING.contains(note.kind()))).toList();
        List<StoryLine> story = Timeline.of(run).stream()
                .map(line -> new StoryLine(line.sequence(), line.instant(), line.who(), line.words(), line.struck())).toList();
        return TestReport.of(heading(test), results, SoakProof.of(run), List.copyOf(instruments.values()), departures, nonconformities, attachments,
                amendments, story, proof);
    }

    private Heading heading(KeptTest test) {
        Fact.Opened opening = run.opening();
        List<TestEvent> events = run.events();
        Optional<String> verdict = run.verdict().or(run::wouldBe).map(Verdict::word);
        return new Heading(test.id(), opening.serial(), run.plan().family().title(), run.plan().title(), opening.revision(),
                run.plan().purpose(), opening.text().hex(), approval(opening), opening.station(), opening.software(), List.copyOf(people),
                events.get(0).moment().instant(), run.ended() ? Optional.of(run.lastMoment().instant()) : Optional.empty(),
                opening.predecessor(), opening.rehearsal(), test.sealed(), run.ended() ? verdict : Optional.empty(),
                run.ended() ? run.reason() : "");
    }

    private static Optional<TestReport.Approval> approval(Fact.Opened opening) {
        return opening.approval().map(each -> new TestReport.Approval(each.preparedBy(), each.approvedBy(), each.instant()));
    }

    private void read(TestEvent event) {
        if (event.body() instanceof Fact fact) {
            people.add(event.actor().toString());
            told(fact);
        } else {
            derived((Derived) event.body());
        }
    }

    private void told(Fact fact) {
        if (fact instanceof Fact.InstrumentNamed named) {
            instruments.put(named.instrument(), new Instrument(Questions.spaced(named.instrument()), named.asset(),
                    named.uncertainty().map(value -> uncertainty(value, named)).orElse(""), named.due().map(Object::toString).orElse("")));
        } else if (fact instanceof Fact.Attached attached) {
            attachments.add(new Attachment(attached.name(), Questions.spaced(attached.check()), attached.digest().hex()));
        }
    }

    private static String uncertainty(Quantity value, Fact.InstrumentNamed named) {
        return Message.PAPER_UNCERTAINTY.text(value.toString(), named.coverage().toPlainString());
    }

    private void derived(Derived derived) {
        if (derived instanceof Derived.StepOpened opened) {
            step = opened.step();
            readings.clear();
        } else if (derived instanceof Derived.CheckDecided decided) {
            int reading = readings.merge(decided.check(), 1, Integer::sum);
            results.add(new Result(Questions.spaced(step), Questions.spaced(decided.check()), EventWords.outcome(decided.outcome()),
                    decided.words(), decided.numbers().map(n -> numbers(n, decided, reading))));
        } else if (derived instanceof Derived.DepartureNoted noted) {
            departures.add(noted.words());
        } else if (derived instanceof Derived.NonconformityNoted noted) {
            nonconformities.add(noted.words());
        }
    }

    private TestReport.Numbers numbers(Derived.Numbers n, Derived.CheckDecided decided, int reading) {
        return new TestReport.Numbers(n.rule(), n.value(), n.limits(), n.uncertainty(), n.margin(),
                JudgedValue.of(run.plan(), step, decided).map(judged -> DecisionProof.of(judged, reading)));
    }
}
