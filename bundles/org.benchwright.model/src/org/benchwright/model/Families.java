package org.benchwright.model;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * What holds for a family, everything of the families it is like included.
 *
 * <p>Where a family and one that it is like both say something under one name, the nearer one counts. A circle of
 * families that are like each other is walked once.
 */
public final class Families {

    private Families() {
    }

    /**
     * A family and those it is like.
     *
     * @param family a family
     * @return the family itself first, then the one it is like, and so on; references that lead nowhere end the list
     */
    public static List<Family> lineage(Family family) {
        Set<Family> seen = new LinkedHashSet<>();
        for (Family each = family; each != null && !each.eIsProxy() && seen.add(each);) {
            each = each.getBase();
        }
        return List.copyOf(seen);
    }

    /**
     * Whether a family is another one or like it.
     *
     * @param family a family
     * @param other  the family to look for among those it is like
     * @return true if so
     */
    public static boolean isLike(Family family, Family other) {
        return lineage(family).contains(other);
    }

    /**
     * The lamps and groups of lamps of a family.
     *
     * @param family a family
     * @return those of the nearest family first
     */
    public static List<Lamp> lamps(Family family) {
        return gather(family, Family::getLamps);
    }

    /**
     * The displays of a family.
     *
     * @param family a family
     * @return those of the nearest family first
     */
    public static List<Display> displays(Family family) {
        return gather(family, Family::getDisplays);
    }

    /**
     * The modes of a family.
     *
     * @param family a family
     * @return those of the nearest family first
     */
    public static List<Mode> modes(Family family) {
        return gather(family, Family::getModes);
    }

    /**
     * What the family keeps and can lose.
     *
     * @param family a family
     * @return those of the nearest family first
     */
    public static List<KeptItem> keptItems(Family family) {
        return gather(family, Family::getKeeps);
    }

    /**
     * What can be loaded into a unit of the family.
     *
     * @param family a family
     * @return those of the nearest family first
     */
    public static List<LoadItem> loadItems(Family family) {
        return gather(family, Family::getLoadables);
    }

    /**
     * What a name in {@code load only} stands for.
     *
     * @param family a family
     * @param name   the name
     * @return the item as the nearest family declares it; empty where none does
     */
    public static Optional<LoadItem> loadItem(Family family, String name) {
        // In a broken text either may be left out.
        return loadItems(family).stream().filter(item -> item.getName() != null && item.getName().equals(name)).findFirst();
    }

    /**
     * The fault notes of a family.
     *
     * @param family a family
     * @return those of the nearest family first
     */
    public static List<Fault> faults(Family family) {
        return gather(family, Family::getFaults);
    }

    /**
     * What a unit of a family may be fitted with.
     *
     * @param family a family
     * @return those of the nearest family first
     */
    public static List<FittedOption> options(Family family) {
        return gather(family, Family::getOptions);
    }

    /**
     * What shows a mode.
     *
     * @param family a family
     * @param mode   one of its modes
     * @return the indications as the nearest family that speaks of the mode states them; empty where none does
     */
    public static List<Indication> indications(Family family, Mode mode) {
        return lineage(family).stream().flatMap(each -> each.getModeIndications().stream())
                .filter(shown -> shown.getMode() != null && Objects.equals(mode.getName(), shown.getMode().getName())).findFirst()
                .map(shown -> List.copyOf(shown.getIndications())).orElse(List.of());
    }

    /**
     * The supply that a unit of the family needs.
     *
     * @param family a family
     * @return the nearest statement of it
     */
    public static Optional<SupplyRating> supply(Family family) {
        return nearest(family, Family::getSupply);
    }

    /**
     * What a stop of a unit of the family looks like.
     *
     * @param family a family
     * @return the nearest statement of it
     */
    public static Optional<StopBehaviour> stop(Family family) {
        return nearest(family, Family::getStop);
    }

    /**
     * How a unit of the family can be watched.
     *
     * @param family a family
     * @return the nearest statement of it, which counts as a whole
     */
    public static Optional<WatchedBy> watched(Family family) {
        return nearest(family, Family::getWatched);
    }

    /**
     * The mask of serial numbers.
     *
     * @param family a family
     * @return the nearest statement of it
     */
    public static Optional<String> serialMask(Family family) {
        return nearest(family, Family::getSerial);
    }

    private static <T> Optional<T> nearest(Family family, Function<Family, T> part) {
        return lineage(family).stream().map(part).filter(found -> found != null).findFirst();
    }

    private static <T extends Named> List<T> gather(Family family, Function<Family, List<T>> part) {
        Map<String, T> byName = new LinkedHashMap<>();
        for (Family each : lineage(family)) {
            part.apply(each).stream().filter(named -> named.getName() != null)
                    .forEach(named -> byName.putIfAbsent(named.getName(), named));
        }
        return List.copyOf(byName.values());
    }
}
