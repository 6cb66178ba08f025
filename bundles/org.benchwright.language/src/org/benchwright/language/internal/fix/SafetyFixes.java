package org.benchwright.language.internal.fix;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
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
