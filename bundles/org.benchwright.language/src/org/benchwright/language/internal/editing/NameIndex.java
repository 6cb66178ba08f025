package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;

import org.benchwright.language.editing.Link;
import org.benchwright.language.editing.Place;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.parse.PerStep;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Load;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Step;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EAttribute;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** What the names in the files of a folder lead to. */
final class NameIndex {

    private final FolderFiles files;
    private final Map<ParsedFile, PerStep<List<Use>>> inSteps = new WeakHashMap<>();

    NameIndex(FolderFiles files) {
        this.files = files;
    }

    /**
     * A name in a text.
     *
     * @param node   the characters, with the blanks and comments before them
     * @param blanks how many those are
     * @param length how many characters the name has
     * @param target what is meant, whether declared here or referred to
     * @param name   the characters that declare it; empty where it has none
     */
    record Use(INode node, int blanks, int length, Named target, Optional<INode> name) {
        Use(INode node, Named target) {
            this(node, node.getOffset() - node.getTotalOffset(), node.getLength(), target, nameNode(target));
        }

        /** Where the name begins now; what stands before it in the text may have changed since it was found. */
        int offset() {
            return node.getTotalOffset() + blanks;
        }
    }

    /** The name at a place, or right before it; empty where there is none, or where it leads nowhere. */
    Optional<Use> at(ParsedFile file, int offset) {
        return nodes(file, offset).stream().flatMap(node -> use(node).stream()).findFirst();
    }

    private static List<INode> nodes(ParsedFile file, int offset) {
        INode root = file.resource().getParseResult().getRootNode();
        List<INode> nodes = new ArrayList<>();
        for (int place : new int[] {offset, offset - 1}) {
            Optional.ofNullable(place < 0 ? null : NodeModelUtils.findLeafNodeAtOffset(root, place)).ifPresent(nodes::add);
        }
        return nodes;
    }

    private Optional<Use> use(INode leaf) {
        EObject holder = NodeModelUtils.findActualSemanticObjectFor(leaf);
        if (holder == null) {
            return Optional.empty();
        }
        return usesOf(holder).stream().filter(use -> covers(use.node(), leaf)).findFirst().or(() -> declared(holder, leaf));
    }

    private static Optional<Use> declared(EObject holder, INode leaf) {
        return Optional.of(holder).filter(Named.class::isInstance).map(Named.class::cast)
                .flatMap(named -> nameNode(named).filter(node -> covers(node, leaf)).map(node -> new Use(node, named)));
    }

    private static boolean covers(INode whole, INode part) {
        return whole.getOffset() <= part.getOffset() && part.getEndOffset() <= whole.getEndOffset();
    }

    /** The characters of a declared name. */
    static Optional<INode> nameNode(Named named) {
        return NodeModelUtils.findNodesForFeature(named, Literals.NAMED__NAME).stream().findFirst();
    }

    /** Where a thing's name is declared. */
    Optional<Place> declaration(Named target) {
        return files.holding(target).flatMap(file -> nameNode(target)
                .map(node -> new Place(file.text().path(), node.getOffset(), node.getLength())));
    }

    /** All references to a thing, in all files, its declaration not included. */
    List<Place> references(Named target) {
        List<Place> places = new ArrayList<>();
        for (ParsedFile file : files.all()) {
            uses(file).stream().filter(use -> use.target() == target)
                    .forEach(use -> places.add(new Place(file.text().path(), use.offset(), use.length())));
        }
        return places;
    }

    /** The references of a file that lead somewhere. */
    List<Link> links(ParsedFile file) {
        List<Link> links = new ArrayList<>();
        // Many names mean the same thing.
        Map<Named, Optional<Place>> declared = new IdentityHashMap<>();
        for (Use use : uses(file)) {
            declared.computeIfAbsent(use.target(), any -> declaration(use))
                    .ifPresent(place -> links.add(new Link(use.offset(), use.length(), place)));
        }
        links.sort((one, other) -> Integer.compare(one.offset(), other.offset()));
        return links;
    }

    private Optional<Place> declaration(Use use) {
        return use.name().flatMap(declared -> files.holding(use.target())
                .map(holder -> new Place(holder.text().path(), declared.getOffset(), declared.getLength())));
    }

    private List<Use> uses(ParsedFile file) {
        List<Use> uses = new ArrayList<>();
        PerStep<List<Use>> known = inSteps.computeIfAbsent(file, ParsedFile::perStep);
        for (TreeIterator<EObject> all = file.content().eAllContents(); all.hasNext();) {
            EObject each = all.next();
            if (each instanceof Step step) {
                all.prune();
                uses.addAll(known.of(step, NameIndex::inStep));
            } else {
                uses.addAll(usesOf(each));
            }
        }
        return uses;
    }

    private static List<Use> inStep(Step step) {
        List<Use> uses = new ArrayList<>(usesOf(step));
        step.eAllContents().forEachRemaining(each -> uses.addAll(usesOf(each)));
        return uses;
    }

    private static List<Use> usesOf(EObject holder) {
        List<Use> uses = new ArrayList<>();
        for (EReference reference : holder.eClass().getEAllReferences()) {
            if (!reference.isContainment() && !reference.isContainer() && holder.eIsSet(reference)) {
                add(holder, reference, uses);
            }
        }
        if (holder instanceof Load load) {
            add(load, Literals.LOAD__ITEMS, load.getItems(), uses);
            add(load, Literals.LOAD__LEFT_OUT, load.getLeftOut(), uses);
        }
        return uses;
    }

    private static void add(EObject holder, EReference reference, List<Use> uses) {
        List<INode> nodes = NodeModelUtils.findNodesForFeature(holder, reference);
        Object value = holder.eGet(reference);
        List<?> targets = value instanceof List<?> many ? many : List.of(value);
        for (int i = 0; i < Math.min(nodes.size(), targets.size()); i++) {
            if (targets.get(i) instanceof Named target && !target.eIsProxy()) {
                uses.add(new Use(nodes.get(i), target));
            }
        }
    }

    /** What is loaded is written as a name only; it stands for what the family declares under it. */
    private static void add(Load load, EAttribute attribute, List<String> names, List<Use> uses) {
        List<INode> nodes = NodeModelUtils.findNodesForFeature(load, attribute);
        Optional<Family> family = family(load);
        for (int i = 0; i < Math.min(nodes.size(), names.size()); i++) {
            INode node = nodes.get(i);
            String name = names.get(i);
            family.flatMap(each -> Families.loadItem(each, name)).ifPresent(item -> uses.add(new Use(node, item)));
        }
    }

    /** The family that a place in a text speaks of. */
    static Optional<Family> family(EObject inside) {
        return Procedures.around(inside, Family.class)
                .or(() -> Procedures.around(inside, SharedStage.class).map(SharedStage::getFamily).filter(family -> !family.eIsProxy()))
                .or(() -> Procedures.around(inside, Procedure.class).map(Procedure::getFamily).filter(family -> !family.eIsProxy()));
    }
}
