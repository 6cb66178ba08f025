package org.benchwright.ui.internal.help;

import java.io.ByteArrayInputStream;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.language.RemarkPages;
import org.benchwright.present.ManualFile;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.eclipse.swt.graphics.ImageData;

/**
 * A page that was read.
 *
 * @param place    which
 * @param document what it says; nobody changes it
 * @param pictures the pictures in it, by where they lie in the source
 */
record ManualPage(Place place, Node document, Map<String, ImageData> pictures) {

    ManualPage {
        pictures = Map.copyOf(pictures);
    }

    /** Reads a page and its pictures; empty if it does not come with the program. Takes some tenths of a second. */
    static Optional<ManualPage> read(Place place) {
        return RemarkPages.at(place.page()).or(() -> ManualFile.text(place.page())).map(text -> {
            Node document = Parser.builder().extensions(List.of(TablesExtension.create())).build().parse(text);
            return new ManualPage(place, document, pictures(place, document));
        });
    }

    private static Map<String, ImageData> pictures(Place place, Node document) {
        Map<String, ImageData> pictures = new HashMap<>();
        document.accept(new AbstractVisitor() {
            @Override
            public void visit(Image image) {
                String file = place.follow(image.getDestination()).page();
                ManualFile.picture(file).ifPresent(bytes -> pictures.put(file, new ImageData(new ByteArrayInputStream(bytes))));
            }
        });
        return pictures;
    }
}
