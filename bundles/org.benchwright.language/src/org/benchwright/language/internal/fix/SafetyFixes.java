package org.benchwright.language.internal.fix;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.model.Check;
import org.benchwright.model.Conclude;
import org.benchwright.model.Erase;
import org.benchwright.model.Hazard;
import org.benchwright.model.KeptItem;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.eclipse.xtext.nodemodel.INode;

/** What must not be lost or hurt. */
final class SafetyFixes {

    private SafetyFixes() {
    }

    /** The hazards to people that are declared, each as one that the step shows. */
    static List<Fix> showHazard(Spot spot) {
        Optional<Step> step = spot.around(Step.class);
        List<Hazard> hazards = spot.around(Procedure.class).map(procedure -> List.copyOf(procedure.getHazards())).orElse(List.of());
        if (step.isEmpty()) {
            return List.of();
        }
        return hazards.stream().filter(hazard -> hazard.getSignal() != null && hazard.getSignal().aboutInjury())
                .map(hazard -> new Fix(FixText.ADD_HAZARD.text(hazard.getName()), List.of(shown(spot, step.get(), hazard)))).toList();
    }

    private static Edit shown(Spot spot, Step step, Hazard hazard) {
        List<INode> shown = Spot.nodes(step, Literals.STEP__HAZARDS);
        if (!shown.isEmpty()) {
            return spot.after(shown.get(shown.size() - 1), ", " + hazard.getName());
        }
        Optional<INode> clause = Spot.node(step, Literals.STEP__TAKES).or(() -> Spot.node(step, Literals.STEP__ONLY))
                .or(() -> Spot.node(step, Literals.STEP__TEXT));
        return spot.after(clause.orElseThrow(), " with hazard " + hazard.getName());
    }

    static List<Fix> isolateFirst(Spot spot) {
        return spot.around(Statement.class).map(each -> Spot.one(FixText.ISOLATE, spot.lineBefore(Spot.node(each), "isolates supply")))
                .orElse(List.of());
    }

    /** At the very beginning of make safe. */
    static List<Fix> isolateInMakeSafe(Spot spot) {
        Optional<Step> first = spot.around(Procedure.class).map(Procedure::getMakeSafe).flatMap(makeSafe -> makeSafe.getSteps().stream().findFirst())
                .filter(step -> !step.getStatements().isEmpty());
        return first.map(step -> List.of(
                new Fix(FixText.ISOLATE.text(), List.of(spot.before(Spot.node(step.getStatements().get(0)), "isolates supply "))),
                new Fix(FixText.ISOLATE_IN_STEP.text(), List.of(spot.lineBefore(Spot.node(step),
                        "step switch_off " + FixText.SWITCH_OFF.quoted() + " { isolates supply }"))))).orElse(List.of());
    }

    static List<Fix> releaseFirst(Spot spot) {
        return spot.around(Statement.class).map(each -> Spot.one(FixText.ASK_RELEASE,
                spot.lineBefore(Spot.node(each), "release by supervisor " + FixText.OWNER_AGREES.quoted()))).orElse(List.of());
    }

    static List<Fix> recordFirst(Spot spot) {
        return spot.around(Erase.class).map(each -> Spot.one(FixText.RECORD_FIRST, spot.remarked(),
                spot.lineBefore(Spot.node(each), "enter " + spot.remarked()))).orElse(List.of());
    }

    /** The hazard against which the strap is asked for is not shown in this step; a step of its own may need it. */
    static List<Fix> noStrap(Spot spot) {
        Optional<Step> step = spot.around(Step.class);
        List<INode> hazards = step.map(each -> Spot.nodes(each, Literals.STEP__HAZARDS)).orElse(List.of());
        for (int i = 0; i < hazards.size(); i++) {
            if (hazards.get(i).getOffset() == spot.remark().offset()) {
                int with = spot.file().text().text().lastIndexOf("with", hazards.get(i).getOffset());
                return Spot.one(FixText.NO_STRAP, spot.remarked(), hazards.size() > 1 ? spot.removeItem(hazards, i)
                        : spot.remove(with, hazards.get(i).getEndOffset()));
            }
        }
        return List.of();
    }

    /** In place of an end that would leave the unit as it is; with the same reason, where there is one. */
    static List<Fix> releaseInstead(Spot spot) {
        Optional<Check> check = spot.around(Check.class);
        if (check.isEmpty()) {
            return List.of();
        }
        Object own = check.get().eGet(check.get().eClass().getEStructuralFeature("outcome"));
        if (own instanceof Conclude end) {
            String reason = Spot.node(end, Literals.CONCLUDE__REASON).map(Spot::text).orElse(FixText.NOBODY_TOUCHES.quoted());
            return Spot.one(FixText.ASK_RELEASE_INSTEAD, spot.replace(Spot.node(end), "release by supervisor " + reason));
        }
        return own != null ? List.of()
                : Spot.one(FixText.ASK_RELEASE_INSTEAD,
                        spot.after(Spot.node(check.get()), " or release by supervisor " + FixText.NOBODY_TOUCHES.quoted()));
    }

    /** All protected items that the erasing does not name. */
    static List<Fix> spare(Spot spot) {
        Optional<Erase> erase = spot.around(Erase.class);
        Optional<Procedure> procedure = spot.around(Procedure.class);
        if (erase.isEmpty() || procedure.isEmpty()) {
            return List.of();
        }
        List<KeptItem> named = List.copyOf(erase.get().getItems());
        String missing = procedure.get().getProtections().stream().flatMap(each -> each.getItems().stream()).distinct()
                .filter(item -> !named.contains(item) && !erase.get().getSpared().contains(item)).map(Named::getName)
                .collect(Collectors.joining(", "));
        String clause = (erase.get().getSpared().isEmpty() ? " spare " : ", ") + missing;
        return Spot.one(FixText.INSERT, clause.strip(), spot.after(Spot.node(erase.get()), clause));
    }

    static List<Fix> notSpared(Spot spot) {
        Optional<Erase> erase = spot.around(Erase.class);
        List<INode> spared = erase.map(each -> Spot.nodes(each, Literals.ERASE__SPARED)).orElse(List.of());
        for (int i = 0; i < spared.size() && spared.size() > 1; i++) {
            if (Spot.text(spared.get(i)).equals(spot.remarked())) {
                return Spot.one(FixText.REMOVE, spot.remarked(), spot.removeItem(spared, i));
            }
        }
        return List.of();
    }
}
