package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.editing.Compiled;
import org.benchwright.language.editing.Passage;
import org.benchwright.language.editing.Place;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.compile.PlanCompiler;
import org.benchwright.language.internal.compile.UsedFiles;
import org.benchwright.language.internal.expand.Expanded;
import org.benchwright.language.internal.expand.Expansion;
import org.benchwright.language.internal.proof.Provables;
import org.benchwright.language.proof.Provable;
import org.benchwright.language.proof.Telling;
import org.benchwright.model.Block;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.util.CancelIndicator;

/** The procedures of a file, compiled as their text stands. */
final class Compilations {

    private final FolderFiles files;
    private final CancelIndicator stop;

    Compilations(FolderFiles files, CancelIndicator stop) {
        this.files = files;
        this.stop = stop;
    }

    List<Compiled> of(ParsedFile file) {
        return file.content().getProcedures().stream().map(procedure -> compiled(file, procedure)).toList();
    }

    private Compiled compiled(ParsedFile file, Procedure procedure) {
        String name = Procedures.name(procedure).orElse("");
        List<Remark> errors = Stream.concat(own(file, procedure), used(procedure)).sorted().toList();
        if (!errors.isEmpty()) {
            return new Compiled(name, Optional.empty(), errors, Map.of());
        }
        Expanded expanded = Expansion.of(procedure);
        return new Compiled(name, Optional.of(PlanCompiler.compile(expanded)), errors, passages(expanded));
    }

    /** What can be told of what the file's procedures prove: some errors stand in no way of that. */
    Telling telling(ParsedFile file) {
        List<Procedure> procedures = file.content().getProcedures();
        List<Remark> errors = Stream.concat(errors(file), procedures.stream().flatMap(this::used)).filter(Provables::standsInTheWay).distinct()
                .sorted()
                .toList();
        return errors.isEmpty() ? new Telling.Told(procedures.stream().map(this::provable).toList()) : new Telling.NotYet(errors);
    }

    private Provable provable(Procedure procedure) {
        Expanded expanded = Expansion.of(procedure);
        return new Provable(PlanCompiler.compile(expanded), passages(expanded));
    }

    /** Those inside other declarations of the file are not this procedure's, unless nobody can tell where those end. */
    private Stream<Remark> own(ParsedFile file, Procedure procedure) {
        List<EObject> others = file.content().getProcedures().stream().filter(other -> other != procedure).map(EObject.class::cast).toList();
        return errors(file).filter(remark -> remark.code() == RemarkCode.SYNTAX || others.stream().noneMatch(other -> holds(other, remark)));
    }

    private static boolean holds(EObject declaration, Remark remark) {
        INode node = NodeModelUtils.findActualNodeFor(declaration);
        return node != null && node.getOffset() <= remark.offset() && remark.offset() < node.getEndOffset();
    }

    private Stream<Remark> used(Procedure procedure) {
        return UsedFiles.of(procedure).stream().flatMap(path -> files.remarks(path, stop).stream()).filter(Compilations::isError);
    }

    private Stream<Remark> errors(ParsedFile file) {
        return files.remarks(file.text().path(), stop).stream().filter(Compilations::isError);
    }

    private static boolean isError(Remark remark) {
        return remark.severity() == Severity.ERROR;
    }

    // ---- places

    private Map<String, Passage> passages(Expanded expanded) {
        Procedure procedure = expanded.procedure();
        Map<String, Passage> passages = new HashMap<>();
        put("family", procedure.getFamily(), expanded, passages);
        all("hazard.", procedure.getHazards(), expanded, passages);
        all("instrument.", procedure.getInstruments(), expanded, passages);
        all("precondition.", procedure.getPreconditions(), expanded, passages);
        for (Block block : procedure.getBlocks()) {
            all("stage.", List.of(block), expanded, passages);
            all("step.", Procedures.steps(block), expanded, passages);
        }
        put("stage." + PlanCompiler.MAKE_SAFE, procedure.getMakeSafe(), expanded, passages);
        all("step.", procedure.getMakeSafe().getSteps(), expanded, passages);
        return passages;
    }

    private void all(String kind, List<? extends Named> things, Expanded expanded, Map<String, Passage> passages) {
        things.forEach(thing -> put(kind + thing.getName(), thing, expanded, passages));
    }

    private void put(String key, EObject thing, Expanded expanded, Map<String, Passage> passages) {
        EObject written = expanded.origins().getOrDefault(thing, thing);
        INode whole = NodeModelUtils.findActualNodeFor(written);
        files.holding(written).filter(file -> whole != null).ifPresent(file -> {
            INode name = Optional.of(written).filter(Named.class::isInstance).map(Named.class::cast).flatMap(NameIndex::nameNode)
                    .orElseGet(() -> firstWord(whole));
            passages.put(key, new Passage(place(file, name), place(file, whole)));
        });
    }

    private static INode firstWord(INode whole) {
        List<INode> leaves = new ArrayList<>();
        whole.getLeafNodes().forEach(leaf -> {
            if (!leaf.isHidden()) {
                leaves.add(leaf);
            }
        });
        return leaves.isEmpty() ? whole : leaves.get(0);
    }

    private static Place place(ParsedFile file, INode node) {
        return new Place(file.text().path(), node.getOffset(), node.getLength());
    }
}
