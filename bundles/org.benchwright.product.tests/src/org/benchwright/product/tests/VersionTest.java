package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VersionTest {

    @Test
    void versionIsPrintedAndNothingElse(@TempDir Path folder) throws Exception {
        Product.Ended ended = new Product(folder).run("--version");
        assertEquals("", ended.err());
        assertTrue(ended.out().matches("Benchwright \\d+\\.\\d+\\.\\d+\\R"), ended.out());
        assertEquals(0, ended.status());
    }
}
