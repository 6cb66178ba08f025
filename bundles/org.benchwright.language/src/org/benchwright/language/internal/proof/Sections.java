package org.benchwright.language.internal.proof;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.SheetTable;
import org.benchwright.core.Verdict;
import org.benchwright.language.proof.FaultProof;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowPlace.Mark;
import org.benchwright.language.proof.PathCount;
import org.benchwright.language.proof.ProcedureProof;
import org.benchwright.language.proof.ProofPath;
import org.benchwright.language.proof.ProofSection;
import org.benchwright.language.proof.ProofSection.Subject;
import org.benchwright.language.proof.TimeSpan;
import org.benchwright.language.proof.Times;
import org.benchwright.language.proof.Times.Range;

/** What a procedure proves, in words and tables: the one text for every face. */
public final class Sections {

    private final ProcedureProof proof;

    private Sections(ProcedureProof proof) {
        this.proof = proof;
    }

    /** One section for each subject. */
    public static List<ProofSection> of(ProcedureProof proof, Optional<Duration> whatIf) {
        Sections all = new Sections(proof);
        return List.of(all.flow(), all.times(), all.faults(), RiskSection.of(proof.measurements()), SoakSection.of(proof.soaks(), whatIf));
    }

    private static ProofSection section(Subject subject, List<String> sentences, List<String> assumptions, List<SheetTable> tables) {
        return new ProofSection(subject, ProofText.of("title." + subject), sentences, assumptions, tables, List.of());
    }

    static SheetTable table(String name, List<List<String>> rows) {
        return new SheetTable(name, Arrays.asList(ProofText.of("table." + name).split("\\|")), rows);
    }

    static List<String> texts(String... keys) {
        return Stream.of(keys).map(ProofText::of).toList();
    }

    // ---- flow

    private ProofSection flow() {
        List<String> sentences = new ArrayList<>();
        PathCount paths = proof.paths();
        long steps = count(FlowPlace.Kind.STEP);
        long soaks = count(FlowPlace.Kind.SOAK);
        if (paths.count().isPresent()) {
            sentences.add(ProofText.of("flow.paths", steps, soaks, Numbers.count(paths.count().get()), endings(paths)));
            paths.more().filter(more -> more.signum() > 0)
                    .ifPresent(more -> sentences.add(ProofText.of("flow.more", paths.listed().size(), Numbers.count(more))));
        } else {
            sentences.add(ProofText.of(paths.endless() ? "flow.endless" : "flow.tooMany", steps, soaks));
        }
        named(Mark.UNREACHABLE).ifPresent(names -> sentences.add(ProofText.of("flow.unreachable", names)));
        if (proof.flow().places().stream().anyMatch(place -> place.marks().contains(Mark.ENDS_LIVE))) {
            sentences.add(ProofText.of("flow.endsLive"));
        }
        List<List<String>> rows = IntStream.range(0, paths.listed().size()).mapToObj(i -> row(i + 1, paths.listed().get(i))).toList();
        return section(Subject.FLOW, sentences, texts("assume.path", "assume.noPath"), rows.isEmpty() ? List.of() : List.of(table("paths", rows)));
    }

    private long count(FlowPlace.Kind kind) {
        return proof.flow().places().stream().filter(place -> place.kind() == kind).count();
    }

    private Optional<String> named(Mark mark) {
        String names = proof.flow().places().stream().filter(place -> place.marks().contains(mark)).map(FlowPlace::name)
                .collect(Collectors.joining(", "));
        return Optional.of(names).filter(text -> !text.isEmpty());
    }

    private static String endings(PathCount paths) {
        return Stream.of(Verdict.values()).filter(paths.ending()::containsKey)
                .map(verdict -> Numbers.count(paths.ending().get(verdict)) + " " + verdict.word())
                .collect(Collectors.joining(", "));
    }

    private static List<String> row(int number, ProofPath path) {
        String turns = path.turns().stream().map(turn -> (turn.place().isEmpty() ? "" : turn.place() + ": ") + turn.words())
                .collect(Collectors.joining("; "));
        return List.of(number + ". " + (turns.isEmpty() ? ProofText.of("flow.straight") : turns), path.verdict().word(), path.reason());
    }

