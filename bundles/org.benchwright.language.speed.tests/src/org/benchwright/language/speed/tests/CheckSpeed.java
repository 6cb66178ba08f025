package org.benchwright.language.speed.tests;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

import org.benchwright.language.Checked;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureStandaloneSetup;
import org.benchwright.language.SourceText;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.LazyStringInputStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

import com.google.inject.Injector;

/** A check of a library of procedures of 100 steps, beside what parsing and linking the same texts takes. On one thread. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class CheckSpeed {

    /** How many procedures. */
    @Param("10")
    public int files;

    private List<SourceText> texts;
    private LanguageServices language;
    private Injector framework;

    /** Makes the library. */
    @Setup
    public void library() {
        texts = Library.files(Path.of("/library"), files);
        language = LanguageServices.create();
        framework = new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration();
    }

    /** The baseline: the framework's own parsing and linking into objects, nothing looked at. */
    @Benchmark
    public Object link() throws IOException {
        XtextResourceSet folder = framework.getInstance(XtextResourceSet.class);
        for (SourceText text : texts) {
            Resource file = folder.createResource(URI.createFileURI(text.path().toString()));
            file.load(new LazyStringInputStream(text.text(), "UTF-8"), Map.of());
        }
        EcoreUtil.resolveAll(folder);
        return folder;
    }

    /** The check. */
    @Benchmark
    public Object check() {
        Checked checked = language.checkTexts(texts);
        if (!checked.remarks().isEmpty()) {
            throw new IllegalStateException("the library is not sound: " + checked.remarks().get(0));
        }
        return checked;
    }
}
