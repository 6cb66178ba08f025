package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The product with the window: put together for three systems, and started on this one. Needs a display. */
class WindowProductTest {

	private static final Path PRODUCTS = Path.of("..", "..", "releng", "org.benchwright.product", "target", "products");
	private static final int PATIENCE_SECONDS = 120;

	@TempDir
	private Path folder;

	@ParameterizedTest
	@CsvSource({ "linux/gtk/x86_64, benchwright, org.eclipse.swt.gtk.linux.x86_64",
			"win32/win32/x86_64, benchwright.cmd, org.eclipse.swt.win32.win32.x86_64",
			"macosx/cocoa/aarch64/Benchwright.app/Contents/Eclipse, benchwright.command, org.eclipse.swt.cocoa.macosx.aarch64" })
	void eachSystemHasItsStartScriptAndItsWidgets(String system, String script, String widgets) throws Exception {
		Path home = home("org.benchwright.workbench", system);
		assertTrue(Files.isRegularFile(home.resolve(script)), script);
		assertEquals(1, plugins(home).stream().filter(name -> name.startsWith("org.eclipse.swt.") && name.startsWith(widgets)).count());
		assertEquals(1, plugins(home).stream().filter(name -> name.startsWith("org.benchwright.ui_")).count());
	}

	@Test
	void theCommandsHaveNothingOfTheWindowWithThem() throws Exception {
		List<String> plugins = plugins(home("org.benchwright.headless", "linux/gtk/x86_64"));
		assertTrue(plugins.stream().anyMatch(name -> name.startsWith("org.benchwright.cli_")), plugins.toString());
		assertEquals(List.of(), plugins.stream().filter(name -> name.matches("org\\.eclipse\\.(swt|jface|ui|e4)\\b.*|org\\.benchwright\\.ui_.*"))
				.toList());
	}

	@Test
	void theStartScriptOpensTheWindow() throws Exception {
		Path ready = folder.resolve("ready");
		Path log = folder.resolve("window").resolve(".metadata").resolve(".log");
		ProcessBuilder builder = new ProcessBuilder(home("org.benchwright.workbench", "linux/gtk/x86_64").resolve("benchwright").toString(),
				"-configuration", folder.resolve("configuration").toString())
				.redirectErrorStream(true).redirectOutput(folder.resolve("output").toFile());
		builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
		builder.environment().put("JAVA_TOOL_OPTIONS",
				"-Dbenchwright.ready=" + ready + " -Dbenchwright.ledger=" + folder.resolve("bench.ledger"));
		Process process = builder.start();
		try {
			for (int i = 0; i < PATIENCE_SECONDS * 10 && process.isAlive() && !Files.exists(ready); i++) {
				TimeUnit.MILLISECONDS.sleep(100);
			}
			assertTrue(Files.exists(ready), Files.readString(folder.resolve("output")));
			assertFalse(Files.exists(log) && Files.readString(log).contains("!ENTRY"), () -> text(log));
		} finally {
			process.destroy();
			assertTrue(process.waitFor(30, TimeUnit.SECONDS), "it ends when it is told to");
		}
	}

	private static String text(Path file) {
		try {
			return Files.readString(file);
		} catch (IOException e) {
			return e.toString();
		}
	}

	private static Path home(String product, String system) {
		return PRODUCTS.resolve(product).resolve(system).toAbsolutePath().normalize();
	}

	private static List<String> plugins(Path home) throws IOException {
		try (Stream<Path> plugins = Files.list(home.resolve("plugins"))) {
			return plugins.map(file -> file.getFileName().toString()).toList();
		}
	}
}
