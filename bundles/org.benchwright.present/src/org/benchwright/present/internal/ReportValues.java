package org.benchwright.present.internal;

import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.JudgedValue;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.record.Deviation;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.present.RecordStanding;
import org.benchwright.present.TimelineLine;
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

    /** After such an event another certificate takes the place of the one before; what is decided comes before there is any. */
    private static final String CHANGING = "amended";

    private final TestRun run;
    private final Set<Derived.CheckDecided> amended;
    private final Set<Digest> withdrawn;
    private final List<Result> results = new ArrayList<>();
    private final Map<String, Instrument> instruments = new LinkedHashMap<>();
    private final List<Attachment> attachments = new ArrayList<>();
    private final Set<String> people = new LinkedHashSet<>();
    /** How often each check of the open step was decided. */
    private final Map<String, Integer> readings = new HashMap<>();
    private String step = "";

    private ReportValues(TestRun run, Set<Derived.CheckDecided> amended, Set<Digest> withdrawn) {
        this.run = run;
        this.withdrawn = withdrawn;
        this.amended = amended;
        run.events().forEach(this::kept);
        run.holding().forEach(this::holds);
    }

    /**
     * The values of a test.
     *
     * @param notes what was signed after its seal
     * @param proof text of the proof of its last event, if there is one
     */
    public static TestReport of(KeptTest test, List<SignedNote> notes, Optional<String> proof) {
        return new ReportValues(test.run(), amended(test), withdrawn(test)).report(test, notes, proof);
    }

    /** Digests of attachments whose bytes were taken away. */
    private static Set<Digest> withdrawn(KeptTest test) {
        return test.record().stream().flatMap(record -> record.attachments().stream().filter(each -> record.withdrawn(each.event()).isPresent()))
                .map(TestRecord.Attachment::digest).collect(Collectors.toSet());
    }

    /** Decisions that would have been others with what is right by the amendments. */
    private static Set<Derived.CheckDecided> amended(KeptTest test) {
        Set<Derived.CheckDecided> amended = new HashSet<>();
        test.record().ifPresent(record -> record.amendments().forEach(each -> each.replay().changes()
                .forEach(change -> change.then().ifPresent(amended::add))));
        return amended;
    }

    private TestReport report(KeptTest test, List<SignedNote> notes, Optional<String> proof) {
        List<Amendment> amendments = notes.stream().map(note -> new Amendment(note.sequence(), note.instant(), note.kind(), note.by(),
                note.trusted() ? note.words() : Message.TOLD_LOST_KEY.text(note.words()), CHANGING.equals(note.kind()))).toList();
        return TestReport.of(heading(test), results, SoakProof.of(run), List.copyOf(instruments.values()), deviations(test, false),
                deviations(test, true), attachments, amendments, story(Timeline.every(run, Times.inPapers())), proof, standing(test, notes),
                new TestReport.Shown(story(Timeline.of(run, Times.inPapers())), SoakCourse.of(run)));
    }

    private static List<StoryLine> story(List<TimelineLine> lines) {
        return lines.stream().map(line -> new StoryLine(line.sequence(), line.instant(), line.who(), line.words(), line.struck())).toList();
    }

    private Heading heading(KeptTest test) {
        Fact.Opened opening = run.opening();
        List<TestEvent> events = run.events();
        Optional<String> verdict = run.verdict().or(run::wouldBe).map(Verdict::word);
        return new Heading(test.id(), opening.serial(), run.plan().family().title(), run.plan().title(), opening.revision(),
                run.plan().purpose(), opening.text().hex(), approval(opening), opening.station(), opening.software(), List.copyOf(people),
                events.get(0).moment().instant(), run.ended() ? Optional.of(run.lastMoment().instant()) : Optional.empty(),
                opening.predecessor(), opening.rehearsal(), test.sealed(), run.ended() ? verdict : Optional.empty(),
                run.ended() ? run.reason() : "", arrival(opening), repairs(opening));
    }

    private static Optional<TestReport.Arrival> arrival(Fact.Opened opening) {
        return opening.receipt().map(each -> new TestReport.Arrival(Receipt.name(each.receipt()), each.instant(), each.order(), each.owner(),
                each.plate() == Plate.READ ? "" : each.plate().word(), each.complaint(), each.damage(), each.preserve()));
    }

    private static List<String> repairs(Fact.Opened opening) {
        return opening.mended().stream().flatMap(all -> all.repairs().stream()).map(each -> HouseWords.STORY_REPAIRED.text(
                RepairWords.day(each.instant()), each.by(), opening.predecessor().orElse(""), RepairWords.of(each.what(), each.parts()))).toList();
    }

    /** Departures or nonconformities, each with what was decided about it. */
    private static List<String> deviations(KeptTest test, boolean nonconformities) {
        return Deviation.of(test.run()).stream().filter(each -> each.nonconformity() == nonconformities).map(each -> words(test, each)).toList();
    }

    private static String words(KeptTest test, Deviation deviation) {
        if (test.record().isEmpty() || test.run().rehearsal()) {
            return deviation.words();
        }
        return test.record().get().decision(deviation.sequence()).map(each -> Message.DECIDED_WORDS.text(Standings.unstopped(deviation.words()), each.word(), each.person(),
                each.instant().truncatedTo(ChronoUnit.SECONDS), each.reason())).orElseGet(() -> Message.DECIDED_WAITS.text(Standings.unstopped(deviation.words())));
    }

    private static TestReport.Standing standing(KeptTest test, List<SignedNote> notes) {
        if (test.record().isEmpty() || test.run().rehearsal()) {
            return TestReport.Standing.NONE;
        }
        TestRecord record = test.record().get();
        // No wall time and no zone of a reader stands on paper.
        RecordStanding standing = Standings.of(test.id(), record, notes, test.run().lastMoment().instant(), ZoneOffset.UTC);
        return new TestReport.Standing(standing.words(), standing.end().map(words -> new TestReport.End(record.standing().word(), words)),
                standing.uncertified(), standing.corrections().stream().map(each -> new TestReport.Correction(each.event(), each.first(), each.right(),
                        each.reason(), each.by(), each.decided())).toList());
    }

    private static Optional<TestReport.Approval> approval(Fact.Opened opening) {
        return opening.approval().map(each -> new TestReport.Approval(each.preparedBy(), each.approvedBy(), each.instant()));
    }

    /** Who worked on it, but for the bench and a watch, who are nobody; and files: the ledger keeps those with a struck entry too. */
    private void kept(TestEvent event) {
        if (event.body() instanceof Fact && event.actor().role() == Role.TECHNICIAN) {
            people.add(event.actor().toString());
        }
        if (event.body() instanceof Observation.Attached attached) {
            String name = withdrawn.contains(attached.digest()) ? Message.PAPER_WITHDRAWN.text(attached.name()) : attached.name();
            attachments.add(new Attachment(name, Questions.spaced(attached.check()), attached.digest().hex()));
        }
    }

    private void holds(TestEvent event) {
        if (event.body() instanceof Observation.InstrumentNamed named) {
            instruments.put(named.instrument(), new Instrument(Questions.spaced(named.instrument()), named.asset(),
                    named.uncertainty().map(value -> uncertainty(value, named)).orElse(""), named.due().map(Object::toString).orElse("")));
        } else if (event.body() instanceof Derived derived) {
            derived(derived);
        }
    }

    private static String uncertainty(Quantity value, Observation.InstrumentNamed named) {
        return Message.PAPER_UNCERTAINTY.text(value.toString(), named.coverage().toPlainString());
    }

    private void derived(Derived derived) {
        if (derived instanceof Derived.StepOpened opened) {
            step = opened.step();
            readings.clear();
        } else if (derived instanceof Derived.CheckDecided decided) {
            int reading = readings.merge(decided.check(), 1, Integer::sum);
            String what = Questions.spaced(decided.check());
            results.add(new Result(Questions.spaced(step), amended.contains(decided) ? Message.RESULT_AMENDED.text(what) : what, outcome(decided),
                    decided.words(), decided.numbers().map(n -> numbers(n, decided, reading))));
        }
    }

    /** A question by which a test goes one way or the other judges nothing, whatever the answer. */
    private String outcome(Derived.CheckDecided decided) {
        boolean asked = run.plan().steps().filter(each -> each.name().equals(step)).flatMap(each -> each.actions().stream())
                .anyMatch(action -> action instanceof Action.Branch && action.id().equals(decided.check()));
        return asked ? Message.OUTCOME_ONLY_ASKED.text() : EventWords.outcome(decided.outcome());
    }

    private TestReport.Numbers numbers(Derived.Numbers n, Derived.CheckDecided decided, int reading) {
        return new TestReport.Numbers(n.rule(), n.value(), n.limits(), n.uncertainty(), n.margin(),
                JudgedValue.of(run.plan(), step, decided).map(judged -> DecisionProof.of(judged, reading)));
    }
}
