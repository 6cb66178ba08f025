package org.benchwright.language;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.FamilyPlate;
import org.benchwright.core.SerialMask;
import org.benchwright.model.Families;
import org.benchwright.model.Family;

/** What the type plates of the families in a folder look like. */
public final class FamilyPlates {

    private FamilyPlates() {
    }

    /**
     * Reads them.
     *
     * @param services what reads and checks
     * @param folder   a folder with the files of families
     * @return each family that can be read, with a mask where it states one that is a mask; families with mistakes elsewhere too
     */
    public static List<FamilyPlate> of(LanguageServices services, Path folder) {
        return services.check(List.of(folder)).files().stream().flatMap(file -> file.content().getFamilies().stream())
                .filter(family -> family.getName() != null).map(FamilyPlates::plate).toList();
    }

    private static FamilyPlate plate(Family family) {
        String title = family.getLabel() == null ? family.getName() : family.getLabel();
        return new FamilyPlate(family.getName(), title, Families.serialMask(family).flatMap(FamilyPlates::mask));
    }

    private static Optional<SerialMask> mask(String written) {
        try {
            return Optional.of(new SerialMask(written));
        } catch (IllegalArgumentException none) {
            // The family has a remark on it; here it is as good as none.
            return Optional.empty();
        }
    }
}
