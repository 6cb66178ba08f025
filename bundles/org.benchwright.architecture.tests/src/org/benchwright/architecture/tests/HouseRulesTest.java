package org.benchwright.architecture.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

import org.junit.jupiter.api.Test;

/** Rules of the house that no compiler checks. */
class HouseRulesTest {

	private static final Pattern CLASS_ATTRIBUTE = Pattern.compile("\\bclass=\"([^\":]+)");

	@Test
	void everyPackageSaysWhatItIsFor() {
		List<Path> silent = Checkout.sourceFolders().stream()
				.flatMap(source -> Checkout.filesBelow(source, ".java").stream())
				.map(Path::getParent)
				.distinct()
				.filter(folder -> !Files.exists(folder.resolve("package-info.java")))
				.toList();
		assertEquals(List.of(), silent);
	}

	@Test
	void everyClassNamedInAnExtensionExists() throws Exception {
		int named = 0;
		for (Path bundle : Checkout.bundles()) {
			Path extensions = bundle.resolve("plugin.xml");
			if (Files.exists(extensions)) {
				List<String> names = CLASS_ATTRIBUTE.matcher(Files.readString(extensions)).results()
						.map(MatchResult::group).map(text -> text.substring("class=\"".length())).toList();
				named += names.size();
				assertEquals(List.of(), names.stream().filter(name -> !isCompiled(bundle, name)).toList(),
						extensions.toString());
			}
		}
		assertFalse(named == 0, "no extension was found");
	}

	private static boolean isCompiled(Path bundle, String className) {
		return Files.exists(bundle.resolve("target/classes").resolve(className.replace('.', '/') + ".class"));
	}

	@Test
	void onlyTheCommandLinePrints() {
		assertEquals(List.of(), CompiledClasses.ALL.thatPrint());
	}

	@Test
	void noStaticFieldCanBeSetAgain() {
		assertEquals(List.of(), CompiledClasses.ALL.mutableStatics());
	}

	@Test
	void everyTestHasANameThatTheRunnerPicksUp() {
		assertEquals(List.of(), CompiledClasses.ALL.testsThatNeverRun());
	}

	@Test
	void everyPropertyIsRun() {
		assertEquals(List.of(), CompiledClasses.ALL.propertiesThatNeverRun());
	}
}
