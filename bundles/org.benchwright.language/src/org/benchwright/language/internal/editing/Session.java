package org.benchwright.language.internal.editing;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;

import org.benchwright.core.Cancellation;
import org.benchwright.language.ApprovedRevisions;
import org.benchwright.language.Remark;
import org.benchwright.language.SourceText;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.Compiled;
import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.Fix;
import org.benchwright.language.editing.Hover;
import org.benchwright.language.editing.Place;
import org.benchwright.language.editing.Proposal;
import org.benchwright.language.editing.Renaming;
import org.benchwright.language.ide.ProcedureIdeSetup;
import org.benchwright.language.internal.FrameworkLog;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.ReadText;
import org.benchwright.language.internal.TextPlaces;
import org.benchwright.language.internal.fix.Candidates;
import org.benchwright.language.internal.format.Layout;
import org.benchwright.language.proof.Telling;
import org.eclipse.xtext.scoping.IScopeProvider;
import org.eclipse.xtext.util.CancelIndicator;

import com.google.inject.Injector;

/** The work behind {@link org.benchwright.language.editing.FolderSession}: takes turns, and hands out values only. */
public final class Session {

    private final Turns turns = new Turns();
    private final Injector injector;
    private final FolderFiles files;
    private final NameIndex names;
    private final DiskFolder disk;
    private final Set<Path> unsaved = new HashSet<>();

    private Session(Path folder, Injector injector) {
        this.injector = injector;
        files = new FolderFiles(injector);
        names = new NameIndex(files);
        disk = new DiskFolder(folder.toAbsolutePath().normalize());
    }

    /** Starts the language and reads the folder. */
    public static Session open(Path folder) {
        FrameworkLog.quieten();
        Session session = new Session(folder, new ProcedureIdeSetup().createInjectorAndDoEMFRegistration());
        session.refresh();
        return session;
    }

    public Path folder() {
        return disk.folder();
    }

    public void change(Path file, String text) {
        Path path = own(file);
        turns.now(() -> {
            unsaved.add(path);
            files.put(ReadText.of(new SourceText(path, text)));
            return null;
        });
    }

    public void close(Path file) {
        Path path = own(file);
        turns.now(() -> {
            unsaved.remove(path);
            disk.forget(path);
            return refreshed();
        });
    }

    public boolean refresh() {
        return turns.now(this::refreshed);
    }

    private boolean refreshed() {
        DiskFolder.Look look = disk.look();
        List<ReadText> different = look.changed();
        Set<Path> present = Set.copyOf(look.present());
        List<Path> gone = files.paths().stream().filter(path -> !present.contains(path) && !unsaved.contains(path)).toList();
        different.stream().filter(text -> !unsaved.contains(text.path())).forEach(files::put);
        gone.forEach(files::remove);
        files.lookAtImports();
        return !different.isEmpty() || !gone.isEmpty();
    }

    public void compare(ApprovedRevisions approved) {
        turns.now(() -> {
            files.compare(approved);
            return null;
        });
    }

    public List<Path> files() {
        return turns.now(() -> List.copyOf(files.paths()));
    }

    public Optional<String> text(Path file) {
        Path path = file.toAbsolutePath().normalize();
        return turns.now(() -> files.text(path).map(ReadText::text));
    }

    public Optional<Analysis> analyse(Path file, Cancellation cancellation) {
        Path path = file.toAbsolutePath().normalize();
        return turns.patiently(cancellation, stop -> files.analysis(path, parsed -> analysis(parsed, stop)));
    }

    private Analysis analysis(ParsedFile file, CancelIndicator stop) {
        Path path = file.text().path();
        List<Remark> remarks = files.remarks(path, stop);
        FileView.Shown shown = files.view(file).shown();
        return new Analysis(path, file.text().text(), remarks, shown.styles(), shown.contents(), names.links(file), shown.folds());
    }

    public Map<Path, List<Remark>> remarks(Cancellation cancellation) {
        List<Path> paths = files();
        Map<Path, List<Remark>> all = new TreeMap<>();
        // One turn for each file, so that nobody has to wait for a whole folder.
        paths.forEach(path -> all.put(path, turns.patiently(cancellation, stop -> files.remarks(path, stop))));
        return all;
    }

