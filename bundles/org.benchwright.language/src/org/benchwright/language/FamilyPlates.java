package org.benchwright.language;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.core.FamilyPlate;
import org.benchwright.language.internal.LikeFamilies;
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
        return new FamilyPlate(family.getName(), title, LikeFamilies.mask(family));
    }
}
