package org.benchwright.language.internal.parse;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.model.Procedures;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.util.Triple;

/** The names of a text that refer to something, by their letters and by the steps that they stand in. */
final class NamedReferences {

    private final ProcedureResource file;
    private final Map<String, List<Use>> byName = new HashMap<>();
    private final Map<Step, List<Use>> byStep = new IdentityHashMap<>();
    private int read;

    /**
     * A name that refers to something.
     *
     * @param number    under which the file's linker knows it
     * @param holder    what it is said of
     * @param reference what it means there
     * @param node      its letters
     */
    record Use(int number, EObject holder, EReference reference, INode node) {
        String name() {
            return NodeModelUtils.getTokenText(node);
        }
    }

    NamedReferences(ProcedureResource file) {
        this.file = file;
        readOn();
    }

    /** Takes note of what was linked since the last time. */
    void readOn() {
        for (; read < file.links(); read++) {
            Triple<EObject, EReference, INode> link = file.getLazyProxyInformation(read);
            Use use = new Use(read, link.getFirst(), link.getSecond(), link.getThird());
            byName.computeIfAbsent(use.name(), name -> new ArrayList<>()).add(use);
            step(use).ifPresent(step -> byStep.computeIfAbsent(step, any -> new ArrayList<>()).add(use));
        }
    }

    private static Optional<Step> step(Use use) {
        return Procedures.around(use.holder(), Step.class);
    }

    /** Those of some names. */
    List<Use> of(Set<String> names) {
        return names.stream().flatMap(name -> byName.getOrDefault(name, List.of()).stream()).toList();
    }

    /** The step that a reference stands in. */
    static Optional<Step> holder(Use use) {
        return step(use);
    }

    void forget(Step step) {
        List.copyOf(byStep.getOrDefault(step, List.of())).forEach(this::forget);
        byStep.remove(step);
    }

    void forget(Use use) {
        Optional.ofNullable(byName.get(use.name())).ifPresent(uses -> uses.remove(use));
        step(use).map(byStep::get).ifPresent(uses -> uses.remove(use));
        file.removeLazyProxyInformation(use.number());
    }
}
