package org.benchwright.engine.tests;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What may be done to a sealed record, told slowly: it keeps the list of all that was done and looks through it anew each time. It knows
 * nothing of the engine's record.
 */
final class ObviousRecord {

    /**
     * Something that somebody does.
     *
     * @param person who
     * @param what   departure, nonconformity, amend, review, hand over, supersede, recall, void
     * @param detail which event, which decision, yes or no, which number
     */
    record Done(String person, String what, String detail, String decision) {
    }

    private static final Map<String, Set<String>> MAY = Map.of("departure", Set.of("AUDITOR"), "nonconformity", Set.of("AUDITOR"), "review",
            Set.of("AUDITOR"), "amend", Set.of("TECHNICIAN", "ENGINEER", "SUPERVISOR", "AUDITOR"), "hand over",
            Set.of("TECHNICIAN", "SUPERVISOR", "AUDITOR"), "supersede", Set.of("SUPERVISOR", "AUDITOR"), "recall", Set.of("SUPERVISOR", "AUDITOR"),
            "void", Set.of("SUPERVISOR", "AUDITOR"));

    private final Set<String> departures;
    private final Set<String> nonconformities;
    private final Set<String> hands;
    private final Map<String, Set<String>> roles;
    private final boolean forReview;
    private final List<Done> history = new ArrayList<>();

    ObviousRecord(Set<String> departures, Set<String> nonconformities, Set<String> hands, Map<String, Set<String>> roles, boolean forReview) {
        this.departures = departures;
        this.nonconformities = nonconformities;
        this.hands = hands;
        this.roles = roles;
        this.forReview = forReview;
    }

    /** Does it if it may be done. */
    boolean takes(Done done) {
        boolean takes = may(done);
        if (takes) {
            history.add(done);
        }
        return takes;
    }

    private boolean may(Done done) {
        Set<String> able = new HashSet<>(roles.get(done.person()));
        able.retainAll(MAY.get(done.what()));
        boolean voided = any("void") || history.stream().anyMatch(each -> each.what().equals("departure") && each.decision().equals("VOID"));
        if (able.isEmpty() || voided) {
            return false;
        } else if (done.what().equals("void")) {
            return true;
        } else if (any("recall") || any("supersede")) {
            return false;
        }
        boolean apart = !hands.contains(done.person())
                && history.stream().noneMatch(each -> each.what().equals("amend") && each.person().equals(done.person()));
        Set<String> open = new HashSet<>(departures);
        open.addAll(nonconformities);
        history.stream().filter(each -> each.what().equals("departure") || each.what().equals("nonconformity"))
                .forEach(each -> open.remove(each.detail()));
        boolean repeat = history.stream().anyMatch(each -> each.what().equals("departure") && each.decision().equals("REPEAT"));
        boolean ready = open.isEmpty() && !repeat;
        switch (done.what()) {
            case "departure":
                return apart && departures.contains(done.detail()) && open.contains(done.detail());
            case "nonconformity":
                return apart && nonconformities.contains(done.detail()) && open.contains(done.detail());
            case "amend":
                return !done.detail().equals(lastAmended());
            case "review":
                return apart && ready && sinceAmended("review").isEmpty() && sinceAmended("hand over").isEmpty()
                        && history.stream().noneMatch(each -> (each.what().equals("departure") || each.what().equals("nonconformity"))
                                && each.person().equals(done.person()));
            case "hand over":
                return ready && sinceAmended("hand over").isEmpty() && done.detail().equals(String.valueOf(1 + count("amend")))
                        && sinceAmended("review").stream().noneMatch(each -> each.detail().equals("no"))
                        && !(forReview && sinceAmended("review").isEmpty());
            case "supersede":
                return any("hand over") || open.isEmpty() && repeat;
            default:
                return any("hand over");
        }
    }

    private String lastAmended() {
        return history.stream().filter(each -> each.what().equals("amend")).map(Done::detail).reduce("none", (a, b) -> b);
    }

    private boolean any(String what) {
        return count(what) > 0;
    }

    private int count(String what) {
        return (int) history.stream().filter(each -> each.what().equals(what)).count();
    }

    /** What was done of that kind behind the last amendment. */
    private List<Done> sinceAmended(String what) {
        List<Done> found = new ArrayList<>();
        for (Done done : history) {
            if (done.what().equals("amend")) {
                found.clear();
            } else if (done.what().equals(what)) {
                found.add(done);
            }
        }
        return found;
    }

    /** How often each kind was done. */
    Map<String, Integer> counts() {
        Map<String, Integer> counts = new HashMap<>();
        history.forEach(done -> counts.merge(done.what(), 1, Integer::sum));
        return counts;
    }
}