    public List<Compiled> compiled(Path file, Cancellation cancellation) {
        Path path = file.toAbsolutePath().normalize();
        return turns.patiently(cancellation, stop -> files.file(path).map(new Compilations(files, stop)::of)).orElse(List.of());
    }

    public Optional<Telling> telling(Path file, Cancellation cancellation) {
        Path path = file.toAbsolutePath().normalize();
        return turns.patiently(cancellation, stop -> files.file(path).map(new Compilations(files, stop)::telling));
    }

    public List<Proposal> proposals(Path file, int offset) {
        return ask(file, offset, (parsed, place) -> new ProposalList(injector).at(parsed, place)).orElse(List.of());
    }

    public Optional<Hover> hover(Path file, int offset) {
        return ask(file, offset, new Hovers(names)::at).flatMap(found -> found);
    }

    public Optional<Place> declaration(Path file, int offset) {
        return ask(file, offset, (parsed, place) -> names.at(parsed, place).flatMap(use -> names.declaration(use.target())))
                .flatMap(found -> found);
    }

    public List<Place> references(Path file, int offset) {
        return ask(file, offset, (parsed, place) -> names.at(parsed, place).map(use -> names.references(use.target())).orElse(List.of()))
                .orElse(List.of());
    }

    public Renaming rename(Path file, int offset, String newName) {
        return ask(file, offset, (parsed, place) -> new Renamer(injector, files, names).rename(parsed, place, newName))
                .orElseGet(() -> new Renaming.Refused(EditingText.RENAME_UNKNOWN_TEXT.text()));
    }

    /** A text with syntax errors is left as it is: nobody knows what belongs together in it. */
    public List<Edit> format(Path file) {
        return ask(file, 0, (parsed, place) -> formatted(parsed)).orElse(List.of());
    }

    private static List<Edit> formatted(ParsedFile file) {
        if (file.resource().getParseResult().hasSyntaxErrors()) {
            return List.of();
        }
        return Layout.changes(file.text().text(), file.resource().getParseResult().getRootNode()).stream()
                .map(gap -> new Edit(new Place(file.text().path(), gap.offset(), gap.length()), gap.blanks())).toList();
    }

    /** Each fix is tried out on a copy of the folder; what doesn't mend is not offered. */
    public List<Fix> fixes(Remark remark) {
        return turns.now(() -> files.file(remark.file()).filter(parsed -> !parsed.isTooDeep() && remark.offset() <= parsed.text().text().length())
                .filter(parsed -> files.remarks(remark.file(), CancelIndicator.NullImpl).contains(remark))
                .map(parsed -> mending(new Candidates(injector.getInstance(IScopeProvider.class), files.approved()).of(parsed, remark), remark))
                .orElse(List.of()));
    }

    private List<Fix> mending(List<Fix> candidates, Remark remark) {
        Trial trial = new Trial(injector, files);
        return candidates.stream().map(this::withLineEnds).filter(fix -> mends(trial.with(fix.edits()), remark)).toList();
    }

    /** Lines that a fix adds end as those of their file do. */
    private Fix withLineEnds(Fix fix) {
        return new Fix(fix.label(), fix.edits().stream()
                .map(edit -> new Edit(edit.place(), edit.text().replace("\n", lineEnd(edit.place().file())))).toList());
    }

    private String lineEnd(Path file) {
        return files.text(file).map(text -> TextPlaces.lineEnd(text.text())).orElse("\n");
    }

    private static boolean mends(Trial trial, Remark remark) {
        return trial.removes(remark.file(), remark.code()) && trial.newError().isEmpty();
    }

    private <T> Optional<T> ask(Path file, int offset, BiFunction<ParsedFile, Integer, T> question) {
        Path path = file.toAbsolutePath().normalize();
        return turns.now(() -> files.file(path).filter(parsed -> !parsed.isTooDeep())
                .map(parsed -> question.apply(parsed, Math.max(0, Math.min(offset, parsed.text().text().length())))));
    }

    private Path own(Path file) {
        Path path = file.toAbsolutePath().normalize();
        if (!disk.folder().equals(path.getParent())) {
            throw new IllegalArgumentException(path + " does not lie in " + disk.folder());
        }
        return path;
    }
}
