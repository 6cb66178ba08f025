package org.benchwright.language;

import java.util.List;

import org.benchwright.model.Procedure;

/**
 * Files that were checked together.
 *
 * @param files the files, folder by folder
 */
public record Checked(List<CheckedFile> files) {
    public Checked {
        files = List.copyOf(files);
    }

    /**
     * All remarks.
     *
     * @return by file, then by place
     */
    public List<Remark> remarks() {
        return files.stream().flatMap(file -> file.remarks().stream()).sorted().toList();
    }

    /**
     * Whether any file has an error.
     *
     * @return true if so
     */
    public boolean hasErrors() {
        return files.stream().anyMatch(CheckedFile::hasErrors);
    }

    /**
     * Whether any file could not be read at all.
     *
     * @return true if so
     */
    public boolean unreadable() {
        return remarks().stream().anyMatch(remark -> remark.code() == RemarkCode.CANNOT_READ);
    }

    /**
     * All procedures of the files.
     *
     * @return in the order of the files
     */
    public List<Procedure> procedures() {
        return files.stream().flatMap(file -> file.content().getProcedures().stream()).toList();
    }
}
