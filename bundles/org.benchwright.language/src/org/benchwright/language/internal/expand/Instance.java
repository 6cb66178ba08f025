package org.benchwright.language.internal.expand;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.model.Amount;
import org.benchwright.model.Argument;
import org.benchwright.model.CarryOut;
import org.benchwright.model.Limits;
import org.benchwright.model.Named;
import org.benchwright.model.Parameter;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFactory;
import org.benchwright.model.Procedures;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Stage;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;

/** One shared stage as one procedure carries it out: a plain stage with the values of the parameters put in. */
final class Instance {

    private final CarryOut carryOut;
    private final Procedure procedure;
    private final SharedStage shared;
    private final EcoreUtil.Copier copier = new EcoreUtil.Copier();

    Instance(CarryOut carryOut, Procedure procedure) {
        this.carryOut = carryOut;
        this.procedure = procedure;
        shared = carryOut.getShared();
    }

    /** What each part of the stage was copied from. */
    Map<EObject, EObject> origins() {
        Map<EObject, EObject> origins = new IdentityHashMap<>();
        copier.forEach((from, to) -> origins.put(to, from));
        return origins;
    }

    Stage stage() {
        Stage stage = ProcedureFactory.eINSTANCE.createStage();
        stage.setName(Procedures.name(carryOut).orElse(null));
        stage.setLabel(shared.getLabel());
        stage.getSteps().addAll(copier.copyAll(shared.getSteps()));
        Optional.ofNullable(shared.getOtherwise()).ifPresent(otherwise -> stage.setOtherwise((org.benchwright.model.Outcome) copier.copy(otherwise)));
        declared(shared.getHazards(), procedure.getHazards());
        declared(shared.getInstruments(), procedure.getInstruments());
        copier.copyReferences();
        new OwnThings(procedure).put(stage);
        stage.eAllContents().forEachRemaining(this::values);
        if (carryOut.getName() != null) {
            stage.getSteps().forEach(this::rename);
        }
        return stage;
    }

    /** What the shared stage declares, unless the procedure declares something of that name itself. */
    @SuppressWarnings("unchecked") // a copy is of the class of what it is copied from
    private <T extends Named> void declared(List<T> ofShared, List<T> ofProcedure) {
        for (T each : ofShared) {
            Optional<T> own = ofProcedure.stream().filter(mine -> each.getName() != null && each.getName().equals(mine.getName())).findFirst();
            if (own.isPresent()) {
                copier.put(each, own.get());
            } else {
                ofProcedure.add((T) copier.copy(each));
            }
        }
    }

    /** Two uses of one shared stage have steps of the same names; their plan needs them apart. */
    private void rename(Step step) {
        if (step.getName() != null) {
            step.setName(carryOut.getName() + "_" + step.getName());
        }
    }

    private void values(EObject each) {
        if (each instanceof Amount amount && amount.getParameter() != null) {
            value(amount.getParameter()).ifPresent(given -> {
                amount.setValue(given.getValue());
                amount.setUnit(given.getUnit());
                amount.setParameter(null);
            });
        } else if (each instanceof Limits limits) {
            limits(limits);
        }
    }

    private void limits(Limits limits) {
        value(limits.getNominalOf()).ifPresent(given -> {
            limits.setNominal(given.getValue());
            limits.setUnit(given.getUnit());
            limits.setNominalOf(null);
        });
        value(limits.getUpperOf()).ifPresent(given -> {
            limits.setUpper(given.getValue());
            limits.setUnit(given.getUnit());
            limits.setUpperOf(null);
        });
        value(limits.getLowerOf()).ifPresent(given -> {
            limits.setLower(given.getValue());
            if (limits.getUnit() == null) {
                limits.setUnit(given.getUnit());
            } else {
                limits.setLowerUnit(given.getUnit());
            }
            limits.setLowerOf(null);
        });
    }

    private Optional<Amount> value(Parameter parameter) {
        if (parameter == null || parameter.getName() == null) {
            return Optional.empty();
        }
        return carryOut.getArguments().stream()
                .filter(argument -> argument.getParameter() != null && parameter.getName().equals(argument.getParameter().getName()))
                .map(Argument::getValue).filter(given -> given != null && given.getValue() != null).findFirst();
    }
}
