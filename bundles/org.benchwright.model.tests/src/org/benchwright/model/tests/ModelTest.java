package org.benchwright.model.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.model.ProcedurePackage;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EClassifier;
import org.eclipse.emf.ecore.EDataType;
import org.eclipse.emf.ecore.EEnum;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.junit.jupiter.api.Test;

/** The generated model is the one that was drawn. */
class ModelTest {

    private static List<EClass> classes() {
        return ProcedurePackage.eINSTANCE.getEClassifiers().stream().filter(EClass.class::isInstance).map(EClass.class::cast).toList();
    }

    @Test
    void everyClassCanBeMadeUnlessItIsAbstract() {
        assertTrue(classes().size() > 60);
        classes().stream().filter(kind -> !kind.isAbstract())
                .forEach(kind -> assertSameClass(kind, EcoreUtil.create(kind).eClass()));
    }

    private static void assertSameClass(EClass drawn, EClass made) {
        assertEquals(drawn, made);
    }

    @Test
    void everythingButTheFileItselfHasAPlace() {
        List<EClass> held = classes().stream().flatMap(kind -> kind.getEReferences().stream()).filter(EReference::isContainment)
                .map(EReference::getEReferenceType).toList();
        List<String> nowhere = classes().stream().filter(kind -> !kind.isAbstract())
                .filter(kind -> held.stream().noneMatch(place -> place.isSuperTypeOf(kind))).map(EClass::getName).toList();
        assertEquals(List.of("ProcedureFile"), nowhere);
    }

    @Test
    void theWordsOfTheCoreAreItsOwnTypes() {
        for (EClassifier kind : ProcedurePackage.eINSTANCE.getEClassifiers()) {
            if (kind instanceof EDataType && !(kind instanceof EEnum)) {
                assertNotNull(kind.getInstanceClass());
                assertEquals("org.benchwright.core", kind.getInstanceClass().getPackageName());
            }
        }
    }
}
