package org.benchwright.language;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.core.Severity;
import org.benchwright.model.ProcedureFile;

/**
 * A file, read and checked.
 *
 * @param path    where it is
 * @param text    its characters, without a byte order mark
 * @param content what it says, as far as it could be read; references to other files are resolved
 * @param remarks what there is to say about it, by place
 */
public record CheckedFile(Path path, String text, ProcedureFile content, List<Remark> remarks) {
    public CheckedFile {
        remarks = List.copyOf(remarks);
    }

    /**
     * Whether it can't be carried out as it is.
     *
     * @return true if there is an error among the remarks
     */
    public boolean hasErrors() {
        return remarks.stream().anyMatch(remark -> remark.severity() == Severity.ERROR);
    }
}
