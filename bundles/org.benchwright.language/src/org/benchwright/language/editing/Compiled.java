package org.benchwright.language.editing;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

import org.benchwright.engine.plan.Plan;
import org.benchwright.language.Remark;

/**
 * A procedure of a text as it stands, compiled.
 *
 * @param name     its name in the language
 * @param plan     what will be carried out; empty as long as there are errors
 * @param errors   what has to be mended first, in whatever file: those of the families and shared stages that it uses count as its own
 * @param passages where its parts stand, shared stages in their own files: by {@code family}, {@code hazard.NAME}, {@code instrument.NAME},
 *                 {@code precondition.NAME}, {@code stage.NAME} and {@code step.NAME}, all with the names that they have in the plan
 */
public record Compiled(String name, Optional<Plan> plan, List<Remark> errors, Map<String, Passage> passages) {
    public Compiled {
        Objects.requireNonNull(name);
        Objects.requireNonNull(plan);
        errors = List.copyOf(errors);
        passages = Map.copyOf(passages);
    }
}
