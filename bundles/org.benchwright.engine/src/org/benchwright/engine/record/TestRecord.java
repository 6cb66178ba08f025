package org.benchwright.engine.record;

import static org.benchwright.engine.internal.Refusals.require;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.internal.Words;

/**
 * A sealed record as what was signed about it makes it. Whoever signs is asked here whether they may; whoever verifies asks again.
 * Immutable.
 *
 * <p>The order is: departures and nonconformities decided, reviewed where it was drawn or somebody does, handed over, then superseded or recalled; void from
 * anywhere. An amendment of what was handed over asks for another hand-over, with the next certificate, and makes an earlier review stale.
 */
public final class TestRecord {

    private final String test;
    private final TestRun run;
    private final List<Deviation> deviations;
    /** Who had a hand in the test or its procedure's revision, by id in small letters. */
    private final Set<String> hands;
    private final boolean drawn;
    private final Signed signed;

    /**
     * What was signed so far.
     *
     * @param decisions  by the number of the deviation
     * @param repeat     whether a decision asks for the test to be repeated
     * @param amendments in order
     * @param review     the latest review, as long as nothing was amended since
     * @param handOvers  in order
     * @param end        how the record ended, if it did
     * @param withdrawn  attachments that were withdrawn, by the numbers of the events that attached them
     */
    private record Signed(Map<Long, Decision> decisions, boolean repeat, List<Amendment> amendments, Optional<RecordEvent> review,
            List<RecordEvent> handOvers, Optional<End> end, Map<Long, RecordEvent> withdrawn) {
        private static final Signed NOTHING = new Signed(Map.of(), false, List.of(), Optional.empty(), List.of(), Optional.empty(), Map.of());
    }

    /** How a record ended, and by which event. */
    private record End(Standing standing, RecordEvent event) {
    }

    private TestRecord(String test, TestRun run, List<Deviation> deviations, Set<String> hands, boolean drawn, Signed signed) {
        this.test = test;
        this.run = run;
        this.deviations = deviations;
        this.hands = hands;
        this.drawn = drawn;
        this.signed = signed;
    }

    /**
     * A record that was just sealed.
     *
     * @param test  its id
     * @param run   the test, which has ended
     * @param drawn whether it was drawn for a review, without which nothing goes out
     */
    public static TestRecord sealed(String test, TestRun run, boolean drawn) {
        return new TestRecord(test, run, Deviation.of(run), hands(run), drawn && !run.rehearsal(), Signed.NOTHING);
    }

    private static Set<String> hands(TestRun run) {
        Set<String> hands = new HashSet<>();
        for (TestEvent event : run.events()) {
            if (event.actor().role() != Role.BENCH && event.actor().role() != Role.WATCH) {
                hands.add(key(event.actor().id()));
            }
            if (event.body() instanceof Fact.Released released) {
                hands.add(key(released.by().id()));
            }
        }
        run.opening().approval().ifPresent(approval -> hands.add(key(approval.preparedBy())));
        return Set.copyOf(hands);
    }

    private static String key(String person) {
        return person.toLowerCase(Locale.ROOT);
    }

    // ---- what is taken

    /**
     * The record with one more event.
     *
     * @throws RefusedException if the record does not take it where it stands, the person may not, or the fact does not fit
     */
    public TestRecord with(RecordEvent event) throws RefusedException {
        Deed deed = Deed.of(event.fact());
        Optional<String> objection = objection(deed);
        if (objection.isPresent()) {
            throw new RefusedException(objection.get());
        }
        person(deed, event);
        return new TestRecord(test, run, deviations, hands, drawn, after(event));
    }

    /** Why nobody may do that to the record as it stands; empty if it is taken from those who may. */
    public Optional<String> objection(Deed deed) {
        if (deed == Deed.WITHDRAW) {
            // What is personal goes whatever becomes of the record.
            return attachments().stream().allMatch(each -> signed.withdrawn().containsKey(each.event())) ? words("record.noAttachment") : Optional.empty();
        } else if (run.rehearsal()) {
            return words("record.rehearsal");
        } else if (standing() == Standing.VOID) {
            return words("record.void", end().map(RecordEvent::person).orElse(""));
        } else if (deed == Deed.VOID) {
            return Optional.empty();
        } else if (standing().over()) {
            return words("record.over", standing().word());
        }
        return switch (deed) {
            case DECIDE_DEPARTURE -> nothing(false).or(() -> waiting().stream().noneMatch(each -> !each.nonconformity()) ? words("record.allDecided")
                    : Optional.empty());
            case DECIDE_NONCONFORMITY -> nothing(true).or(() -> waiting().stream().noneMatch(Deviation::nonconformity) ? words("record.allDecided")
                    : Optional.empty());
            case REVIEW -> unready().or(() -> signed.review().map(event -> Words.of("record.reviewed", event.person())))
                    .or(this::handedOverAlready);
            case HAND_OVER -> unready().or(this::unreviewed).or(this::unfit).or(this::handedOverAlready);
            case SUPERSEDE -> signed.handOvers().isEmpty() && standing() != Standing.TO_REPEAT ? words("record.notOut") : Optional.empty();
            case RECALL -> signed.handOvers().isEmpty() ? words("record.notHandedOver") : Optional.empty();
            default -> Optional.empty();
        };
    }

