package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.language.Remark;

/**
 * What is known about the remarks on a folder.
 *
 * @param folder    the folder
 * @param checkedAt when all its files were last looked at; empty if they never were
 * @param running   true while they are being looked at, so that what is shown may be outdated
 * @param remarks   the remarks by file, as of that time
 * @param trouble   why they could not be looked at; empty if they could
 */
record FolderState(Path folder, Optional<Instant> checkedAt, boolean running, Map<Path, List<Remark>> remarks,
        Optional<String> trouble) {
    FolderState {
        remarks = Map.copyOf(remarks);
    }

    static FolderState notYet(Path folder) {
        return new FolderState(folder, Optional.empty(), false, Map.of(), Optional.empty());
    }

    FolderState begun() {
        return new FolderState(folder, checkedAt, true, remarks, trouble);
    }

    FolderState done(Map<Path, List<Remark>> found) {
        return new FolderState(folder, Optional.of(Instant.now()), false, found, Optional.empty());
    }

    FolderState failed(String why) {
        return new FolderState(folder, checkedAt, false, remarks, Optional.of(why));
    }
}
