package org.benchwright.language.internal.fix;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

import org.benchwright.language.editing.Fix;
import org.benchwright.model.Families;
import org.benchwright.model.Load;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.scoping.IScopeProvider;

/** Names that lead nowhere: what was probably meant. */
final class NameFixes {

    private static final int MOST = 4;

    private final IScopeProvider scopes;

    NameFixes(IScopeProvider scopes) {
        this.scopes = scopes;
    }

    /** The names that are visible there and look most like what was written. */
    List<Fix> alike(Spot spot) {
        Stream<String> visible = reference(spot.leaf())
                .map(reference -> StreamSupport.stream(scopes.getScope(spot.object(), reference).getAllElements().spliterator(), false)
                        .map(found -> found.getName().getLastSegment()))
                .orElseGet(() -> loadable(spot));
        return replacements(spot, visible.distinct().toList());
    }

    private static Optional<EReference> reference(INode leaf) {
        for (INode node = leaf; node != null; node = node.getParent()) {
            if (node.getGrammarElement() instanceof CrossReference reference) {
                return Optional.of(GrammarUtil.getReference(reference));
            }
        }
        return Optional.empty();
    }

    private static Stream<String> loadable(Spot spot) {
        return spot.around(Load.class).isEmpty() ? Stream.of() : spot.around(Procedure.class).map(Procedure::getFamily).stream()
                .flatMap(family -> Families.loadItems(family).stream()).map(Named::getName);
    }

    private static List<Fix> replacements(Spot spot, List<String> names) {
        String written = spot.remarked();
        return names.stream().filter(name -> distance(written, name) <= Math.max(2, name.length() / 3))
                .sorted(Comparator.comparingInt((String name) -> distance(written, name)).thenComparing(Comparator.naturalOrder())).limit(MOST)
                .map(name -> new Fix(FixText.REPLACE.text(name),
                        List.of(spot.edit(spot.remark().offset(), spot.remark().length(), name))))
                .toList();
    }

    /** How many letters have to be put in, taken out or changed (Levenshtein); letter case does not count. */
    static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int changed = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(changed, 1 + Math.min(above, row[j - 1]));
                diagonal = above;
            }
        }
        return row[b.length()];
    }

    /** A procedure without a family: each one that it could apply to. */
    List<Fix> families(Spot spot) {
        Optional<Procedure> procedure = spot.around(Procedure.class);
        if (procedure.isEmpty()) {
            return List.of();
        }
        int brace = spot.file().text().text().indexOf('{', spot.remark().offset());
        return StreamSupport.stream(scopes.getScope(procedure.get(), Literals.PROCEDURE__FAMILY).getAllElements().spliterator(), false)
                .map(found -> found.getName().getLastSegment()).distinct().sorted().limit(MOST)
                .map(name -> new Fix(FixText.INSERT.text("applies to " + name), List.of(spot.edit(brace + 1, 0, "\n    applies to " + name))))
                .toList();
    }

    /** Something that is named twice in a list. */
    static List<Fix> listedTwice(Spot spot) {
        INode node = spot.leaf();
        for (INode parent = node; parent != null; parent = parent.getParent()) {
            if (parent.getGrammarElement() instanceof CrossReference reference) {
                List<INode> items = Spot.nodes(spot.object(), GrammarUtil.getReference(reference));
                for (int i = 0; i < items.size(); i++) {
                    if (items.get(i).getOffset() == parent.getOffset() && items.size() > 1) {
                        return Spot.one(FixText.REMOVE, spot.remarked(), spot.removeItem(items, i));
                    }
                }
            }
        }
        return List.of();
    }

    static List<Fix> unused(Spot spot) {
        return Procedures.around(spot.object(), Named.class).map(named -> Spot.one(FixText.REMOVE, named.getName(), spot.remove(Spot.node(named))))
                .orElse(List.of());
    }
}
