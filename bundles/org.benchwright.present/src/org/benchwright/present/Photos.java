package org.benchwright.present;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;

/** Photos among the files that people attach. */
public final class Photos {

    private static final Set<String> ENDINGS = Set.of("jpg", "jpeg", "png", "gif", "bmp", "tif", "tiff", "heic", "heif", "webp");

    private Photos() {
    }

    /** Whether a file is a photo by its name. */
    public static boolean named(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return ENDINGS.contains(name.substring(name.lastIndexOf('.') + 1));
    }
}
