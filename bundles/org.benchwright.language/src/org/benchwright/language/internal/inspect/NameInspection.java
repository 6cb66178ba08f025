package org.benchwright.language.internal.inspect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

import org.benchwright.language.RemarkCode;
import org.benchwright.language.internal.Imports;
import org.benchwright.model.Comparison;
import org.benchwright.model.Derive;
import org.benchwright.model.Family;
import org.benchwright.model.Grid;
import org.benchwright.model.Mark;
import org.benchwright.model.Measurement;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.Procedures;
import org.benchwright.model.Soak;
import org.benchwright.model.Step;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.resource.ResourceSet;

/** Names that stand twice among things of one kind, or that differ by letter case only. */
final class NameInspection implements Inspection {

    @Override
    public void file(ProcedureFile file, Remarks remarks) {
        List<ProcedureFile> folder = folder(file);
        List<Named> families = new ArrayList<>();
        List<Named> procedures = new ArrayList<>();
        List<Named> shared = new ArrayList<>();
        for (ProcedureFile each : folder) {
            families.addAll(each.getFamilies());
            procedures.addAll(each.getProcedures());
            shared.addAll(each.getSharedStages());
        }
        apart(families, file, remarks);
        apart(procedures, file, remarks);
        apart(shared, file, remarks);
    }

    @Override
    public void family(Family family, Remarks remarks) {
        apart(family.getLamps(), remarks);
        apart(family.getDisplays(), remarks);
        apart(family.getModes(), remarks);
        apart(family.getKeeps(), remarks);
        apart(family.getLoadables(), remarks);
        apart(family.getFaults(), remarks);
        apart(family.getOptions(), remarks);
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
        apart(step.getStatements().stream().filter(each -> each instanceof Measurement || each instanceof Derive).map(Named.class::cast).toList(),
                remarks);
        apart(Procedures.statements(step, Comparison.class).toList(), remarks);
        Procedures.statements(step, Grid.class).forEach(grid -> apart(values(grid), remarks));
    }

    private static List<Named> values(Grid grid) {
        return Stream.concat(grid.getAxes().stream().map(Named.class::cast), Stream.ofNullable(grid.getReading()))
                .map(Named.class::cast).toList();
    }

    private static List<ProcedureFile> folder(ProcedureFile file) {
        Resource resource = file.eResource();
        ResourceSet set = resource == null ? null : resource.getResourceSet();
        if (set == null) {
            return List.of(file);
        }
        URI own = Imports.folder(resource.getURI());
        return List.copyOf(set.getResources()).stream().filter(each -> own.equals(Imports.folder(each.getURI()))).flatMap(each -> each.getContents().stream())
                .filter(ProcedureFile.class::isInstance).map(ProcedureFile.class::cast).toList();
    }

    /** Remarks on those in the file, whichever file holds the first of that name. */
    private static void apart(List<Named> named, ProcedureFile file, Remarks remarks) {
        Map<String, List<Named>> byName = new HashMap<>();
        named.stream().filter(each -> each.getName() != null)
                .forEach(each -> byName.computeIfAbsent(folded(each), name -> new ArrayList<>()).add(each));
        byName.values().stream().filter(alike -> alike.size() > 1).forEach(alike -> alike.stream()
                .filter(each -> each.eContainer() == file).forEach(each -> tell(each, other(each, alike), remarks)));
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
            remarks.on(one, RemarkCode.DUPLICATE_NAME, one.getName());
        } else {
            remarks.on(one, RemarkCode.CASE_ONLY_DIFFERENCE, one.getName(), other.getName());
        }
    }

    private static String folded(Named named) {
        return named.getName().toLowerCase(Locale.ROOT);
    }
}
