package org.benchwright.present;

import java.util.Optional;

import org.benchwright.core.Digest;
import org.benchwright.engine.revision.Revision;
import org.benchwright.engine.revision.RevisionBook;

/** The texts of procedures that were ever approved in a ledger, as it stood when it was read. Immutable. */
public final class ApprovedTexts {

    private final RevisionBook book;

    ApprovedTexts(RevisionBook book) {
        this.book = book;
    }

    /**
     * Digest of the text with which a revision of a procedure was approved for a family, even if it was withdrawn since; empty if it never
     * was.
     */
    public Optional<Digest> text(String procedure, String family, int number) {
        return book.find(Revision.key(procedure, family), number).filter(revision -> revision.approved().isPresent()).map(Revision::text);
    }

    /** The smallest number above all approved revisions of a procedure for a family. */
    public int free(String procedure, String family) {
        return book.of(Revision.key(procedure, family)).stream().filter(revision -> revision.approved().isPresent()).mapToInt(Revision::number).max().orElse(0) + 1;
    }

    /** Whether both know the same revisions: whoever keeps something that depends on them need not throw it away. */
    @Override
    public boolean equals(Object other) {
        return other instanceof ApprovedTexts texts && texts.book.all().equals(book.all());
    }

    @Override
    public int hashCode() {
        return book.all().hashCode();
    }
}
