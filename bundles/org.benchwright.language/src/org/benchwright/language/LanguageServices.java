package org.benchwright.language;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;

import org.benchwright.language.internal.FolderCheck;
import org.benchwright.language.internal.FrameworkLog;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.language.internal.ReadText;
import org.benchwright.language.internal.format.Layout;
import org.eclipse.xtext.resource.XtextResourceSet;

import com.google.inject.Injector;

/**
 * Reads and checks families and procedures.
 *
 * <p>A file sees the files of its own folder, and those of the folders from which it imports a file. No input makes these methods throw:
 * whatever is wrong with a file is a remark on it. One object serves one thread at a time.
 */
public final class LanguageServices {

    /** The ending of a file that describes families. */
    public static final String FAMILY_ENDING = ".family";
    /** The ending of a file that describes procedures. */
    public static final String PROCEDURE_ENDING = ".procedure";

    private final Injector injector;

    private LanguageServices(Injector injector) {
        this.injector = injector;
    }

    /**
     * Starts the language for a program without a workbench.
     *
     * @return the services
     */
    public static LanguageServices create() {
        FrameworkLog.quieten();
        return new LanguageServices(new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration());
    }

    /**
     * Checks files and folders.
     *
     * @param paths files, whatever their ending, and folders, which stand for every family and procedure file in them and
     *              below
     * @return what was read, with all remarks; a file that can't be read has a remark that says so
     */
    public Checked check(List<Path> paths) {
        return check(paths, ApprovedRevisions.none());
    }

    /**
     * Checks files and folders, and compares the procedures in them with what was approved.
     *
     * @param paths    files and folders, as in {@link #check(List)}
     * @param approved tells what was approved
     * @return what was read, with all remarks
     */
    public Checked check(List<Path> paths, ApprovedRevisions approved) {
        Map<Path, ReadText> texts = new TreeMap<>();
        paths.stream().map(path -> path.toAbsolutePath().normalize()).forEach(path -> gather(path, texts));
        return check(texts.values(), true, approved);
    }

    /**
     * Checks files one of which is read from another text than that on the disk.
     *
     * @param paths   files and folders
     * @param instead what one of the files is to say
     * @return as for {@link #check(List)}
     */
    Checked check(List<Path> paths, SourceText instead) {
        Map<Path, ReadText> texts = new TreeMap<>();
        ReadText other = ReadText.of(instead);
        texts.put(other.path(), other);
        paths.stream().map(path -> path.toAbsolutePath().normalize()).forEach(path -> gather(path, texts));
        return check(texts.values(), true, ApprovedRevisions.none());
    }

    /**
     * Checks texts that need not be on a disk.
     *
     * @param texts the texts; those of one folder see each other and, among these texts, those of the folders from which they import; nothing
     *              on a disk
     * @return what was read, with all remarks
     */
    public Checked checkTexts(List<SourceText> texts) {
        return checkTexts(texts, ApprovedRevisions.none());
    }

    /**
     * Checks texts that need not be on a disk, and compares the procedures in them with what was approved.
     *
     * @param texts    the texts, as in {@link #checkTexts(List)}
     * @param approved tells what was approved
     * @return what was read, with all remarks
     */
    public Checked checkTexts(List<SourceText> texts, ApprovedRevisions approved) {
        return check(texts.stream().map(ReadText::of).toList(), false, approved);
    }

    /**
     * A text laid out: lines, indentation and blanks; no word and no comment changes.
     *
     * @param text a text
     * @return the text laid out; empty where it has syntax errors, and so stays as it is
     */
    public Optional<String> format(SourceText text) {
        ParsedFile file = new ParsedFile(injector, ReadText.of(text));
        injector.getInstance(XtextResourceSet.class).getResources().add(file.resource());
        file.parse();
        if (file.isTooDeep() || !file.text().remarks().isEmpty() || file.resource().getParseResult().hasSyntaxErrors()) {
            return Optional.empty();
        }
        StringBuilder formatted = new StringBuilder(file.text().text());
        List<Layout.Gap> gaps = Layout.changes(file.text().text(), file.resource().getParseResult().getRootNode());
        for (int i = gaps.size() - 1; i >= 0; i--) {
            formatted.replace(gaps.get(i).offset(), gaps.get(i).offset() + gaps.get(i).length(), gaps.get(i).blanks());
        }
        return Optional.of(formatted.toString());
    }

    private Checked check(Collection<ReadText> texts, boolean onDisk, ApprovedRevisions approved) {
        Map<Path, List<ReadText>> byFolder = new LinkedHashMap<>();
        for (ReadText text : texts) {
            byFolder.computeIfAbsent(text.folder(), folder -> new ArrayList<>()).add(text);
        }
        List<CheckedFile> checked = new ArrayList<>();
        byFolder.forEach((folder, inFolder) -> {
            List<ReadText> neighbours = onDisk ? neighbours(folder, inFolder) : List.of();
            Function<Path, List<ReadText>> others = onDisk ? other -> neighbours(other, List.of()) : other -> byFolder.getOrDefault(other, List.of());
            checked.addAll(new FolderCheck(injector, inFolder, neighbours, others).files(approved));
        });
        return new Checked(checked);
    }

    private static void gather(Path path, Map<Path, ReadText> texts) {
        if (!Files.isDirectory(path)) {
            texts.computeIfAbsent(path, ReadText::read);
            return;
        }
        try (Stream<Path> below = Files.walk(path)) {
            below.filter(file -> isOurs(file) || isCalledLikeOurs(file) && Files.isSymbolicLink(file) && Files.notExists(file))
                    .forEach(file -> texts.computeIfAbsent(file, ReadText::read));
        } catch (IOException | UncheckedIOException unreadable) {
            texts.put(path, ReadText.unreadable(path, unreadable));
        }
    }

    private static List<ReadText> neighbours(Path folder, List<ReadText> given) {
        List<Path> known = given.stream().map(ReadText::path).toList();
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> isOurs(file) && !known.contains(file)).sorted().map(ReadText::read).toList();
        } catch (IOException | UncheckedIOException unreadable) {
            // The file itself has its own remark if it can't be read; without its folder it merely sees no other file.
            return List.of();
        }
    }

    /**
     * Whether a file is a family or a procedure by its name.
     *
     * @param file a path
     * @return true if it ends so and is a file
     */
    public static boolean isOurs(Path file) {
        return isCalledLikeOurs(file) && Files.isRegularFile(file);
    }

    private static boolean isCalledLikeOurs(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.endsWith(FAMILY_ENDING) || name.endsWith(PROCEDURE_ENDING);
    }
}
