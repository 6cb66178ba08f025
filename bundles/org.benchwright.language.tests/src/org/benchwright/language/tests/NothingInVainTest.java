package org.benchwright.language.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

import org.benchwright.language.CheckedFile;
import org.benchwright.language.SourceText;
import org.benchwright.language.internal.compile.PlanCompiler;
import org.benchwright.language.internal.inspect.Inspections;
import org.benchwright.language.internal.inspect.KnownRisks;
import org.benchwright.language.internal.parse.PerStep;
import org.benchwright.model.Named;
import org.benchwright.model.ProcedureFile;
import org.benchwright.model.ProcedurePackage;
import org.eclipse.emf.common.util.Enumerator;
import org.eclipse.emf.ecore.EAttribute;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EEnum;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.util.CancelIndicator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Nothing that can be written is passed over in silence: each part of the language, said otherwise, changes a plan or what
 * is remarked on.
 */
class NothingInVainTest {

    private static final CheckedFile SAMPLE = checked();

    private static CheckedFile checked() {
        SourceText own = new SourceText(Bench.FOLDER.resolve("crane.procedure"), EverythingSaid.TEXT);
        return Bench.LANGUAGE.checkTexts(List.of(new SourceText(Bench.FAMILY_FILE, Bench.FAMILY), own)).files().stream()
                .filter(file -> file.path().equals(own.path())).findFirst().orElseThrow();
    }

    @Test
    void theSampleHasNoRemarks() {
        assertEquals(List.of(), Bench.printed(SAMPLE.remarks()));
    }

    /** A part that can be written, and everything in the sample that has it. */
    record Part(EStructuralFeature feature, List<EObject> holders) {
        @Override
        public String toString() {
            return feature.getEContainingClass().getName() + "." + feature.getName();
        }
    }

    static Stream<Part> parts() {
        List<Part> parts = new ArrayList<>();
        ProcedurePackage.eINSTANCE.getEClassifiers().stream().filter(EClass.class::isInstance).map(EClass.class::cast)
                .forEach(kind -> kind.getEStructuralFeatures()
                        .forEach(feature -> parts.add(new Part(feature, holders(feature)))));
        // Which file is imported matters (Import.path); that one is imported at all matters by what is found there, as
        // CheckedFilesTest shows.
        return parts.stream().filter(part -> part.feature() != ProcedurePackage.Literals.PROCEDURE_FILE__IMPORTS);
    }

    private static List<EObject> holders(EStructuralFeature feature) {
        List<EObject> holders = new ArrayList<>();
        ProcedureFile file = SAMPLE.content();
        Stream.concat(Stream.of(file), stream(file))
                .filter(each -> feature.getEContainingClass().isSuperTypeOf(each.eClass())
                && (each.eIsSet(feature) || isWord(feature)))
                .forEach(holders::add);
        return holders;
    }

    /** One of a few words, or there or not: its first counts as unset in a model, and can be said otherwise nevertheless. */
    private static boolean isWord(EStructuralFeature feature) {
        return feature.getEType() instanceof EEnum || feature.getEType().getInstanceClass() == boolean.class;
    }

    private static Stream<EObject> stream(EObject root) {
        List<EObject> all = new ArrayList<>();
        root.eAllContents().forEachRemaining(all::add);
        return all.stream();
    }

    @ParameterizedTest
    @MethodSource("parts")
    void saidOtherwiseItChangesAPlanOrIsRemarkedOn(Part part) {
        assertEquals(false, part.holders().isEmpty(), () -> "the sample says nothing of it");
        List<String> before = meaning();
        boolean changes = part.holders().stream().anyMatch(holder -> ways(holder, part.feature()).stream().anyMatch(way -> {
            Runnable undo = way.say();
            List<String> after = meaning();
            undo.run();
            return !before.equals(after);
        })) || part.holders().stream().anyMatch(holder -> isNeededByName(holder, part.feature()));
        assertEquals(before, meaning(), "everything is as it was");
        assertEquals(true, changes, () -> "it is passed over in silence");
    }

