package org.benchwright.language.internal.fix;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.language.editing.Fix;
import org.benchwright.model.Numeral;
import org.benchwright.model.PointAddress;
import org.benchwright.model.PointTable;
import org.benchwright.model.PointValue;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.WatchedPoint;
import org.eclipse.xtext.nodemodel.INode;

/** Mending what a watch reads. */
final class WatchFixes {

    private WatchFixes() {
    }

    /** The second point is taken out. */
    static List<Fix> onlyOnce(Spot spot) {
        return spot.around(WatchedPoint.class).map(point -> {
            INode node = Spot.node(point);
            return Spot.one(FixText.REMOVE, Spot.text(node), spot.remove(node));
        }).orElse(List.of());
    }

    /** A length that there is. */
    static List<Fix> bits(Spot spot) {
        Optional<PointAddress> address = spot.around(PointAddress.class);
        Optional<INode> bits = address.flatMap(each -> Spot.node(each, Literals.POINT_ADDRESS__BITS));
        Stream<String> lengths = address.filter(each -> each.getNumeral() == Numeral.FLOAT).isPresent() ? Stream.of("32", "64")
                : Stream.of("16", "32", "64");
        return bits.map(node -> lengths.flatMap(length -> Spot.one(FixText.REPLACE, length, spot.replace(node, length)).stream()).toList())
                .orElse(List.of());
    }

    /** A word that a bit or a server can read. What a register or a node reads only the engineer knows. */
    static List<Fix> value(Spot spot) {
        Optional<PointValue> value = spot.around(PointValue.class);
        Optional<PointTable> table = spot.around(WatchedPoint.class).map(WatchedPoint::getAddress).map(PointAddress::getTable);
        if (value.isEmpty() || table.isEmpty()) {
            return List.of();
        }
        Stream<String> words = switch (table.get()) {
            case COIL, INPUT -> Stream.of("on", "off");
            case SERVER -> Stream.of("running");
            default -> Stream.of();
        };
        INode node = Spot.node(value.get());
        return words.flatMap(word -> Spot.one(FixText.REPLACE, word, spot.replace(node, word)).stream()).toList();
    }
}
