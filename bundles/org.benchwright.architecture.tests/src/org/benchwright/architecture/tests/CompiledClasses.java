package org.benchwright.architecture.tests;

import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import com.tngtech.archunit.ArchConfiguration;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;

/** The classes of all bundles, read once. */
final class CompiledClasses {

    static final CompiledClasses ALL = new CompiledClasses(importer().importPaths(Checkout.classFolders()), CompiledClasses::isOfTheProduct);

    private static final List<String> TEST_ANNOTATIONS = List.of("org.junit.jupiter.api.Test",
            "org.junit.jupiter.api.RepeatedTest", "org.junit.jupiter.params.ParameterizedTest");

    private static final Set<String> SIMPLEST = Set.of("java.lang.Object", "java.lang.Record", "java.lang.Enum", "java.lang.Exception",
            "java.lang.RuntimeException", "java.lang.Throwable", "java.lang.Comparable", "java.lang.constant.Constable", "java.io.Serializable");

    private final JavaClasses classes;
    private final Predicate<JavaClass> ofTheProduct;

    private CompiledClasses(JavaClasses classes, Predicate<JavaClass> ofTheProduct) {
        this.classes = classes;
        this.ofTheProduct = ofTheProduct;
    }

    /** These alone, each taken for one of the product: so that it can be seen whether a rule finds what breaks it. */
    static CompiledClasses of(Class<?>... samples) {
        return new CompiledClasses(importer().importClasses(samples), sample -> true);
    }

    private static ClassFileImporter importer() {
        // Names are all that is looked at; reading the JDK's classes as well would take most of the time.
        ArchConfiguration.get().setResolveMissingDependenciesFromClassPath(false);
        return new ClassFileImporter();
    }

    int size() {
        return classes.size();
    }

