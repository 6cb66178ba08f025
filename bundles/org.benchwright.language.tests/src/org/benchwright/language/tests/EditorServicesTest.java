package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

import org.benchwright.language.ide.ProcedureHighlighting;
import org.benchwright.language.ide.ProcedureIdeSetup;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.ide.editor.contentassist.ContentAssistContext;
import org.eclipse.xtext.ide.editor.contentassist.ContentAssistEntry;
import org.eclipse.xtext.ide.editor.contentassist.IIdeContentProposalAcceptor;
import org.eclipse.xtext.ide.editor.contentassist.IdeContentProposalProvider;
import org.eclipse.xtext.ide.editor.contentassist.antlr.ContentAssistContextFactory;
import org.eclipse.xtext.ide.editor.syntaxcoloring.ISemanticHighlightingCalculator;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.util.LazyStringInputStream;
import org.eclipse.xtext.util.TextRegion;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

import com.google.inject.Injector;

/** What any editor gets from the language without a workbench: proposals and the colours of names. */
class EditorServicesTest {

    private static final Injector EDITOR = new ProcedureIdeSetup().createInjectorAndDoEMFRegistration();
    private static final ExecutorService POOL = Executors.newSingleThreadExecutor();

    @AfterAll
    static void stop() {
        POOL.shutdownNow();
    }

    private static XtextResource open(String text) throws IOException {
        XtextResource resource = (XtextResource) EDITOR.getInstance(XtextResourceSet.class)
                .createResource(URI.createURI("synthetic:/all.procedure"));
        resource.load(new LazyStringInputStream(text, "UTF-8"), Map.of(XtextResource.OPTION_ENCODING, "UTF-8"));
        return resource;
    }

    private static List<String> proposals(String passage) throws IOException {
        String text = Bench.FAMILY + Bench.PROCEDURE;
        int at = text.indexOf(passage) + passage.length();
        assertTrue(at >= passage.length(), passage);
        ContentAssistContextFactory contexts = EDITOR.getInstance(ContentAssistContextFactory.class);
        contexts.setPool(POOL);
        ContentAssistContext[] found = contexts.create(text, new TextRegion(at, 0), at, open(text));
        List<String> proposals = new ArrayList<>();
        EDITOR.getInstance(IdeContentProposalProvider.class)
                .createProposals(List.of(found), new IIdeContentProposalAcceptor() {
            @Override
            public void accept(ContentAssistEntry entry, int priority) {
                if (entry != null) {
                    proposals.add(entry.getProposal());
                }
            }

            @Override
            public boolean canAcceptMoreProposals() {
                return true;
            }
        });
        return proposals;
    }

    @Test
    void namesOfTheFamilyAreOfferedWhereALampIsExpected() throws IOException {
        List<String> offered = proposals("            expect ");
        assertTrue(offered.containsAll(List.of("pwr", "flt", "ok", "out", "code", "mode", "any")), offered::toString);
    }

    @Test
    void stagesAndStepsAreOfferedBehindGoTo() throws IOException {
        List<String> offered = proposals("otherwise go to ");
        assertTrue(offered.containsAll(List.of("read_log", "endurance", "matched")), offered::toString);
        assertTrue(!offered.contains("drain"), offered::toString);
    }

    @Test
    void statementsAreOfferedInAStep() throws IOException {
        List<String> offered = proposals("step fit \"Fit the unit.\" {");
        assertTrue(offered.containsAll(List.of("fits", "expect", "measure", "otherwise")), offered::toString);
        assertTrue(!offered.contains("hazard"), offered::toString);
    }

    @Test
    void namesAreSetApartFromKeywords() throws IOException {
        String text = "family a \"A\" {\n lamp lamp red \"L\"\n modes mode\n mode mode shows lamp lamp steady\n}";
        List<String> styled = new ArrayList<>();
        EDITOR.getInstance(ISemanticHighlightingCalculator.class).provideHighlightingFor(open(text),
                (offset, length, ids) -> styled.add(ids[0] + " " + offset + " " + text.substring(offset, offset + length)),
                CancelIndicator.NullImpl);
        int shown = text.indexOf("mode mode shows");
        assertEquals(List.of(ProcedureHighlighting.DEFINITION_ID + " 7 a", ProcedureHighlighting.DEFINITION_ID + " 21 lamp",
                ProcedureHighlighting.DEFINITION_ID + " " + (text.indexOf("modes") + 6) + " mode",
                ProcedureHighlighting.REFERENCE_ID + " " + (shown + 5) + " mode",
                ProcedureHighlighting.REFERENCE_ID + " " + (text.lastIndexOf("lamp")) + " lamp"), styled);
    }
}