    // ---- times

    private ProofSection times() {
        Times times = proof.times();
        List<String> sentences = new ArrayList<>();
        if (times.typical().isPresent()) {
            sentences.add(ProofText.of("times.typical", words(times.typical().get().bench()), words(times.typical().get().attended()),
                    times.verdict().map(Verdict::word).orElse("")));
        } else {
            sentences.add(ProofText.of("times.unknown"));
        }
        if (!times.without().isEmpty()) {
            sentences.add(ProofText.of("times.without", times.without().size(), String.join(", ", times.without())));
        }
        times.stages().stream().filter(stage -> stage.atMost().filter(most -> stage.time().bench().compareTo(most) > 0).isPresent())
                .forEach(stage -> sentences.add(ProofText.of("times.tooLong", stage.title())));
        List<List<String>> verdicts = new ArrayList<>();
        Stream.of(Verdict.values()).filter(times.byVerdict()::containsKey)
                .forEach(verdict -> verdicts.add(row(verdict.word(), times.byVerdict().get(verdict))));
        times.overall().ifPresent(all -> verdicts.add(row(ProofText.of("times.any"), all)));
        List<List<String>> stages = times.stages().stream().map(Sections::row).toList();
        List<SheetTable> tables = verdicts.isEmpty() ? List.of(table("stages", stages)) : List.of(table("times", verdicts), table("stages", stages));
        return section(Subject.TIMES, sentences, texts("assume.takes", "assume.notCounted", "assume.soakTime"), tables);
    }

    private static List<String> row(String name, Range range) {
        return List.of(name, between(range.shortest().bench(), range.longest().bench()),
                between(range.shortest().attended(), range.longest().attended()));
    }

    private static String between(Duration shortest, Duration longest) {
        return shortest.equals(longest) ? words(shortest) : words(shortest) + " .. " + words(longest);
    }

    private static List<String> row(Times.StageTime stage) {
        TimeSpan time = stage.time();
        return List.of(stage.title(), words(time.bench()), words(time.attended()), stage.atMost().map(Durations::words).orElse(""),
                stage.looks() == 0 ? "" : Integer.toString(stage.looks()));
    }

    private static String words(Duration time) {
        return Durations.words(time);
    }

    // ---- faults

    private ProofSection faults() {
        List<FaultProof> faults = proof.faults();
        String hidden = faults.stream().filter(fault -> fault.reveals().isEmpty()).map(FaultProof::code).collect(Collectors.joining(", "));
        String sentence = faults.isEmpty() ? ProofText.of("faults.none")
                : hidden.isEmpty() ? ProofText.of("faults.all", faults.size()) : ProofText.of("faults.hidden", faults.size(), hidden);
        List<List<String>> rows = faults.stream().map(fault -> List.of(fault.code() + " " + fault.title(), reveals(fault))).toList();
        return section(Subject.FAULTS, List.of(sentence), texts("assume.reveals"), rows.isEmpty() ? List.of() : List.of(table("faults", rows)));
    }

    private static String reveals(FaultProof fault) {
        if (fault.reveals().isEmpty()) {
            return ProofText.of("faults.nowhere");
        }
        Map<String, List<FaultProof.Reveal>> byPlace = fault.reveals().stream()
                .collect(Collectors.groupingBy(FaultProof.Reveal::place, LinkedHashMap::new, Collectors.toList()));
        return byPlace.entrySet().stream().map(each -> each.getKey() + " (" + why(each.getValue()) + ")").collect(Collectors.joining("; "));
    }

    private static String why(List<FaultProof.Reveal> reveals) {
        Stream<String> why = reveals.stream()
                .map(each -> each.how() == FaultProof.How.DECLARED ? ProofText.of("faults.declared") : ProofText.of("faults.shown", each.words()));
        Stream<String> late = reveals.get(0).onDemand() ? Stream.of(ProofText.of("faults.onDemand")) : Stream.empty();
        return Stream.concat(why, late).collect(Collectors.joining(", "));
    }
}