    /** What the classes break of the arrows and of the rules for libraries: one line per pair of bundle and target. */
    Set<String> objections(Arrows arrows) {
        Set<String> objections = new TreeSet<>();
        for (JavaClass type : classes) {
            String bundle = arrows.bundleOf(type.getPackageName()).orElseThrow();
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                objection(arrows, bundle, dependency.getTargetClass())
                        .ifPresent(words -> objections.add(type.getName() + ": " + words));
            }
        }
        return objections;
    }

    private static Optional<String> objection(Arrows arrows, String bundle, JavaClass target) {
        JavaClass type = target.getBaseComponentType();
        return arrows.bundleOf(type.getPackageName())
                .map(to -> arrows.objection(bundle, to, type.getPackageName()))
                .orElseGet(() -> Foreign.objection(bundle, type.getName()));
    }

    /** Hand-written classes, other than tests and the command line, that print rather than report. */
    List<String> thatPrint() {
        return product().filter(type -> !type.getPackageName().startsWith("org.benchwright.cli"))
                .filter(CompiledClasses::prints)
                .map(JavaClass::getName)
                .sorted().toList();
    }

    private static boolean prints(JavaClass type) {
        return type.getFieldAccessesFromSelf().stream().anyMatch(CompiledClasses::isStandardStream)
                || type.getMethodCallsFromSelf().stream().anyMatch(CompiledClasses::isPrintStackTrace);
    }

    private static boolean isStandardStream(JavaFieldAccess access) {
        return access.getTargetOwner().isEquivalentTo(System.class)
                && Set.of("out", "err").contains(access.getTarget().getName());
    }

    private static boolean isPrintStackTrace(JavaMethodCall call) {
        return call.getTarget().getName().equals("printStackTrace");
    }

    /** Hand-written static fields that can be set again. */
    List<String> mutableStatics() {
        return product().flatMap(type -> type.getFields().stream())
                .filter(field -> field.getModifiers().contains(JavaModifier.STATIC))
                .filter(field -> !field.getModifiers().contains(JavaModifier.FINAL))
                .filter(field -> !field.getModifiers().contains(JavaModifier.SYNTHETIC) && !field.getName().startsWith("$"))
                .map(JavaField::getFullName)
                .sorted().toList();
    }

    /** Hand-written classes that use a type. */
    List<String> thatUse(String typeName) {
        return product().filter(type -> type.getDirectDependenciesFromSelf().stream()
                .anyMatch(dependency -> dependency.getTargetClass().getName().equals(typeName)))
                .map(JavaClass::getName)
                .sorted().toList();
    }

    /**
     * Texts that have a name and are asked for by nobody. Texts are the constants of an enum with a method {@code text} that takes arguments;
     * where a text is found by the name of a constant elsewhere ({@code valueOf}), that constant asks for it.
     */
    List<String> textsThatNobodyShows() {
        Set<String> asked = product().flatMap(type -> type.getFieldAccessesFromSelf().stream())
                .filter(access -> !access.getOriginOwner().equals(access.getTargetOwner())
                        || !Set.of("<clinit>", "$values").contains(access.getOrigin().getName()))
                .map(access -> access.getTarget().getFullName())
                .collect(Collectors.toSet());
        return product().filter(CompiledClasses::isTexts)
                .flatMap(texts -> constants(texts).filter(text -> !asked.contains(text.getFullName()))
                        .filter(text -> !isFoundByName(texts) || !isConstantElsewhere(text)))
                .map(JavaField::getFullName)
                .sorted().toList();
    }

    private static boolean isTexts(JavaClass type) {
        return type.isEnum() && type.getMethods().stream()
                .anyMatch(method -> method.getName().equals("text") && method.getRawParameterTypes().stream().anyMatch(JavaClass::isArray));
    }

    private static Stream<JavaField> constants(JavaClass type) {
        return type.getFields().stream().filter(field -> field.getRawType().equals(type));
    }

    private boolean isFoundByName(JavaClass texts) {
        return texts.getMethodCallsToSelf().stream()
                .anyMatch(call -> call.getName().equals("valueOf") && !call.getOriginOwner().equals(texts));
    }

    private boolean isConstantElsewhere(JavaField text) {
        return product().filter(type -> type.isEnum() && !type.equals(text.getOwner())).flatMap(CompiledClasses::constants)
                .anyMatch(constant -> constant.getName().equals(text.getName()));
    }

    /**
     * Hand-written methods that nobody calls, not even a test. Looked at are classes whose supertypes are all ours or the JDK's simplest,
     * because what a library calls is seen in no class; and of those not what is private, carries an annotation, or belongs to a record.
     */
    List<String> methodsThatNobodyCalls() {
        Set<String> called = classes.stream()
                .flatMap(type -> Stream.concat(type.getMethodCallsFromSelf().stream(), type.getMethodReferencesFromSelf().stream()))
                .filter(call -> !call.getOrigin().getFullName().equals(call.getTarget().getFullName()))
                .map(call -> call.getTargetOwner().getName() + "." + called(call.getTarget().getName(), call.getTarget().getRawParameterTypes()))
                .collect(Collectors.toSet());
        return product().filter(CompiledClasses::standsAlone)
                .flatMap(type -> type.getMethods().stream())
                .filter(method -> !isCalledByOthers(method))
                .filter(method -> Stream.of(Stream.of(method.getOwner()), method.getOwner().getAllRawSuperclasses().stream(),
                        method.getOwner().getAllRawInterfaces().stream(), method.getOwner().getAllSubclasses().stream())
                        .flatMap(related -> related)
                        .noneMatch(related -> called.contains(related.getName() + "." + called(method.getName(), method.getRawParameterTypes()))))
                .map(JavaMethod::getFullName)
                .sorted().toList();
    }

    private static String called(String name, List<JavaClass> parameters) {
        return name + parameters.stream().map(JavaClass::getName).toList();
    }

    private static boolean standsAlone(JavaClass type) {
        return Stream.concat(type.getAllRawSuperclasses().stream(), type.getAllRawInterfaces().stream())
                .allMatch(above -> above.getPackageName().startsWith("org.benchwright") || SIMPLEST.contains(above.getName()));
    }

    private static boolean isCalledByOthers(JavaMethod method) {
        return method.getModifiers().contains(JavaModifier.SYNTHETIC) || method.getModifiers().contains(JavaModifier.PRIVATE)
                || !method.getAnnotations().isEmpty()
                || method.getOwner().isEnum() && Set.of("values", "valueOf").contains(method.getName())
                || method.getOwner().isRecord() && method.getRawParameterTypes().isEmpty()
                || Set.of("main", "toString", "equals", "hashCode").contains(method.getName());
    }

    /** Hand-written methods in which more lines than that lie between the first and the last call. */
    List<String> methodsLongerThan(int lines) {
        return product().flatMap(type -> type.getMethods().stream())
                .filter(method -> linesOf(method) > lines)
                .map(JavaMethod::getFullName)
                .sorted().toList();
    }

    private static int linesOf(JavaMethod method) {
        IntSummaryStatistics lines = method.getAccessesFromSelf().stream().mapToInt(access -> access.getLineNumber()).summaryStatistics();
        return lines.getCount() == 0 ? 0 : lines.getMax() - lines.getMin() + 1;
    }

    /** Classes with tests that the runner does not pick up, because of their name. */
    List<String> testsThatNeverRun() {
        return classes.stream()
                .filter(type -> type.getMethods().stream().anyMatch(CompiledClasses::isTest))
                .map(type -> type.getName().replaceFirst("\\$.*", ""))
                .filter(name -> !name.endsWith("Test"))
                .distinct().sorted().toList();
    }

    /** Classes with properties that nobody runs. The test kit's own tests run theirs by hand. */
    List<String> propertiesThatNeverRun() {
        return classes.stream()
                .filter(type -> !type.getPackageName().startsWith("org.benchwright.testkit"))
                .filter(type -> type.getMethods().stream()
                        .anyMatch(method -> method.isAnnotatedWith("net.jqwik.api.Property")))
                .filter(type -> !type.getName().endsWith("Test")
                        || !type.isAssignableTo("org.benchwright.testkit.PropertyTest"))
                .map(JavaClass::getName)
                .sorted().toList();
    }

    /** What hand-written classes name of these libraries: types, and methods as {@code Type.method}. Tests are left out. */
    Set<String> named(String... libraries) {
        Set<String> named = new TreeSet<>();
        product().forEach(type -> {
            type.getDirectDependenciesFromSelf().stream().map(dependency -> dependency.getTargetClass().getBaseComponentType())
                    .filter(target -> Stream.of(libraries).anyMatch(target.getPackageName()::startsWith))
                    .forEach(target -> named.add(target.getSimpleName()));
            Stream.concat(type.getMethodCallsFromSelf().stream(), type.getMethodReferencesFromSelf().stream())
                    .filter(call -> Stream.of(libraries).anyMatch(call.getTargetOwner().getPackageName()::startsWith))
                    .forEach(call -> named.add(call.getTargetOwner().getSimpleName() + "." + call.getTarget().getName()));
        });
        return named;
    }

    private static boolean isTest(JavaMethod method) {
        return TEST_ANNOTATIONS.stream().anyMatch(method::isAnnotatedWith);
    }

    private Stream<JavaClass> product() {
        return classes.stream().filter(ofTheProduct);
    }

    private static boolean isOfTheProduct(JavaClass type) {
        return !type.getPackageName().contains(".tests") && !type.getPackageName().contains(".testkit") && Checkout.isHandWritten(type.getName());
    }
}
