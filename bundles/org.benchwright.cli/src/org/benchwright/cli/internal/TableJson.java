package org.benchwright.cli.internal;

import java.util.List;

import org.benchwright.core.SheetTable;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;

/** A table for machines: an array with an object for each row. All values are strings, so that 23.90 keeps its last digit. */
final class TableJson {

    private TableJson() {
    }

    static String of(SheetTable table) {
        JsonArray rows = new JsonArray();
        for (List<String> row : table.rows()) {
            JsonObject object = new JsonObject();
            for (int column = 0; column < row.size(); column++) {
                object.addProperty(table.headings().get(column), row.get(column));
            }
            rows.add(object);
        }
        return new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create().toJson(rows) + "\n";
    }
}
