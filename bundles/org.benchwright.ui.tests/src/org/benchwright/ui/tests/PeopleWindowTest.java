package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The register of people in the window. */
@ExtendWith(QuietLog.class)
class PeopleWindowTest {

    @Test
    void everybodyIsListedWithRolesAndKeysAndHowTheRegisterIsKept() throws Exception {
        Technician.register();
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.PEOPLE_VIEW);
        Screen.waitFor("them", () -> rows().stream().anyMatch(row -> row.startsWith("LW | administrator LW | administrator | can sign | ")));
        assertTrue(rows().stream().anyMatch(row -> row.startsWith("RB | engineer RB | engineer | can sign | ")), rows().toString());
        assertTrue(rows().stream().anyMatch(row -> row.startsWith("KM | supervisor KM | supervisor | can sign | ")), rows().toString());
        assertTrue(rows().get(0).matches(".* \\| [0-9a-f]{16}\\.\\.\\. in use"), rows().toString());
        assertTrue(Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("bench people enroll ID --by ID")));
        Screen.page().showView(Ids.SHEET_VIEW);
    }

    private static List<String> rows() {
        return Screen.all(Table.class).filter(table -> table.getColumn(0).getText().equals("Id")).flatMap(table -> Stream.of(table.getItems()))
                .map(item -> IntStream.range(0, 5).mapToObj(item::getText).collect(Collectors.joining(" | "))).toList();
    }
}
