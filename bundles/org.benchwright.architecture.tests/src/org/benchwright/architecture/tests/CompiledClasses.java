package org.benchwright.architecture.tests;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
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

	static final CompiledClasses ALL = new CompiledClasses();

	private static final List<String> TEST_ANNOTATIONS = List.of("org.junit.jupiter.api.Test",
			"org.junit.jupiter.api.RepeatedTest", "org.junit.jupiter.params.ParameterizedTest");

	private final JavaClasses classes;

	private CompiledClasses() {
		// Names are all that is looked at; reading the JDK's classes as well would take most of the time.
		ArchConfiguration.get().setResolveMissingDependenciesFromClassPath(false);
		classes = new ClassFileImporter().importPaths(Checkout.classFolders());
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
		return classes.stream()
				.filter(type -> !type.getPackageName().contains(".tests") && !type.getPackageName().contains(".testkit"))
				.filter(type -> Checkout.isHandWritten(type.getName()));
	}
}
