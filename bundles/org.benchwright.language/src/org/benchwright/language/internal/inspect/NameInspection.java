package org.benchwright.language.internal.inspect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.Imports;
import org.benchwright.model.Comparison;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Grid;
import org.benchwright.model.Mark;
import org.benchwright.model.Mode;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.ShownByMode;
import org.benchwright.model.Soak;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.resource.ResourceSet;

/** Names that stand twice among things of one kind, or that differ by letter case only. */
final class NameInspection implements Inspection {

    @Override
    public void file(ProcedureFile file, Remarks remarks) {
        apart(file, ProcedureFile::getFamilies, remarks);
        apart(file, ProcedureFile::getProcedures, remarks);
        apart(file, ProcedureFile::getSharedStages, remarks);
    }

    @Override
    public void family(Family family, Remarks remarks) {
        apart(family, Family::getLamps, Families::lamps, remarks);
        apart(family, Family::getDisplays, Families::displays, remarks);
        apart(family, Family::getModes, Families::modes, remarks);
        apart(family, Family::getKeeps, Families::keptItems, remarks);
        apart(family, Family::getLoadables, Families::loadItems, remarks);
        apart(family, Family::getFaults, Families::faults, remarks);
        apart(family, Family::getOptions, Families::options, remarks);
        describedOnce(family.getModeIndications(), remarks);
    }

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        apart(procedure.getHazards(), remarks);
        apart(procedure.getInstruments(), remarks);
        apart(procedure.getPreconditions(), remarks);
        apart(Stream.concat(procedure.getBlocks().stream(), Procedures.allSteps(procedure).stream()).toList(), remarks);
        apart(Procedures.statements(procedure, Mark.class), remarks);
        procedure.getBlocks().stream().filter(Soak.class::isInstance).map(Soak.class::cast)
                .forEach(soak -> apart(soak.getConditions(), remarks));
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        step(step, remarks);
    }

    /** What one step measures, derives and compares. */
    static void step(Step step, Remarks remarks) {
        apart(Procedures.values(step), remarks);
        apart(Procedures.statements(step, Comparison.class).toList(), remarks);
        Procedures.statements(step, Grid.class).forEach(grid -> apart(values(grid), remarks));
    }

    private static List<Named> values(Grid grid) {
        return Stream.concat(grid.getAxes().stream().map(Named.class::cast), Stream.ofNullable(grid.getReading()))
                .map(Named.class::cast).toList();
    }

    /** What a family declares under a name that one it is like uses takes its place; under nearly that name it is a second one. */
    private static void apart(Family family, Function<Family, List<? extends Named>> own, Function<Family, List<? extends Named>> all,
            Remarks remarks) {
        List<? extends Named> declared = own.apply(family);
        apart(declared, remarks);
        Written.thing(family.getBase()).ifPresent(base -> declared.stream().filter(each -> each.getName() != null)
                .forEach(each -> all.apply(base).stream().filter(inherited -> folded(inherited).equals(folded(each))
                        && !inherited.getName().equals(each.getName())).findFirst().ifPresent(inherited -> tell(each, inherited, remarks))));
    }

    /** A mode that one family describes twice: only one of them would count. */
    private static void describedOnce(List<ShownByMode> described, Remarks remarks) {
        Set<Mode> seen = new HashSet<>();
        described.stream().filter(each -> Written.thing(each.getMode()).isPresent() && !seen.add(each.getMode()))
                .forEach(each -> remarks.on(each, Literals.SHOWN_BY_MODE__MODE, RemarkCode.DUPLICATE_NAME, each.getMode().getName(), ""));
    }

    /** Remarks on those in the file, whichever file of its folder holds the first of that name. */
    private static void apart(ProcedureFile file, Function<ProcedureFile, List<? extends Named>> part, Remarks remarks) {
        Map<String, List<Named>> alike = new HashMap<>();
        part.apply(file).stream().filter(each -> each.getName() != null).forEach(each -> alike.put(folded(each), new ArrayList<>()));
        if (alike.isEmpty()) {
            return;
        }
        // A folder may hold a thousand files: what has another name is passed by quickly.
        for (ProcedureFile each : beside(file)) {
            for (Named named : part.apply(each)) {
                List<Named> found = named.getName() == null ? null : alike.get(folded(named));
                if (found != null && inFolderOf(file, each)) {
                    found.add(named);
                }
            }
        }
        alike.values().stream().filter(found -> found.size() > 1).forEach(found -> found.stream()
                .filter(each -> each.eContainer() == file).forEach(each -> tell(each, other(each, found), remarks)));
    }

    /** All files that were read together with one, itself included. */
    private static List<ProcedureFile> beside(ProcedureFile file) {
        ResourceSet set = file.eResource() == null ? null : file.eResource().getResourceSet();
        if (set == null) {
            return List.of(file);
        }
        List<ProcedureFile> files = new ArrayList<>();
        List.copyOf(set.getResources()).forEach(resource -> Imports.content(resource).ifPresent(files::add));
        return files;
    }

    private static boolean inFolderOf(ProcedureFile file, ProcedureFile other) {
        return other == file || Imports.folder(other.eResource().getURI()).equals(Imports.folder(file.eResource().getURI()));
    }

    private static Named other(Named one, List<Named> alike) {
        List<Named> others = alike.stream().filter(each -> each != one).toList();
        return others.stream().filter(each -> each.getName().equals(one.getName())).findFirst().orElse(others.get(0));
    }

    static void apart(List<? extends Named> named, Remarks remarks) {
        Map<String, Named> first = new HashMap<>();
        for (Named each : named) {
            if (each.getName() != null) {
                Named earlier = first.putIfAbsent(folded(each), each);
                if (earlier != null) {
                    tell(each, earlier, remarks);
                }
            }
        }
    }

    private static void tell(Named one, Named other, Remarks remarks) {
        if (one.getName().equals(other.getName())) {
            remarks.on(one, RemarkCode.DUPLICATE_NAME, one.getName(), isBeside(one, other) ? "" : remarks.where(other, one));
        } else {
            remarks.on(one, RemarkCode.CASE_ONLY_DIFFERENCE, one.getName(), other.getName());
        }
    }

    /** In one step everybody sees both. What is said there must not tell of lines, which move. */
    private static boolean isBeside(Named one, Named other) {
        Optional<Step> step = Procedures.around(one.eContainer(), Step.class);
        return step.isPresent() && step.equals(Procedures.around(other.eContainer(), Step.class));
    }

    private static String folded(Named named) {
        return named.getName().toLowerCase(Locale.ROOT);
    }
}