    private Optional<String> nothing(boolean nonconformity) {
        return deviations.stream().anyMatch(each -> each.nonconformity() == nonconformity) ? Optional.empty()
                : words(nonconformity ? "record.noNonconformity" : "record.noDeparture");
    }

    /** What has to come first before somebody reviews it or hands it over. */
    private Optional<String> unready() {
        List<Deviation> waiting = waiting();
        if (!waiting.isEmpty()) {
            Deviation first = waiting.get(0);
            return words(first.nonconformity() ? "record.waitsNonconformity" : "record.waitsDeparture", waiting.size(), first.sequence(), first.words());
        }
        return standing() == Standing.TO_REPEAT ? words("record.toRepeat") : Optional.empty();
    }

    private Optional<String> unreviewed() {
        return drawn && signed.review().isEmpty() ? words("record.reviewDue") : Optional.empty();
    }

    private Optional<String> unfit() {
        return signed.review().filter(event -> !((RecordFact.Reviewed) event.fact()).agreed())
                .map(event -> Words.of("record.objected", event.person(), ((RecordFact.Reviewed) event.fact()).remark())).or(this::doubt);
    }

    private Optional<String> handedOverAlready() {
        return handedOver().filter(fact -> fact.certificate().equals(number())).map(fact -> Words.of("record.handedOver", fact.certificate(), fact.to()));
    }

    private static Optional<String> words(String key, Object... arguments) {
        return Optional.of(Words.of(key, arguments));
    }

    // ---- who may

    private void person(Deed deed, RecordEvent event) throws RefusedException {
        deed.requireRole(event.person(), event.roles());
        if (deed.independent()) {
            boolean preparer = run.opening().approval().map(each -> key(each.preparedBy()).equals(key(event.person()))).orElse(false);
            require(!preparer, "record.prepared", event.person());
            require(!hands.contains(key(event.person())), "record.acted", event.person());
            require(signed.amendments().stream().noneMatch(each -> key(each.person()).equals(key(event.person()))), "record.amender", event.person());
        }
        if (deed == Deed.REVIEW) {
            require(signed.decisions().values().stream().noneMatch(each -> key(each.person()).equals(key(event.person()))), "record.decider",
                    event.person());
        }
    }

    // ---- what follows

    private Signed after(RecordEvent event) throws RefusedException {
        RecordFact fact = event.fact();
        if (fact instanceof RecordFact.DepartureDecided decided) {
            return departure(decided(event, decided.departure(), false, decided.decision().word(), decided.reason()), decided.decision(), event);
        } else if (fact instanceof RecordFact.NonconformityDecided decided) {
            return decided(event, decided.nonconformity(), true, decided.disposition().word(), decided.reason());
        } else if (fact instanceof RecordFact.Amended amended) {
            return amended(event, amended);
        } else if (fact instanceof RecordFact.Reviewed reviewed) {
            require(reviewed.agreed() || !reviewed.remark().isBlank(), "record.remark");
            return new Signed(signed.decisions(), signed.repeat(), signed.amendments(), Optional.of(event), signed.handOvers(), Optional.empty(), signed.withdrawn());
        } else if (fact instanceof RecordFact.HandedOver over) {
            require(!over.to().isBlank(), "record.toWhom");
            require(over.certificate().equals(number()), "record.otherNumber", over.certificate(), number());
            List<RecordEvent> handOvers = new ArrayList<>(signed.handOvers());
            handOvers.add(event);
            return new Signed(signed.decisions(), signed.repeat(), signed.amendments(), signed.review(), List.copyOf(handOvers), Optional.empty(),
                    signed.withdrawn());
        } else if (fact instanceof RecordFact.Superseded superseded) {
            require(!superseded.by().isBlank() && !superseded.by().equals(test), "record.byItself");
            return ended(Standing.SUPERSEDED, event, superseded.reason());
        } else if (fact instanceof RecordFact.Recalled recalled) {
            return ended(Standing.RECALLED, event, recalled.reason());
        } else if (fact instanceof RecordFact.AttachmentWithdrawn withdrawn) {
            return withdrawn(event, withdrawn);
        }
        return ended(Standing.VOID, event, ((RecordFact.Voided) fact).reason());
    }

