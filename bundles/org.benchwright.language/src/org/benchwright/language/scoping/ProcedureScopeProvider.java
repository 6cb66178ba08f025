package org.benchwright.language.scoping;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.model.Block;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Grid;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Mark;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage;
import org.benchwright.model.Procedures;
import org.benchwright.model.Retest;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.scoping.IGlobalScopeProvider;
import org.eclipse.xtext.scoping.IScope;
import org.eclipse.xtext.scoping.Scopes;

import com.google.inject.Inject;

/**
 * Names are per kind. Families and procedures are visible from every file of the folder; what a family declares is
 * visible in the family, in those like it, and in procedures that apply to it; everything else in its procedure.
 */
public class ProcedureScopeProvider extends AbstractProcedureScopeProvider {

    @Inject
    private IGlobalScopeProvider files;

    @Override
    public IScope getScope(EObject context, EReference reference) {
        EClass kind = reference.getEReferenceType();
        if (kind == ProcedurePackage.Literals.FAMILY || kind == ProcedurePackage.Literals.PROCEDURE) {
            return scopeFor(ofFile(context, kind), files.getScope(context.eResource(), reference, null));
        }
        return scopeFor(candidates(context, reference, kind), IScope.NULLSCOPE);
    }

    private static List<? extends Named> candidates(EObject context, EReference reference, EClass kind) {
        if (reference == ProcedurePackage.Literals.RETEST__REPEATS) {
            return context instanceof Retest retest && retest.getProcedure() != null ? retest.getProcedure().getBlocks() : List.of();
        }
        return switch (kind.getClassifierID()) {
            case ProcedurePackage.LAMP -> ofFamily(context, Families::lamps);
            case ProcedurePackage.DISPLAY -> ofFamily(context, Families::displays);
            case ProcedurePackage.MODE -> ofFamily(context, Families::modes);
            case ProcedurePackage.KEPT_ITEM -> ofFamily(context, Families::keptItems);
            case ProcedurePackage.FAULT -> ofFamily(context, Families::faults);
            case ProcedurePackage.HAZARD -> ofProcedure(context, Procedure::getHazards);
            case ProcedurePackage.INSTRUMENT -> ofProcedure(context, Procedure::getInstruments);
            case ProcedurePackage.MARK -> ofProcedure(context, procedure -> Procedures.statements(procedure, Mark.class));
            case ProcedurePackage.DESTINATION -> destinations(context);
            case ProcedurePackage.VALUE -> values(context);
            default -> List.of();
        };
    }

    private static List<? extends Named> destinations(EObject context) {
        Optional<MakeSafe> makeSafe = Procedures.around(context, MakeSafe.class);
        if (makeSafe.isPresent()) {
            return makeSafe.get().getSteps();
        }
        return ofProcedure(context, procedure -> {
            List<Named> places = new ArrayList<>(procedure.getBlocks());
            for (Block block : procedure.getBlocks()) {
                places.addAll(Procedures.steps(block));
            }
            return places;
        });
    }

    private static List<? extends Named> values(EObject context) {
        return Procedures.around(context, Grid.class).map(grid -> {
            List<Named> values = new ArrayList<>(grid.getAxes());
            if (grid.getReading() != null) {
                values.add(grid.getReading());
            }
            return values;
        }).orElse(new ArrayList<>());
    }

    private static List<? extends Named> ofFamily(EObject context, Function<Family, List<? extends Named>> part) {
        Optional<Family> family = Procedures.around(context, Family.class)
                .or(() -> Procedures.around(context, Procedure.class).map(Procedure::getFamily));
        return family.<List<? extends Named>>map(part::apply).orElse(List.of());
    }

    private static List<? extends Named> ofProcedure(EObject context, Function<Procedure, List<? extends Named>> part) {
        return Procedures.around(context, Procedure.class).<List<? extends Named>>map(part::apply).orElse(List.of());
    }

    private static List<? extends Named> ofFile(EObject context, EClass kind) {
        return Procedures.around(context, ProcedureFile.class).<List<? extends Named>>map(
                file -> kind == ProcedurePackage.Literals.FAMILY ? file.getFamilies() : file.getProcedures()).orElse(List.of());
    }

    private static IScope scopeFor(List<? extends Named> elements, IScope outer) {
        List<? extends Named> named = elements.stream().filter(element -> element.getName() != null).toList();
        return Scopes.scopeFor(named, element -> QualifiedName.create(((Named) element).getName()), outer);
    }
}
