package org.benchwright.language.internal.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Step;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.language.proof.FlowWay.Kind;

/**
 * All ways out of a place: one for each check that can fail, each event and each answer, and the straight one. A release that is given is
 * no way of its own, for the test goes on as if the check had passed; one that is refused ends the test undecided. Interruptions, voided
 * checks and measuring again are none either.
 */
final class WaysOut {

    private final Map<String, Boolean> known;
    private final boolean makingSafe;
    private final List<WayOut> ways = new ArrayList<>();
    private final Map<String, Boolean> answered = new HashMap<>();
    private Optional<Boolean> switched = Optional.empty();
    private boolean begun;

    private WaysOut(Map<String, Boolean> known, boolean makingSafe) {
        this.known = known;
        this.makingSafe = makingSafe;
    }

    /** Those of the beginning: each precondition that is not met, or all of them met. */
    static List<WayOut> ofBeginning(Plan plan) {
        WaysOut all = new WaysOut(Map.of(), false);
        for (Precondition each : plan.preconditions()) {
            all.add(Kind.UNMET, each.name(), ProofText.of("why.unmet", each.statement()), new Lead.Moved(plan.preconditionUnmet()));
        }
        all.add(Kind.NEXT, "", "", new Lead.Onward());
        return all.ways;
    }

    /**
     * Those of a step.
     *
     * @param known      answers that were given earlier and hold for the whole test
     * @param makingSafe whether it is a step of make safe, which nothing ends
     */
    static List<WayOut> of(Step step, Map<String, Boolean> known, boolean makingSafe) {
        WaysOut all = new WaysOut(known, makingSafe);
        for (Action action : step.actions()) {
            if (!all.goesOn(action)) {
                return all.ways;
            }
        }
        all.add(Kind.NEXT, "", "", new Lead.Onward());
        return all.ways;
    }

    /**
     * Those of a soak.
     *
     * @param stopStays whether a stop of the family stays; otherwise no look witnesses anything, and only a watched soak can end as it should
     */
    static List<WayOut> of(SoakStage soak, boolean stopStays) {
        WaysOut all = new WaysOut(Map.of(), false);
        all.begun = true;
        all.add(Kind.STOPPED, "look", ProofText.of("why.stopped", soak.keep().source()), new Lead.Moved(soak.stopped()));
        if (!soak.conditions().isEmpty()) {
            all.add(Kind.STOPPED_OUTSIDE, "look", ProofText.of("why.stoppedOutside"), new Lead.Moved(soak.stoppedOutside()));
        }
        soak.gap().ifPresent(gap -> all.add(Kind.GAP, "look", ProofText.of(stopStays ? "why.power" : "why.gap"),
                stopStays ? new Lead.PowerLost(soak.onPowerLost()) : new Lead.Moved(gap.instead())));
        if (stopStays || soak.watch().isPresent()) {
            all.add(Kind.NEXT, "", "", new Lead.Onward());
        }
        if (!stopStays) {
            String reason = ProofText.of("why.unwitnessed");
            all.add(Kind.UNWITNESSED, "look", reason, new Lead.Undecided(reason));
        }
        return all.ways;
    }

    private void add(Kind kind, String check, String words, Lead lead) {
        ways.add(new WayOut(kind, check, words, lead, switched, answered, begun));
    }

    /** @return false if nothing behind this action is reached */
    private boolean goesOn(Action action) {
        if (action instanceof Action.Branch branch) {
            return branch(branch);
        }
        if (action instanceof Action.End end) {
            if (makingSafe) {
                return true; // a release takes the place of the end
            }
            add(Kind.AS_WRITTEN, end.id(), "", new Lead.Moved(end.conclusion()));
            return false;
        }
        if (action instanceof Action.Go go) {
            add(Kind.AS_WRITTEN, go.id(), "", new Lead.Moved(go.to()));
            return false;
        }
        begun = true;
        if (action instanceof Action.Energise) {
            switched = Optional.of(true);
        } else if (action instanceof Action.Isolate) {
            switched = Optional.of(false);
        }
        failures(action);
        return true;
    }

    private boolean branch(Action.Branch branch) {
        Kind kind = branch.to().isPresent() ? Kind.BRANCH : Kind.PASSED_OVER;
        Lead lead = branch.to().<Lead>map(Lead.Moved::new).orElseGet(Lead.Onward::new);
        String words = ProofText.of(branch.when() ? "why.yes" : "why.no", branch.statement());
        Optional<Boolean> before = branch.remembered().map(key -> answered.getOrDefault(key, known.get(key)));
        if (before.isPresent()) {
            if (before.get() == branch.when()) {
                add(kind, branch.id(), words, lead);
            }
            return before.get() != branch.when();
        }
        branch.remembered().ifPresent(key -> answered.put(key, branch.when()));
        add(kind, branch.id(), words, lead);
        branch.remembered().ifPresent(key -> answered.put(key, !branch.when()));
        return true;
    }

    private void failures(Action action) {
        if (action instanceof Action.Expect e) {
            failed(e.id(), ProofText.of("why.expect", e.id()), e.failed());
        } else if (action instanceof Action.Measure m) {
            decided(m.id(), m.rule(), m.rejected(), m.undecided());
        } else if (action instanceof Action.Grid g) {
            decided(g.id(), g.rule(), g.rejected(), g.undecided());
        } else if (action instanceof Action.Derive d) {
            decided(d.id(), d.rule(), d.rejected(), d.undecided());
        } else if (action instanceof Action.Confirm c) {
            failed(c.id(), ProofText.of("why.confirm", c.statement()), c.failed());
        } else if (action instanceof Action.Compare c) {
            failed(c.id(), ProofText.of("why.compare", c.left(), c.right()), c.failed());
        } else if (action instanceof Action.Choose c) {
            failed(c.id(), ProofText.of("why.choose." + c.verb().name()), c.failed());
        } else if (action instanceof Action.Release r) {
            failed(r.id(), ProofText.of("why.release", r.statement()), r.failed());
        }
    }

    private void decided(String id, DecisionRule rule, Move rejected, Move undecided) {
        failed(id, ProofText.of("why.rejected", id), rejected);
        if (rule == DecisionRule.GUARDED_BOTH_WAYS) {
            taken(Kind.UNDECIDED, id, ProofText.of("why.undecided", id), undecided);
        }
    }

    private void failed(String id, String words, Move move) {
        taken(Kind.FAILED, id, words, move);
    }

    /** Nobody leaves make safe but by its steps: where it would end, a release is asked for until it is given. */
    private void taken(Kind kind, String id, String words, Move move) {
        boolean ends = move instanceof Move.Conclude || move instanceof Move.ReleaseBy;
        if (!(makingSafe && ends)) {
            add(kind, id, words, new Lead.Moved(move));
        }
    }
}
