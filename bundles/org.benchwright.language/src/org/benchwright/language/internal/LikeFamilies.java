package org.benchwright.language.internal;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.benchwright.core.SerialMask;
import org.benchwright.language.FamilyChoice;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Procedure;
import org.eclipse.emf.common.util.URI;

/** The families that a procedure applies to: the one that it names, and those like it that its file sees. */
public final class LikeFamilies {

    private final Family named;
    private final Map<String, Family> like = new LinkedHashMap<>();

    private LikeFamilies(Family named) {
        this.named = named;
    }

    /**
     * Looks them up.
     *
     * @param procedure one without errors, among the files that it sees
     */
    public static LikeFamilies of(Procedure procedure) {
        LikeFamilies families = new LikeFamilies(procedure.getFamily());
        Set<URI> folders = Imports.folders(procedure.eResource());
        procedure.eResource().getResourceSet().getResources().stream().filter(file -> folders.contains(Imports.folder(file.getURI())))
                .flatMap(file -> Imports.content(file).stream()).flatMap(content -> content.getFamilies().stream())
                .filter(family -> family.getName() != null && Families.isLike(family, families.named))
                .filter(family -> !family.getName().equals(families.named.getName()))
                .forEach(family -> families.like.putIfAbsent(family.getName(), family));
        return families;
    }

    /** The names of all of them, the one that the procedure names first. */
    public List<String> names() {
        List<String> names = new ArrayList<>(List.of(named.getName()));
        names.addAll(new TreeSet<>(like.keySet()));
        return names;
    }

    /**
     * The names of those that are chosen: one, unless nothing is called so or several fit equally.
     *
     * @return sorted
     */
    public List<String> chosen(FamilyChoice choice) {
        if (choice instanceof FamilyChoice.Called called) {
            return called.family().equals(named.getName()) || like.containsKey(called.family()) ? List.of(called.family()) : List.of();
        } else if (choice instanceof FamilyChoice.Fitting fitting) {
            return fitting(Normalizer.normalize(fitting.serial().strip(), Normalizer.Form.NFC));
        }
        return List.of(named.getName());
    }

    /** Why not one of them is {@link #chosen}, in words. */
    public String notChosen(FamilyChoice choice) {
        if (choice instanceof FamilyChoice.Fitting fitting) {
            return InternalText.SEVERAL_FAMILIES.text(fitting.serial().strip(), String.join(", ", chosen(choice)));
        }
        String called = choice instanceof FamilyChoice.Called other ? other.family() : named.getName();
        Set<String> names = new TreeSet<>(like.keySet());
        names.add(named.getName());
        return InternalText.NO_FAMILY_LIKE.text(named.getName(), called, String.join(", ", names));
    }

    private List<String> fitting(String serial) {
        if (Families.serialMask(named).isEmpty() || takes(named, serial)) {
            return List.of(named.getName());
        }
        List<Family> fitting = like.values().stream().filter(family -> takes(family, serial)).toList();
        List<Family> stating = fitting.stream().filter(family -> family.getSerial() != null).toList();
        List<String> names = (stating.isEmpty() ? fitting : stating).stream().map(Family::getName).sorted().toList();
        return names.isEmpty() ? List.of(named.getName()) : names;
    }

    private static boolean takes(Family family, String serial) {
        return mask(family).filter(mask -> mask.accepts(serial)).isPresent();
    }

    /**
     * The mask that a family's serial numbers fit.
     *
     * @param family a family
     * @return nothing where it says none, or one that is unusable, on which its own file has a remark: no number fits that
     */
    public static Optional<SerialMask> mask(Family family) {
        try {
            return Families.serialMask(family).map(SerialMask::new);
        } catch (IllegalArgumentException unusable) {
            return Optional.empty();
        }
    }
}
