package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.language.editing.ContentsKind;
import org.benchwright.language.editing.ContentsRow;
import org.benchwright.model.Block;
import org.benchwright.model.Family;
import org.benchwright.model.MakeSafe;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Soak;
import org.benchwright.model.Step;
import org.benchwright.model.WatchedBy;
import org.benchwright.model.WatchedPoint;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** The rows of a text's contents. */
final class Outlines {

    private final Function<Step, Optional<ContentsRow>> steps;

    /** @param steps gives the rows of steps */
    Outlines(Function<Step, Optional<ContentsRow>> steps) {
        this.steps = steps;
    }

    /** The row of a step that stands in a text. */
    static ContentsRow step(Step step) {
        return row(ContentsKind.STEP, step, List.of());
    }

    List<ContentsRow> of(ProcedureFile file) {
        List<ContentsRow> rows = new ArrayList<>();
        file.getFamilies().forEach(family -> rows.add(family(family)));
        file.getProcedures().forEach(procedure -> rows.add(procedure(procedure)));
        file.getSharedStages().forEach(shared -> rows.add(shared(shared)));
        rows.sort((one, other) -> Integer.compare(one.offset(), other.offset()));
        return rows;
    }

    private static ContentsRow family(Family family) {
        List<ContentsRow> parts = new ArrayList<>();
        parts.addAll(rows(ContentsKind.LAMP, family.getLamps()));
        parts.addAll(rows(ContentsKind.DISPLAY, family.getDisplays()));
        parts.addAll(rows(ContentsKind.MODE, family.getModes()));
        parts.addAll(rows(ContentsKind.ITEM, family.getKeeps()));
        parts.addAll(rows(ContentsKind.ITEM, family.getLoadables()));
        parts.addAll(rows(ContentsKind.ITEM, family.getOptions()));
        if (family.getWatched() != null) {
            group(EditingText.POINTS, points(family.getWatched()), parts);
        }
        parts.addAll(rows(ContentsKind.FAULT, family.getFaults()));
        return row(ContentsKind.FAMILY, family, parts);
    }

    private ContentsRow procedure(Procedure procedure) {
        List<ContentsRow> parts = new ArrayList<>();
        group(EditingText.HAZARDS, rows(ContentsKind.HAZARD, procedure.getHazards()), parts);
        group(EditingText.INSTRUMENTS, rows(ContentsKind.INSTRUMENT, procedure.getInstruments()), parts);
        group(EditingText.PRECONDITIONS, rows(ContentsKind.PRECONDITION, procedure.getPreconditions()), parts);
        procedure.getBlocks().forEach(block -> parts.add(block(block)));
        if (procedure.getMakeSafe() != null) {
            parts.add(makeSafe(procedure.getMakeSafe()));
        }
        return row(ContentsKind.PROCEDURE, procedure, parts);
    }

    private ContentsRow shared(SharedStage shared) {
        List<ContentsRow> parts = new ArrayList<>();
        group(EditingText.HAZARDS, rows(ContentsKind.HAZARD, shared.getHazards()), parts);
        group(EditingText.INSTRUMENTS, rows(ContentsKind.INSTRUMENT, shared.getInstruments()), parts);
        parts.addAll(steps(shared.getSteps()));
        return row(ContentsKind.STAGE, shared, parts);
    }

    private static void group(EditingText label, List<ContentsRow> rows, List<ContentsRow> parts) {
        if (!rows.isEmpty()) {
            ContentsRow first = rows.get(0);
            parts.add(new ContentsRow(ContentsKind.GROUP, "", label.text(), first.offset(), first.length(),
                    rows.get(rows.size() - 1).end(), rows));
        }
    }

    private ContentsRow block(Block block) {
        return row(block instanceof Soak ? ContentsKind.SOAK : ContentsKind.STAGE, block, steps(Procedures.steps(block)));
    }

    private ContentsRow makeSafe(MakeSafe makeSafe) {
        INode node = NodeModelUtils.findActualNodeFor(makeSafe);
        return new ContentsRow(ContentsKind.MAKE_SAFE, "", Descriptions.label(makeSafe), node.getOffset(), "make safe".length(),
                node.getEndOffset(), steps(makeSafe.getSteps()));
    }

    private List<ContentsRow> steps(List<Step> all) {
        return all.stream().flatMap(step -> steps.apply(step).stream()).toList();
    }

    private static List<ContentsRow> rows(ContentsKind kind, List<? extends Named> all) {
        return all.stream().filter(each -> NodeModelUtils.findActualNodeFor(each) != null).map(each -> row(kind, each, List.of())).toList();
    }

    /** Points have no names: each is called what it says. */
    private static List<ContentsRow> points(WatchedBy watched) {
        List<ContentsRow> rows = new ArrayList<>();
        for (WatchedPoint point : watched.getPoints()) {
            INode node = NodeModelUtils.findActualNodeFor(point);
            if (node != null) {
                rows.add(new ContentsRow(ContentsKind.ITEM, "", Descriptions.written(point), node.getOffset(), 0, node.getEndOffset(), List.of()));
            }
        }
        return rows;
    }

    private static ContentsRow row(ContentsKind kind, Named named, List<ContentsRow> children) {
        INode whole = NodeModelUtils.findActualNodeFor(named);
        List<INode> names = NodeModelUtils.findNodesForFeature(named, Literals.NAMED__NAME);
        INode name = names.isEmpty() ? whole : names.get(0);
        String written = Procedures.name(named).orElse("");
        return new ContentsRow(kind, written, Descriptions.label(named), name.getOffset(), names.isEmpty() ? 0 : name.getLength(),
                whole.getEndOffset(), children);
    }
}
