package org.benchwright.present.internal.printed;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.benchwright.core.PointAddress;
import org.benchwright.engine.plan.WatchMap;
import org.benchwright.engine.plan.WatchPoint;
import org.benchwright.present.internal.Questions;

/** What a watch can read of a unit, a point a sentence. */
final class PointText {

    private PointText() {
    }

    /** The points, and the caution that belongs to every connection. */
    static List<String> of(WatchMap map) {
        List<String> sentences = new ArrayList<>();
        map.points().forEach(point -> sentences.add(sentence(point)));
        sentences.add(PrintedWords.WATCHED_CAUTION.text());
        return sentences;
    }

    private static String sentence(WatchPoint point) {
        String place = place(point.address());
        if (point.meaning() instanceof WatchPoint.InMode mode) {
            return PrintedWords.POINT_MODE.text(Questions.spaced(mode.mode()), place, value(point.address(), mode.value()));
        } else if (point.meaning() instanceof WatchPoint.LampLit lamp) {
            return PrintedWords.POINT_LAMP.text(Questions.spaced(lamp.lamp()), place, value(point.address(), lamp.value()));
        }
        WatchPoint.Reads reads = (WatchPoint.Reads) point.meaning();
        String offset = reads.offset().signum() == 0 ? "" : PrintedWords.POINT_OFFSET.text(reads.offset().toPlainString() + " " + reads.unit().word());
        return PrintedWords.POINT_CONDITION.text(Questions.spaced(reads.condition()), place, reads.scale().toPlainString() + " " + reads.unit().word(), offset);
    }

    private static String place(PointAddress address) {
        if (address instanceof PointAddress.Register register) {
            String table = words(register.table());
            return register.table().bits() ? PrintedWords.POINT_BIT.text(table, String.valueOf(register.number()))
                    : PrintedWords.POINT_REGISTER.text(table, String.valueOf(register.number()), words(register.form()),
                            register.lowFirst() ? PrintedWords.POINT_LOW_FIRST.text() : "", register.swapped() ? PrintedWords.POINT_SWAPPED.text() : "");
        }
        return address instanceof PointAddress.Node node ? PrintedWords.POINT_NODE.text(node.id()) : PrintedWords.POINT_SERVER.text();
    }

    /** As it stands in a family's text. */
    private static String words(Enum<?> constant) {
        return constant == PointAddress.Table.DISCRETE_INPUT ? "input" : constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String value(PointAddress address, BigDecimal value) {
        boolean bit = address instanceof PointAddress.Register register && register.table().bits();
        return bit ? (value.signum() == 0 ? PrintedWords.POINT_OFF : PrintedWords.POINT_ON).text() : value.toPlainString();
    }
}
