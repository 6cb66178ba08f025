package org.benchwright.language.editing;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;

import org.benchwright.core.Cancellation;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.Remark;
import org.benchwright.language.internal.editing.Session;
import org.benchwright.language.proof.Telling;

/**
 * One folder of families and procedures, as an editor has it open: texts that are not saved yet stand in for those on the disk, and a
 * change in one file is seen from the others. Any thread may ask, as many as like; questions about a place are answered before long work,
 * which is begun again after them. Nothing that is returned changes afterwards.
 */
public final class FolderSession {

    private final Session session;

    private FolderSession(Session session) {
        this.session = session;
    }

    /**
     * Opens a folder. The first time takes a second or two, for the language is started.
     *
     * @param folder the folder; what lies in folders below it belongs to them
     * @return the session; a folder that can't be read has no files
     */
    public static FolderSession open(Path folder) {
        return new FolderSession(Session.open(folder));
    }

    /**
     * The folder.
     *
     * @return its absolute path
     */
    public Path folder() {
        return session.folder();
    }

    /**
     * Puts a text that is not saved yet in place of the one on the disk. Cheap: it is parsed when something is asked.
     *
     * @param file a file of this folder; need not exist
     * @param text its characters, without a byte order mark
     * @throws IllegalArgumentException if the file does not lie in this folder
     */
    public void change(Path file, String text) {
        session.change(file, text);
    }

    /**
     * Goes back to the text on the disk.
     *
     * @param file a file that {@link #change} was called for
     * @throws IllegalArgumentException if the file does not lie in this folder
     */
    public void close(Path file) {
        session.close(file);
    }

    /**
     * Looks at the disk again: files that are new there, gone, or changed. Files with a text that is not saved keep it.
     *
     * @return true if anything was different
     */
    public boolean refresh() {
        return session.refresh();
    }

    /**
     * Compares procedures with what was approved, from now on. A new session compares them with nothing.
     *
     * @param approved tells what was approved, always the same; when it has changed, this is called again
     */
    public void compare(ApprovedRevisions approved) {
        session.compare(approved);
    }

    /**
     * The files of the folder.
     *
     * @return by name
     */
    public List<Path> files() {
        return session.files();
    }

    /**
     * The characters that answers are about.
     *
     * @param file a file
     * @return its text, saved or not; empty where the folder has no such file
     */
    public Optional<String> text(Path file) {
        return session.text(file);
    }

    /**
     * All that is shown of a text, together.
     *
     * @param file         a file
     * @param cancellation stops the work
     * @return the analysis of the present text; empty where the folder has no such file
     * @throws CancellationException if cancelled
     */
    public Optional<Analysis> analyse(Path file, Cancellation cancellation) {
        return session.analyse(file, cancellation);
    }

    /**
     * The remarks on every file of the folder. Those that still hold are not made again.
     *
     * @param cancellation stops the work
     * @return by file; a file without remarks has an empty list
     * @throws CancellationException if cancelled
     */
    public Map<Path, List<Remark>> remarks(Cancellation cancellation) {
        return session.remarks(cancellation);
    }

    /**
     * The procedures of a file, compiled as their text stands.
     *
     * @param file         a file
     * @param cancellation stops the work
     * @return in the order of the text; empty where the folder has no such file, and where no procedure can be made out in it
     * @throws CancellationException if cancelled
     */
    public List<Compiled> compiled(Path file, Cancellation cancellation) {
        return session.compiled(file, cancellation);
    }

    /**
     * What can be told of what the procedures of a file prove, as their text is now. Only the plans are made here; proving them needs nothing
     * of this session.
     *
     * @param file         a file
     * @param cancellation stops the work
     * @return empty where the folder has no such file
     * @throws CancellationException if cancelled
     */
    public Optional<Telling> telling(Path file, Cancellation cancellation) {
        return session.telling(file, cancellation);
    }

    /**
     * What could be written at a place.
     *
     * @param file   a file
     * @param offset the place, in characters from the start
     * @return templates first, then names, units, keywords; each by name
     */
    public List<Proposal> proposals(Path file, int offset) {
        return session.proposals(file, offset);
    }

    /**
     * What there is to say about the word at a place.
     *
     * @param file   a file
     * @param offset the place
     * @return empty where there is nothing to say
     */
    public Optional<Hover> hover(Path file, int offset) {
        return session.hover(file, offset);
    }

    /**
     * Where the name at a place is declared.
     *
     * @param file   a file
     * @param offset the place
     * @return the declared name, in whichever file; empty where there is no name, or one that leads nowhere
     */
    public Optional<Place> declaration(Path file, int offset) {
        return session.declaration(file, offset);
    }

    /**
     * Where the thing whose name stands at a place is referred to.
     *
     * @param file   a file
     * @param offset the place
     * @return all references in the folder, the declaration not included, by file and place
     */
    public List<Place> references(Path file, int offset) {
        return session.references(file, offset);
    }

    /**
     * Renames the thing whose name stands at a place, in all files. Nothing is changed by this; the edits are for the caller to make.
     *
     * @param file    a file
     * @param offset  the place
     * @param newName the new name
     * @return the edits, or why it can't be renamed so
     */
    public Renaming rename(Path file, int offset, String newName) {
        return session.rename(file, offset, newName);
    }

    /**
     * Ways to mend what a remark is about. Each was tried: it removes the remark and brings no new error. Nothing is changed by this; the
     * edits are for the caller to make.
     *
     * @param remark a remark on the present text of a file of this folder
     * @return the most likely first; empty where there is none, or the text has changed since
     */
    public List<Fix> fixes(Remark remark) {
        return session.fixes(remark);
    }

    /**
     * Lays a text out: lines, indentation and blanks. No word and no comment changes. Nothing is changed by this; the edits are for the
     * caller to make.
     *
     * @param file a file
     * @return what to replace, by place; empty where nothing has to change, and where the text has syntax errors
     */
    public List<Edit> format(Path file) {
        return session.format(file);
    }
}
