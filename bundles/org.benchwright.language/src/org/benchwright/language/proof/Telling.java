package org.benchwright.language.proof;

import java.util.List;

import org.benchwright.language.Remark;

/** What can be told of what the procedures of a file prove. */
public sealed interface Telling {

    /**
     * It can be told.
     *
     * @param procedures the file's procedures, in order; none in a file of families
     */
    record Told(List<Provable> procedures) implements Telling {
        public Told {
            procedures = List.copyOf(procedures);
        }
    }

    /**
     * It can't be told until the errors are mended.
     *
     * @param errors the errors that stand in the way, in whatever file, one or more
     */
    record NotYet(List<Remark> errors) implements Telling {
        public NotYet {
            errors = List.copyOf(errors);
        }
    }
}