    private Signed decided(RecordEvent event, long deviation, boolean nonconformity, String word, String reason) throws RefusedException {
        require(deviations.stream().anyMatch(each -> each.sequence() == deviation && each.nonconformity() == nonconformity),
                nonconformity ? "record.noSuchNonconformity" : "record.noSuchDeparture", deviation);
        Optional<Decision> before = decision(deviation);
        require(before.isEmpty(), "record.decided", deviation, before.map(Decision::person).orElse(""), before.map(Decision::word).orElse(""));
        require(!reason.isBlank(), "record.reason");
        Map<Long, Decision> decisions = new LinkedHashMap<>(signed.decisions());
        decisions.put(deviation, new Decision(event.sequence(), word, reason, event.person(), event.instant()));
        // What was reviewed stays reviewed: nothing is reviewed before all is decided.
        return new Signed(Map.copyOf(decisions), signed.repeat(), signed.amendments(), signed.review(), signed.handOvers(), Optional.empty(),
                signed.withdrawn());
    }

    private static Signed departure(Signed next, DepartureDecision decision, RecordEvent event) {
        Optional<End> end = decision == DepartureDecision.VOID ? Optional.of(new End(Standing.VOID, event)) : Optional.empty();
        return new Signed(next.decisions(), next.repeat() || decision == DepartureDecision.REPEAT, next.amendments(), next.review(), next.handOvers(),
                end, next.withdrawn());
    }

    private Signed amended(RecordEvent event, RecordFact.Amended amended) throws RefusedException {
        require(!amended.reason().isBlank(), "record.reason");
        Map<Long, Fact> corrections = corrections();
        Fact right = Correction.read(run, amended.event(), amended.entry());
        Fact now = corrections.getOrDefault(amended.event(), onRecord(amended.event()));
        require(!right.equals(now), "amend.same", amended.event());
        corrections.put(amended.event(), right);
        List<Amendment> amendments = new ArrayList<>(signed.amendments());
        amendments.add(new Amendment(event.sequence(), amended.event(), amended.entry(), amended.reason(), event.person(), event.instant(),
                Replay.of(run, corrections)));
        return new Signed(signed.decisions(), signed.repeat(), List.copyOf(amendments), Optional.empty(), signed.handOvers(), Optional.empty(),
                signed.withdrawn());
    }

    private Fact onRecord(long sequence) {
        return (Fact) run.events().get((int) (sequence - 1)).body();
    }

    /** What is right by all amendments, by the numbers of the events that they correct. */
    public Map<Long, Fact> corrections() {
        Map<Long, Fact> corrections = new HashMap<>();
        for (Amendment each : signed.amendments()) {
            try {
                corrections.put(each.event(), Correction.read(run, each.event(), each.entry()));
            } catch (RefusedException impossible) {
                throw new IllegalStateException("it was read when it was taken", impossible);
            }
        }
        return corrections;
    }

    private Signed withdrawn(RecordEvent event, RecordFact.AttachmentWithdrawn fact) throws RefusedException {
        Optional<Attachment> found = attachments().stream().filter(each -> each.event() == fact.event()).findFirst();
        require(found.isPresent() && found.get().digest().equals(fact.attachment()), "record.noSuchAttachment", fact.event());
        Optional<RecordEvent> before = Optional.ofNullable(signed.withdrawn().get(fact.event()));
        require(before.isEmpty(), "record.withdrawnBefore", fact.event(), before.map(RecordEvent::person).orElse(""));
        require(!fact.reason().isBlank(), "record.reason");
        Map<Long, RecordEvent> withdrawn = new HashMap<>(signed.withdrawn());
        // The same picture may have been attached twice; its bytes are kept once.
        attachments().stream().filter(each -> each.digest().equals(fact.attachment())).forEach(each -> withdrawn.put(each.event(), event));
        return new Signed(signed.decisions(), signed.repeat(), signed.amendments(), signed.review(), signed.handOvers(), signed.end(),
                Map.copyOf(withdrawn));
    }

