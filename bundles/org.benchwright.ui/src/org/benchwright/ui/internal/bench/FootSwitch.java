package org.benchwright.ui.internal.bench;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;

import org.benchwright.present.EntryKind;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.swt.SWT;

/**
 * The key of a foot switch: it gives the main answer of the card, for whoever has no hand free. A hazard, a release and a value are never
 * answered by foot. It is the key that was chosen in the window, else the one that the environment variable {@code BENCHWRIGHT_FOOT_SWITCH}
 * names, else F7.
 */
final class FootSwitch {

    private static final String NODE = "org.benchwright.ui";
    private static final String CHOSEN = "footSwitch";
    private static final String SETTING = "BENCHWRIGHT_FOOT_SWITCH";
    private static final int USUAL = 7;
    private static final int LAST = 20;
    /** What those keys do already: next unit, strike, note, the menu, make safe. */
    private static final Set<Integer> TAKEN = Set.of(SWT.F6, SWT.F8, SWT.F9, SWT.F10, SWT.F12);

    private FootSwitch() {
    }

    /** The key's code. */
    static int key() {
        return code(InstanceScope.INSTANCE.getNode(NODE).get(CHOSEN, "")).or(() -> code(System.getenv().getOrDefault(SETTING, ""))).orElse(usual());
    }

    private static int usual() {
        return SWT.F1 + USUAL - 1;
    }

    /** The key's name. */
    static String name() {
        return "F" + (key() - SWT.F1 + 1);
    }

    /** True if a key of that name may be the foot switch's. */
    static boolean takes(String name) {
        return code(name).isPresent();
    }

    /** Chooses the key, for the next start too; an empty name goes back to the usual one. */
    static void choose(String name) {
        if (name.isBlank()) {
            InstanceScope.INSTANCE.getNode(NODE).remove(CHOSEN);
        } else {
            InstanceScope.INSTANCE.getNode(NODE).put(CHOSEN, name.strip().toUpperCase(Locale.ROOT));
        }
    }

    /** The code of a function key by its name; empty if it is none, or has work of its own. */
    private static Optional<Integer> code(String name) {
        String key = name.strip().toUpperCase(Locale.ROOT);
        for (int i = 1; i <= LAST; i++) {
            if (key.equals("F" + i) && !TAKEN.contains(SWT.F1 + i - 1)) {
                return Optional.of(SWT.F1 + i - 1);
            }
        }
        return Optional.empty();
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
