package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Both products, put together for three systems: nothing lacks, and nothing of another system is in them. */
class CompletenessTest {

	private static final String MAC = "macosx/cocoa/aarch64/Benchwright.app/Contents/Eclipse";
	private static final List<String> WIDGETS = List.of("org.eclipse.swt.gtk.linux.x86_64", "org.eclipse.swt.win32.win32.x86_64",
			"org.eclipse.swt.cocoa.macosx.aarch64");

	@ParameterizedTest
	@CsvSource({ "linux/gtk/x86_64, benchwright, bench, org.eclipse.swt.gtk.linux.x86_64",
			"win32/win32/x86_64, benchwright.cmd, bench.cmd, org.eclipse.swt.win32.win32.x86_64",
			MAC + ", benchwright.command, bench, org.eclipse.swt.cocoa.macosx.aarch64" })
	void theWindowHasItsScriptsAndTheWidgetsOfItsSystemAlone(String system, String window, String commands, String widgets) throws Exception {
		Path home = Product.home("org.benchwright.workbench", system);
		assertStarts(home.resolve(window), "-jar");
		assertStarts(home.resolve(commands), "org.benchwright.cli.application");
		assertEquals("org.benchwright.ui.product", configuration(home).getProperty("eclipse.product"));
		assertEquals(List.of(widgets), WIDGETS.stream().filter(fragment -> has(home, fragment)).toList());
		assertTrue(has(home, "org.benchwright.ui") && has(home, "org.benchwright.cli"));
		assertWhole(home);
	}

	@ParameterizedTest
	@CsvSource({ "linux/gtk/x86_64, bench", "win32/win32/x86_64, bench.cmd", MAC + ", bench" })
	void theCommandsHaveTheirScriptAndNothingOfTheWindow(String system, String script) throws Exception {
		Path home = Product.home("org.benchwright.headless", system);
		assertStarts(home.resolve(script), "org.benchwright.cli.application");
		assertEquals("org.benchwright.cli.application", configuration(home).getProperty("eclipse.application"));
		assertTrue(has(home, "org.benchwright.cli"));
		assertEquals(List.of(), plugins(home).stream()
				.filter(name -> name.matches("org\\.eclipse\\.(swt|jface|ui|e4)\\b.*|org\\.benchwright\\.ui_.*")).toList());
		assertWhole(home);
	}

	@ParameterizedTest
	@CsvSource({ "org.benchwright.headless", "org.benchwright.workbench" })
	void commandsRunByTheirScript(String product, @TempDir Path folder) throws Exception {
		Path out = folder.resolve("out");
		ProcessBuilder builder = new ProcessBuilder(Product.home(product, "linux/gtk/x86_64").resolve("bench").toString(),
				"-configuration", folder.resolve("configuration").toString(), "--version").redirectOutput(out.toFile());
		builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
		assertEquals(0, builder.start().waitFor());
		assertTrue(Files.readString(out).matches("Benchwright \\d+\\.\\d+\\.\\d+\\R"), Files.readString(out));
	}

	@Test
	void onMacTheWindowIsOnTheFirstThread() throws Exception {
		assertStarts(Product.home("org.benchwright.workbench", MAC).resolve("benchwright.command"), "-XstartOnFirstThread");
	}

	/** A script that names the launcher, and what else it must. */
	private static void assertStarts(Path script, String what) throws IOException {
		assertTrue(Files.isRegularFile(script), script + " is there");
		assertTrue(Files.isExecutable(script) || script.toString().endsWith(".cmd"), script + " can be run");
		String text = Files.readString(script);
		assertTrue(text.contains("org.eclipse.equinox.launcher_*.jar") && text.contains(what), text);
	}

	/** Every bundle that is to be installed is there, the launcher among them. */
	private static void assertWhole(Path home) throws IOException {
		Path bundles = home.resolve("configuration/org.eclipse.equinox.simpleconfigurator/bundles.info");
		List<String> missing = Files.readAllLines(bundles).stream().filter(line -> !line.startsWith("#")).map(line -> line.split(",")[2])
				.filter(file -> !Files.exists(home.resolve(file))).toList();
		assertEquals(List.of(), missing);
		assertTrue(has(home, "org.eclipse.equinox.launcher"));
	}

	private static Properties configuration(Path home) throws IOException {
		Properties properties = new Properties();
		try (var in = Files.newInputStream(home.resolve("configuration/config.ini"))) {
			properties.load(in);
		}
		return properties;
	}

	private static boolean has(Path home, String bundle) {
		try {
			return plugins(home).stream().anyMatch(name -> name.startsWith(bundle + "_"));
		} catch (IOException e) {
			throw new AssertionError(home + " can't be read", e);
		}
	}

	private static List<String> plugins(Path home) throws IOException {
		try (Stream<Path> plugins = Files.list(home.resolve("plugins"))) {
			return plugins.map(file -> file.getFileName().toString()).toList();
		}
	}
}
