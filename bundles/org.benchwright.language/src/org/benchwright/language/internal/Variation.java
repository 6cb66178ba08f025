package org.benchwright.language.internal;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.language.CheckedFile;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * A procedure read for a family like the one that it names: its text with the other name after {@code applies to}. What is remarked on it is
 * told at the places of the text as it is written.
 */
public final class Variation {

    private final Path path;
    private final String text;
    private final String family;
    private final int offset;
    private final int length;
    private final TextPlaces places;

    /**
     * @param file      the procedure's file as it is written
     * @param procedure its procedure, which names a family
     * @param family    the name of the other family
     */
    public Variation(CheckedFile file, Procedure procedure, String family) {
        INode name = clause(procedure);
        path = file.path();
        text = file.text();
        this.family = family;
        offset = name.getOffset();
        length = name.getLength();
        places = new TextPlaces(text);
    }

    private static INode clause(Procedure procedure) {
        return NodeModelUtils.findNodesForFeature(procedure, Literals.PROCEDURE__FAMILY).get(0);
    }

    /** The text to read. */
    public SourceText text() {
        return new SourceText(path, text.substring(0, offset) + family + text.substring(offset + length));
    }

    /** Remarks on what was read instead as remarks on what is written; those on the procedure's file say for which family they hold. */
    public List<Remark> asWritten(List<Remark> remarks) {
        return remarks.stream().map(remark -> remark.file().equals(path) ? asWritten(remark) : remark).sorted().toList();
    }

    private Remark asWritten(Remark remark) {
        int grown = family.length() - length;
        int begin = written(remark.offset(), grown);
        int end = written(remark.offset() + remark.length(), grown);
        return new Remark(path, places.line(begin), places.column(begin), begin, end - begin, remark.code(),
                InternalText.FOR_FAMILY.text(family, remark.words()));
    }

    private int written(int place, int grown) {
        if (place <= offset) {
            return place;
        }
        return place >= offset + family.length() ? place - grown : Math.min(place, offset + length);
    }

    /** A remark at the name after {@code applies to}. */
    public static Remark onClause(CheckedFile file, Procedure procedure, RemarkCode code, String words) {
        INode name = clause(procedure);
        TextPlaces places = new TextPlaces(file.text());
        return new Remark(file.path(), places.line(name.getOffset()), places.column(name.getOffset()), name.getOffset(), name.getLength(), code,
                words);
    }
}