    private Signed ended(Standing standing, RecordEvent event, String reason) throws RefusedException {
        require(!reason.isBlank(), "record.reason");
        return new Signed(signed.decisions(), signed.repeat(), signed.amendments(), signed.review(), signed.handOvers(),
                Optional.of(new End(standing, event)), signed.withdrawn());
    }

    // ---- how it stands

    /** The test. */
    public TestRun run() {
        return run;
    }

    /** Where it stands. */
    public Standing standing() {
        if (signed.end().isPresent()) {
            return signed.end().get().standing();
        } else if (!waiting().isEmpty()) {
            return Standing.WAITING;
        } else if (signed.repeat()) {
            return Standing.TO_REPEAT;
        } else if (!signed.handOvers().isEmpty()) {
            return Standing.HANDED_OVER;
        }
        return signed.review().map(event -> ((RecordFact.Reviewed) event.fact()).agreed() ? Standing.REVIEWED : Standing.OBJECTED)
                .orElse(drawn ? Standing.REVIEW_DUE : deviations().isEmpty() ? Standing.SEALED : Standing.DECIDED);
    }

    /** Whether the sampling plan drew it for a review. */
    public boolean drawn() {
        return drawn;
    }

    /** Whether it can and has to be reviewed next, before the unit goes out or goes out again. */
    public boolean reviewDue() {
        return !standing().over() && unready().isEmpty() && unreviewed().isPresent();
    }

    /** Departures and nonconformities of the test, in order; none of a rehearsal. */
    public List<Deviation> deviations() {
        return run.rehearsal() ? List.of() : deviations;
    }

    /** Those that are not decided yet. */
    public List<Deviation> waiting() {
        return deviations().stream().filter(each -> !signed.decisions().containsKey(each.sequence())).toList();
    }

    /** What was decided on the deviation that was noted by the event of that number. */
    public Optional<Decision> decision(long deviation) {
        return Optional.ofNullable(signed.decisions().get(deviation));
    }

    /**
     * A file that was attached.
     *
     * @param event  number of the event that attached it
     * @param digest of its content
     * @param name   its name
     */
    public record Attachment(long event, Digest digest, String name) {
    }

    /** All that were attached, in order; those with an entry that was struck too, since the ledger keeps their bytes all the same. */
    public List<Attachment> attachments() {
        return run.events().stream().filter(event -> event.body() instanceof Observation.Attached).map(event -> {
            Observation.Attached attached = (Observation.Attached) event.body();
            return new Attachment(event.sequence(), attached.digest(), attached.name());
        }).toList();
    }

    /** By which event the attachment was withdrawn that the event of that number attached. */
    public Optional<RecordEvent> withdrawn(long event) {
        return Optional.ofNullable(signed.withdrawn().get(event));
    }

    /** All amendments, in order. */
    public List<Amendment> amendments() {
        return signed.amendments();
    }

    /** The latest hand-over. */
    public Optional<RecordFact.HandedOver> handedOver() {
        return signed.handOvers().stream().map(event -> (RecordFact.HandedOver) event.fact()).reduce((before, after) -> after);
    }

    /** By which event it was superseded, recalled or voided. */
    public Optional<RecordEvent> end() {
        return signed.end().map(End::event);
    }

    /** The number of the certificate now, from 1: an amendment makes the next one. */
    public int issue() {
        return 1 + signed.amendments().size();
    }

    /** What stands on the certificate now. */
    public String number() {
        return test + "/" + issue();
    }

    /** Why what was amended leaves the verdict in doubt; empty if it does not. */
    public Optional<String> doubt() {
        if (signed.amendments().isEmpty()) {
            return Optional.empty();
        }
        Replay replay = signed.amendments().get(signed.amendments().size() - 1).replay();
        Optional<Verdict> now = replay.verdict();
        if (now.equals(run.verdict())) {
            return replay.beside().isEmpty() ? Optional.empty() : words("record.otherwise", String.join(" ", replay.beside()));
        }
        return words(now.isPresent() ? "record.otherVerdict" : "record.noVerdict", run.verdict().map(Verdict::word).orElse(""),
                now.map(Verdict::word).orElse(""));
    }

    /** Why there is no certificate as things stand, and what to do; empty if there is one. */
    public Optional<String> uncertified() {
        return run.rehearsal() ? words("record.rehearsal") : unready().or(this::unreviewed).or(this::unfit);
    }
}
