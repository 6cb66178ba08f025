package org.benchwright.ui.internal.author;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.language.editing.ContentsKind;
import org.benchwright.language.editing.ContentsRow;

/**
 * A row of the contents as it is shown. Two are the same thing if they have the same way down to them, wherever the text has moved it, so
 * that what was unfolded stays so.
 */
final class ContentsNode {

    private final ContentsRow row;
    private final String way;
    private final List<ContentsNode> children;

    private ContentsNode(ContentsRow row, String way) {
        this.row = row;
        this.way = way;
        children = all(row.children(), way);
    }

    /** Rows, and those below them. */
    static List<ContentsNode> all(List<ContentsRow> rows, String above) {
        Map<String, Integer> times = new HashMap<>();
        List<ContentsNode> nodes = new ArrayList<>();
        for (ContentsRow row : rows) {
            String name = row.kind() + " " + (row.name().isEmpty() ? row.label() : row.name());
            // While it is being written, a name may stand twice.
            nodes.add(new ContentsNode(row, above + "/" + name + "#" + times.merge(name, 1, Integer::sum)));
        }
        return List.copyOf(nodes);
    }

    ContentsRow row() {
        return row;
    }

    List<ContentsNode> children() {
        return children;
    }

    /** True if the name comes first, and what people call it beside it. */
    boolean isNamed() {
        return row.kind() != ContentsKind.GROUP && row.kind() != ContentsKind.MAKE_SAFE && !row.name().isEmpty()
                && !row.name().equals(row.label());
    }

    /** True if the same would be seen, though it may lie elsewhere in the text. */
    static boolean lookAlike(List<ContentsNode> one, List<ContentsNode> other) {
        if (one.size() != other.size()) {
            return false;
        }
        for (int i = 0; i < one.size(); i++) {
            boolean alike = one.get(i).equals(other.get(i)) && one.get(i).row.label().equals(other.get(i).row.label());
            if (!alike || !lookAlike(one.get(i).children, other.get(i).children)) {
                return false;
            }
        }
        return true;
    }

    /** The same thing in newer contents, or this one where it is gone. */
    ContentsNode in(List<ContentsNode> newer) {
        for (ContentsNode node : newer) {
            if (node.equals(this)) {
                return node;
            } else if (way.startsWith(node.way + "/")) {
                return in(node.children);
            }
        }
        return this;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ContentsNode that && way.equals(that.way);
    }

    @Override
    public int hashCode() {
        return way.hashCode();
    }
}
