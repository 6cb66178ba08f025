package org.benchwright.architecture.tests;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which bundle may know which other: the arrows that are drawn in the project's architecture. What is not drawn is
 * forbidden. Bundles are named without {@code org.benchwright.}.
 *
 * @param drawn from each bundle to those it may know
 */
record Arrows(Map<String, Set<String>> drawn) {

    private static final String PREFIX = "org.benchwright.";

    /** The whole architecture, in one table. */
    static final Arrows OF_THE_PROJECT = new Arrows(Map.ofEntries(
            Map.entry("core", Set.of()),
            Map.entry("evidence", Set.of("core")),
            Map.entry("model", Set.of("core")),
            Map.entry("ledger", Set.of("core")),
            Map.entry("engine", Set.of("core", "evidence")),
            Map.entry("language", Set.of("core", "model", "engine", "evidence")),
            Map.entry("watch", Set.of("core")),
            Map.entry("workshop", Set.of("core", "engine", "ledger", "language", "watch")),
            // The engine's plain types come with what the workshop hands out.
            Map.entry("present", Set.of("core", "workshop", "evidence", "engine", "report")),
            Map.entry("report", Set.of("core", "ledger", "evidence")),
            Map.entry("cli", Set.of("core", "present", "report", "language", "engine")),
            Map.entry("ui", Set.of("core", "present", "report", "language", "engine")),
            Map.entry("testkit", Set.of())));

    /** Arrows that lead to one package only, and not to the whole bundle. */
    private static final Map<String, String> ONE_PACKAGE_ONLY = Map.of("language->engine", PREFIX + "engine.plan");

    Arrows {
        Map<String, Set<String>> copy = new HashMap<>();
        drawn.forEach((from, to) -> copy.put(from, Set.copyOf(to)));
        drawn = Map.copyOf(copy);
    }

    /** The same table with one arrow rubbed out. */
    Arrows without(String from, String to) {
        Map<String, Set<String>> fewer = new HashMap<>(drawn);
        Set<String> targets = new HashSet<>(fewer.get(from));
        if (!targets.remove(to)) {
            throw new IllegalArgumentException("No arrow from " + from + " to " + to);
        }
        fewer.put(from, targets);
        return new Arrows(fewer);
    }

    /** The bundle that a bundle id, a package or a class name belongs to, if it is one of ours. */
    Optional<String> bundleOf(String name) {
        if (!name.startsWith(PREFIX)) {
            return Optional.empty();
        }
        String room = name.substring(PREFIX.length()).split("\\.")[0];
        boolean tests = name.startsWith(PREFIX + room + ".tests");
        return Optional.of(tests ? room + ".tests" : room);
    }

    /**
     * Says what is wrong with one bundle knowing another, if anything.
     *
     * @param from a bundle
     * @param to another bundle
     */
    Optional<String> objection(String from, String to) {
        if (from.equals(to) || allowed(from).contains(to)) {
            return Optional.empty();
        }
        return Optional.of(from + " -> " + to + " is not drawn");
    }

    /**
     * Says what is wrong with one bundle using a package of another, if anything: the arrow, the part of a bundle that
     * the arrow leads to, or a package that is the other's own affair.
     */
    Optional<String> objection(String from, String to, String packageName) {
        Optional<String> arrow = objection(from, to);
        if (arrow.isPresent() || from.equals(to) || from.equals(to + ".tests")) {
            return arrow;
        }
        String only = ONE_PACKAGE_ONLY.get(from + "->" + to);
        if (only != null && !packageName.equals(only)) {
            return Optional.of(from + " -> " + to + " is drawn to " + only + " only");
        }
        if (packageName.contains(".internal")) {
            return Optional.of(packageName + " is internal to " + to);
        }
        return Optional.empty();
    }

    /**
     * A test bundle may know the bundle it tests and everything that one builds on, the test kit, and what the tests below
     * lend it.
     */
    private Set<String> allowed(String from) {
        if (!from.endsWith(".tests")) {
            return drawn.getOrDefault(from, Set.of());
        }
        Set<String> below = new HashSet<>();
        addAllBelow(from.substring(0, from.length() - ".tests".length()), below);
        Set<String> allowed = new HashSet<>(below);
        below.forEach(bundle -> allowed.add(bundle + ".tests"));
        allowed.add("testkit");
        return allowed;
    }

    private void addAllBelow(String bundle, Set<String> found) {
        if (found.add(bundle)) {
            drawn.getOrDefault(bundle, Set.of()).forEach(below -> addAllBelow(below, found));
        }
    }
}