    /** All plans and remarks. */
    private static List<String> meaning() {
        List<String> meaning = new ArrayList<>();
        SAMPLE.content().getProcedures().forEach(procedure -> {
            try {
                meaning.add(PlanCompiler.compile(procedure).toString());
            } catch (RuntimeException incomplete) {
                // A part that has to be there is gone: without it there is no plan at all.
                meaning.add("no plan: " + incomplete.getClass());
            }
        });
        Set<String> remarks = new TreeSet<>();
        new Inspections(new KnownRisks()).inspect(SAMPLE.content(), new PerStep<>(), CancelIndicator.NullImpl)
                .forEach(noted -> remarks.add(noted.code() + " " + noted.words() + " " + noted.thing().eClass().getName()));
        meaning.addAll(remarks);
        return meaning;
    }

    /** A way to say a part otherwise. */
    private interface Way {
        /** Says it; what is given back undoes it. */
        Runnable say();
    }

    private static List<Way> ways(EObject holder, EStructuralFeature feature) {
        return feature.isMany() ? waysOfList(holder, feature) : waysOfOne(holder, feature);
    }

    private static List<Way> waysOfOne(EObject holder, EStructuralFeature feature) {
        Object value = holder.eGet(feature);
        Runnable undo = () -> holder.eSet(feature, value);
        List<Way> ways = new ArrayList<>();
        List<Object> others = feature instanceof EAttribute attribute && attribute.getEType() instanceof EEnum kind
                ? List.of(next(kind, value))
                : feature instanceof EReference reference && !reference.isContainment() ? alike(value) : others(value);
        for (Object other : others) {
            ways.add(() -> {
                holder.eSet(feature, other);
                return undo;
            });
        }
        ways.add(() -> {
            holder.eUnset(feature);
            return undo;
        });
        return ways;
    }

    private static List<Way> waysOfList(EObject holder, EStructuralFeature feature) {
        @SuppressWarnings("unchecked") // a list that the model itself gave
        List<Object> list = (List<Object>) holder.eGet(feature);
        List<Object> as = List.copyOf(list);
        Runnable undo = () -> {
            list.clear();
            list.addAll(as);
        };
        List<Way> ways = new ArrayList<>();
        ways.add(() -> {
            list.remove(list.size() - 1);
            return undo;
        });
        if (feature instanceof EReference reference && !reference.isContainment()) {
            alike(as.get(0)).stream().filter(other -> !as.contains(other)).forEach(other -> ways.add(() -> {
                list.add(other);
                return undo;
            }));
        }
        return ways;
    }

    /** Others of the same class in the sample. */
    private static List<Object> alike(Object value) {
        return stream(SAMPLE.content()).filter(each -> each != value && each.eClass() == ((EObject) value).eClass())
                .map(Object.class::cast).toList();
    }

    /**
     * What is declared here is referred to elsewhere: without it that name would lead nowhere, which is remarked on in a
     * text.
     */
    private static boolean isNeededByName(EObject holder, EStructuralFeature feature) {
        if (!(feature instanceof EReference reference) || !reference.isContainment() || !feature.isMany()) {
            return false;
        }
        List<?> declared = (List<?>) holder.eGet(feature);
        return declared.stream().anyMatch(each -> each instanceof Named
                && stream(SAMPLE.content()).anyMatch(user -> user.eCrossReferences().contains(each)));
    }

    private static Object next(EEnum kind, Object value) {
        int at = 0;
        for (int i = 0; i < kind.getELiterals().size(); i++) {
            Enumerator literal = kind.getELiterals().get(i).getInstance();
            at = literal.equals(value) ? i : at;
        }
        return kind.getELiterals().get((at + 1) % kind.getELiterals().size()).getInstance();
    }

    private static List<Object> others(Object value) {
        if (value instanceof String text) {
            return List.of(text + "x");
        } else if (value instanceof Integer number) {
            return List.of(number + 1, number - 1);
        } else if (value instanceof BigDecimal number) {
            return List.of(number.add(BigDecimal.ONE), number.movePointLeft(3));
        }
        return value instanceof Boolean truth ? List.of(!truth) : List.of();
    }

    /** References that are no containment lead somewhere else or nowhere; the test relies on all kinds being there. */
    @Test
    void thereAreReferencesAndValues() {
        assertEquals(true, parts().filter(part -> part.feature() instanceof EReference).count() > 60);
        assertEquals(true, parts().filter(part -> part.feature() instanceof EAttribute).count() > 60);
    }
}
