package org.benchwright.language.internal.inspect;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Amount;
import org.benchwright.model.Argument;
import org.benchwright.model.CarryOut;
import org.benchwright.model.Families;
import org.benchwright.model.Parameter;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;

/** Shared stages use what they ask for, and get a value for all of it where they are carried out. */
final class SharedInspection implements Inspection {

    @Override
    public void file(ProcedureFile file, Remarks remarks) {
        file.getSharedStages().forEach(shared -> shared(shared, remarks));
        for (Procedure procedure : file.getProcedures()) {
            procedure.getBlocks().stream().filter(CarryOut.class::isInstance).map(CarryOut.class::cast)
                    .forEach(carryOut -> carryOut(carryOut, procedure, remarks));
        }
    }

    private static void shared(SharedStage shared, Remarks remarks) {
        if (shared.getSteps().isEmpty()) {
            remarks.on(shared, RemarkCode.STAGE_WITHOUT_STEPS);
        }
        NameInspection.apart(shared.getParameters(), remarks);
        NameInspection.apart(shared.getHazards(), remarks);
        NameInspection.apart(shared.getInstruments(), remarks);
        NameInspection.apart(shared.getSteps(), remarks);
        for (Step step : shared.getSteps()) {
            NameInspection.step(step, remarks);
        }
        Set<EObject> used = Used.in(shared);
        shared.getParameters().stream().filter(parameter -> !used.contains(parameter))
                .forEach(parameter -> remarks.on(parameter, RemarkCode.UNUSED_PARAMETER, String.valueOf(parameter.getName())));
    }

    private static void carryOut(CarryOut carryOut, Procedure procedure, Remarks remarks) {
        Optional<SharedStage> found = Written.thing(carryOut.getShared());
        if (found.isEmpty()) {
            return;
        }
        SharedStage shared = found.get();
        boolean other = Written.thing(procedure.getFamily()).flatMap(own -> Written.thing(shared.getFamily())
                .map(meant -> !Families.isLike(own, meant))).orElse(false);
        if (other) {
            remarks.on(carryOut, Literals.CARRY_OUT__SHARED, RemarkCode.SHARED_FOR_OTHER_FAMILY, shared.getName());
        }
        arguments(carryOut, shared, remarks);
    }

    private static void arguments(CarryOut carryOut, SharedStage shared, Remarks remarks) {
        Set<Parameter> given = new HashSet<>();
        for (Argument argument : carryOut.getArguments()) {
            Written.thing(argument.getParameter()).ifPresent(parameter -> {
                if (!given.add(parameter)) {
                    remarks.on(argument, Literals.ARGUMENT__PARAMETER, RemarkCode.LISTED_TWICE, parameter.getName());
                }
                sameDimension(argument, parameter, remarks);
                Optional.ofNullable(argument.getValue()).ifPresent(value -> roles(parameter, shared)
                        .forEach(role -> AmountInspection.time(value, role, remarks)));
            });
        }
        List<Parameter> missing = shared.getParameters().stream().filter(parameter -> parameter.getName() != null && !given.contains(parameter))
                .toList();
        missing.forEach(parameter -> remarks.on(carryOut, Literals.CARRY_OUT__SHARED, RemarkCode.ARGUMENT_MISSING, parameter.getName()));
    }

    /** What a parameter is in the places where it stands for an amount. */
    private static Set<EReference> roles(Parameter parameter, SharedStage shared) {
        Set<EReference> roles = new HashSet<>();
        shared.eAllContents().forEachRemaining(each -> {
            if (each instanceof Amount amount && amount.getParameter() == parameter) {
                roles.add(amount.eContainmentFeature());
            }
        });
        return roles;
    }

    private static void sameDimension(Argument argument, Parameter parameter, Remarks remarks) {
        if (argument.getValue() == null) {
            return;
        }
        Optional<UnitOfMeasure> unit = Written.unit(argument.getValue().getUnit());
        Optional<UnitOfMeasure> expected = Written.unit(parameter.getUnit());
        if (unit.isPresent() && expected.isPresent() && !unit.get().sameDimension(expected.get())) {
            remarks.on(argument, Literals.ARGUMENT__VALUE, RemarkCode.WRONG_DIMENSION, unit.get().word(), expected.get().word());
        }
    }
}
