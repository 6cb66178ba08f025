package org.benchwright.language.scoping;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;

import org.benchwright.language.internal.Imports;
import org.benchwright.model.Argument;
import org.benchwright.model.Block;
import org.benchwright.model.CarryOut;
import org.benchwright.model.Derive;
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
import org.benchwright.model.SharedStage;
import org.benchwright.model.Step;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.resource.EObjectDescription;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.scoping.IGlobalScopeProvider;
import org.eclipse.xtext.scoping.IScope;
import org.eclipse.xtext.scoping.impl.MapBasedScope;
import org.eclipse.xtext.util.IResourceScopeCache;

import com.google.inject.Inject;
import com.google.inject.Provider;

/**
 * Names are per kind. Families, procedures and shared stages are visible from every file of the folder and from files that import
 * theirs; what a family declares is visible in the family, in those like it, and in procedures and shared stages for it;
 * everything else in its procedure or shared stage.
 */
public class ProcedureScopeProvider extends AbstractProcedureScopeProvider {

    /** Kinds whose names are the same everywhere in what they belong to. */
    private static final Set<Integer> OF_THE_WHOLE = Set.of(ProcedurePackage.LAMP, ProcedurePackage.DISPLAY, ProcedurePackage.MODE,
            ProcedurePackage.KEPT_ITEM, ProcedurePackage.FAULT, ProcedurePackage.FITTED_OPTION, ProcedurePackage.HAZARD,
            ProcedurePackage.INSTRUMENT, ProcedurePackage.MARK, ProcedurePackage.DESTINATION);

    @Inject
    private IGlobalScopeProvider files;

    /** Such names are gathered once for each text that is parsed, not once for each reference: two thousand steps have many. */
    @Inject
    private IResourceScopeCache gathered;

    @Override
    public IScope getScope(EObject context, EReference reference) {
        EClass kind = reference.getEReferenceType();
        if (kind == ProcedurePackage.Literals.FAMILY || kind == ProcedurePackage.Literals.PROCEDURE
                || kind == ProcedurePackage.Literals.SHARED_STAGE) {
            Set<URI> folders = Imports.folders(context.eResource());
            return scopeFor(ofFile(context, kind), files.getScope(context.eResource(), reference,
                    there -> folders.contains(Imports.folder(there.getEObjectURI().trimFragment()))));
        }
        if (kind == ProcedurePackage.Literals.VALUE && Procedures.around(context, Derive.class).isPresent()) {
            return scopeFor(measured(context), once(context, kind, () -> ofBody(context, ProcedureScopeProvider::values)));
        }
        return OF_THE_WHOLE.contains(kind.getClassifierID()) && reference != ProcedurePackage.Literals.RETEST__REPEATS
                ? once(context, kind, () -> candidates(context, reference, kind))
                : scopeFor(candidates(context, reference, kind), IScope.NULLSCOPE);
    }

    private IScope once(EObject context, EClass kind, Supplier<List<? extends Named>> names) {
        Provider<IScope> gathering = () -> scopeFor(names.get(), IScope.NULLSCOPE);
        return whole(context, kind).map(whole -> gathered.get(List.of(whole, kind), context.eResource(), gathering))
                .orElseGet(gathering::get);
    }

    /** What the names of a kind belong to, seen from a place. */
    private static Optional<EObject> whole(EObject context, EClass kind) {
        Optional<EObject> makeSafe = kind == ProcedurePackage.Literals.DESTINATION
                ? Procedures.around(context, MakeSafe.class).map(EObject.class::cast) : Optional.empty();
        return makeSafe.or(() -> Procedures.around(context, SharedStage.class)).or(() -> Procedures.around(context, Family.class))
                .or(() -> Procedures.around(context, Procedure.class));
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
            case ProcedurePackage.FITTED_OPTION -> ofFamily(context, Families::options);
            case ProcedurePackage.PARAMETER -> parameters(context);
            case ProcedurePackage.HAZARD -> ofShared(context, SharedStage::getHazards).orElseGet(() -> ofProcedure(context, Procedure::getHazards));
            case ProcedurePackage.INSTRUMENT -> ofShared(context, SharedStage::getInstruments)
                    .orElseGet(() -> ofProcedure(context, Procedure::getInstruments));
            case ProcedurePackage.MARK -> ofBody(context, steps -> statements(steps, Mark.class));
            case ProcedurePackage.DESTINATION -> destinations(context);
            case ProcedurePackage.VALUE -> values(context);
            default -> List.of();
        };
    }

    private static List<? extends Named> destinations(EObject context) {
        Optional<SharedStage> shared = Procedures.around(context, SharedStage.class);
        if (shared.isPresent()) {
            return shared.get().getSteps();
        }
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

    private static List<? extends Named> parameters(EObject context) {
        if (context instanceof Argument argument && argument.eContainer() instanceof CarryOut carryOut) {
            return carryOut.getShared() == null ? List.of() : carryOut.getShared().getParameters();
        }
        return Procedures.around(context, SharedStage.class).<List<? extends Named>>map(SharedStage::getParameters).orElse(List.of());
    }

    /** What the own step measures and derives. */
    private static List<? extends Named> measured(EObject context) {
        return Procedures.around(context, Step.class).<List<? extends Named>>map(step -> values(List.of(step))).orElse(List.of());
    }

    private static List<Named> values(List<Step> steps) {
        return steps.stream().flatMap(step -> Procedures.values(step).stream()).map(Named.class::cast).toList();
    }

    private static <T extends Named> List<T> statements(List<Step> steps, Class<T> kind) {
        return steps.stream().flatMap(step -> Procedures.statements(step, kind)).toList();
    }

    /** Something of all steps of the procedure or shared stage around. */
    private static List<? extends Named> ofBody(EObject context, Function<List<Step>, List<? extends Named>> part) {
        return Procedures.around(context, SharedStage.class).<List<? extends Named>>map(shared -> part.apply(shared.getSteps()))
                .orElseGet(() -> ofProcedure(context, procedure -> part.apply(Procedures.allSteps(procedure))));
    }

    private static Optional<List<? extends Named>> ofShared(EObject context, Function<SharedStage, List<? extends Named>> part) {
        return Procedures.around(context, SharedStage.class).map(part);
    }

    private static List<? extends Named> ofFamily(EObject context, Function<Family, List<? extends Named>> part) {
        Optional<Family> family = Procedures.around(context, Family.class)
                .or(() -> Procedures.around(context, SharedStage.class).map(SharedStage::getFamily))
                .or(() -> Procedures.around(context, Procedure.class).map(Procedure::getFamily));
        return family.<List<? extends Named>>map(part::apply).orElse(List.of());
    }

    private static List<? extends Named> ofProcedure(EObject context, Function<Procedure, List<? extends Named>> part) {
        return Procedures.around(context, Procedure.class).<List<? extends Named>>map(part::apply).orElse(List.of());
    }

    private static List<? extends Named> ofFile(EObject context, EClass kind) {
        return Procedures.around(context, ProcedureFile.class).<List<? extends Named>>map(
                file -> kind == ProcedurePackage.Literals.FAMILY ? file.getFamilies()
                        : kind == ProcedurePackage.Literals.PROCEDURE ? file.getProcedures() : file.getSharedStages()).orElse(List.of());
    }

    /** Of several with one name the first counts. */
    private static IScope scopeFor(List<? extends Named> elements, IScope outer) {
        List<IEObjectDescription> named = new ArrayList<>();
        elements.forEach(element -> Procedures.name(element)
                .ifPresent(name -> named.add(EObjectDescription.create(QualifiedName.create(name), element))));
        return MapBasedScope.createScope(outer, named);
    }
}
