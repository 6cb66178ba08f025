package org.benchwright.language.tests;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.core.SerialMask;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.language.Checked;
import org.benchwright.language.internal.compile.PlanCompiler;

/** Texts without errors as plans that the engine begins: what the language lets pass can be carried out. */
final class SoundPlans {

    static final Actor TECHNICIAN = new Actor("QN", Role.TECHNICIAN);
    static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private SoundPlans() {
    }

    /** The plans of all procedures that were checked; empty where there are errors. */
    static List<Plan> of(Checked checked) {
        List<Plan> plans = checked.hasErrors() ? List.of()
                : checked.procedures().stream().map(PlanCompiler::compile).toList();
        plans.forEach(SoundPlans::begin);
        return plans;
    }

    /** The events with which a test of a plan begins. */
    static List<TestEvent> begin(Plan plan) {
        Digest text = Digest.of("text".getBytes(StandardCharsets.UTF_8));
        String serial = plan.family().serialMask().map(SerialMask::example).orElse("4711");
        Fact.Opened opening = new Fact.Opened(serial, plan.family()
                .name(), plan.name(), plan.revision(), text, text, "bench 1", "0.1.0",
                false, Optional.empty(), Optional.empty());
        try {
            return TestRun.open(plan, opening, TECHNICIAN, new Moment(START, 1, Duration.ZERO));
        } catch (RefusedException refused) {
            throw new AssertionError(plan.name() + ": " + refused.getMessage(), refused);
        }
    }
}
