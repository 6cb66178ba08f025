package org.benchwright.language.internal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

import org.benchwright.core.Digest;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.Remark;
import org.benchwright.language.RemarkCode;
import org.benchwright.language.SourceText;
import org.benchwright.language.internal.compile.UsedFiles;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * Compares procedures with what was approved under their revision. An approval holds for the very characters of the procedure and of all that
 * it refers to, so a comment counts too.
 *
 * @param approved tells what was approved
 * @param texts    the texts beside a procedure's own, by path
 */
public record ApprovalCheck(ApprovedRevisions approved, Function<Path, Optional<ReadText>> texts) {

    /** The remarks on the procedures of a file; none where it could not be read whole. */
    public List<Remark> remarks(ParsedFile file) {
        if (file.isTooDeep() || !file.text().remarks().isEmpty() || file.resource().getParseResult().hasSyntaxErrors()) {
            return List.of();
        }
        return file.content().getProcedures().stream().flatMap(procedure -> remark(file, procedure).stream()).toList();
    }

    /** The remarks that are known already, and these, by place. */
    public List<Remark> with(List<Remark> known, ParsedFile file) {
        List<Remark> changed = remarks(file);
        return changed.isEmpty() ? known : Stream.concat(known.stream(), changed.stream()).sorted().toList();
    }

    private Optional<Remark> remark(ParsedFile file, Procedure procedure) {
        return find(approved, procedure).filter(revision -> !revision.text().equals(digest(file, procedure)))
                .map(revision -> remark(file, procedure, NodeModelUtils.findNodesForFeature(procedure, Literals.PROCEDURE__REVISION).get(0)));
    }

    /** What was approved of a procedure's revision, for the family that it names; nothing where the text doesn't say one of them. */
    public static Optional<ApprovedRevisions.Approved> find(ApprovedRevisions approved, Procedure procedure) {
        boolean said = procedure.getName() != null && procedure.getRevision() != null && procedure.getFamily() != null
                && procedure.getFamily().getName() != null;
        return said ? approved.find(procedure.getName(), procedure.getFamily().getName(), procedure.getRevision()) : Optional.empty();
    }

    private static Remark remark(ParsedFile file, Procedure procedure, INode number) {
        TextPlaces places = new TextPlaces(file.text().text());
        return new Remark(file.text().path(), places.line(number.getOffset()), places.column(number.getOffset()), number.getOffset(),
                number.getLength(), RemarkCode.APPROVED_CHANGED, RemarkCode.APPROVED_CHANGED.text(procedure.getRevision().toString()));
    }

    private Digest digest(ParsedFile file, Procedure procedure) {
        List<SourceText> used = UsedFiles.of(procedure).stream().flatMap(path -> texts.apply(path).stream()).map(ApprovalCheck::source).toList();
        return Digest.of(ProcedureText.of(source(file.text()), used).getBytes(StandardCharsets.UTF_8));
    }

    private static SourceText source(ReadText text) {
        return new SourceText(text.path(), text.text());
    }
}
