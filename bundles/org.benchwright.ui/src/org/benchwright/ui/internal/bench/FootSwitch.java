package org.benchwright.ui.internal.bench;

import java.util.Locale;
import java.util.Optional;

import org.benchwright.present.EntryKind;
import org.eclipse.swt.SWT;

/**
 * The key of a foot switch: it gives the main answer of the card, for whoever has no hand free. A hazard, a release and a value are never
 * answered by foot. F7, unless the environment variable {@code BENCHWRIGHT_FOOT_SWITCH} names another function key.
 */
final class FootSwitch {

    private static final String SETTING = "BENCHWRIGHT_FOOT_SWITCH";
    private static final int USUAL = 7;
    private static final int LAST = 20;

    private FootSwitch() {
    }

    /** The key's code. */
    static int key() {
        return key(System.getenv().getOrDefault(SETTING, ""));
    }

    /** The code of a function key by its name; that of the usual one if it is none. */
    static int key(String name) {
        for (int i = 1; i <= LAST; i++) {
            if (name.strip().toUpperCase(Locale.ROOT).equals("F" + i)) {
                return SWT.F1 + i - 1;
            }
        }
        return SWT.F1 + USUAL - 1;
    }

    /** What the switch answers. */
    static Optional<String> answer(EntryKind kind) {
        return switch (kind) {
            case DO, MARK -> Optional.of("");
            case SEE -> Optional.of("y");
            default -> Optional.empty();
        };
    }
}
