package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.language.editing.Hover;
import org.benchwright.language.internal.ParsedFile;
import org.benchwright.model.Amount;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Indication;
import org.benchwright.model.Lamp;
import org.benchwright.model.LampIndication;
import org.benchwright.model.Limits;
import org.benchwright.model.Named;
import org.benchwright.model.Procedures;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** What there is to say about the word at a place: a name, an amount, a word of the language. */
final class Hovers {

    private final NameIndex names;

    Hovers(NameIndex names) {
        this.names = names;
    }

    Optional<Hover> at(ParsedFile file, int offset) {
        return names.at(file, offset).map(this::name).or(() -> Optional
                .ofNullable(NodeModelUtils.findLeafNodeAtOffset(file.resource().getParseResult().getRootNode(), offset))
                .filter(leaf -> !leaf.isHidden()).flatMap(Hovers::word));
    }

    private static Optional<Hover> word(ILeafNode leaf) {
        return switch (Styles.meaning(leaf)) {
            case AMOUNT -> amount(leaf);
            case KEYWORD, SIGNAL, VERDICT, INDICATION -> keyword(leaf);
            default -> Optional.empty();
        };
    }

    private Hover name(NameIndex.Use use) {
        Named target = use.target();
        Optional<Family> family = NameIndex.family(NodeModelUtils.findActualSemanticObjectFor(use.node()));
        List<String> lines = new ArrayList<>(Descriptions.lines(target, family));
        if (target instanceof Lamp lamp) {
            family.ifPresent(each -> shownBy(lamp, each, lines));
        }
        Procedures.around(target.eContainer(), Family.class)
                .ifPresent(declaring -> lines.add(EditingText.OF_FAMILY.text(String.valueOf(declaring.getName()))));
        lines.add(used(names.references(target).size()));
        return new Hover(use.node().getOffset(), use.node().getLength(), Descriptions.title(target), lines);
    }

    private static void shownBy(Lamp lamp, Family family, List<String> lines) {
        Families.modes(family).forEach(mode -> Families.indications(family, mode).stream().filter(shown -> isOf(lamp, shown))
                .forEach(shown -> lines.add(EditingText.SHOWN_IN_MODE.text(mode.getName(), Descriptions.written(shown)))));
        Families.faults(family).forEach(fault -> fault.getIndications().stream().filter(shown -> isOf(lamp, shown))
                .forEach(shown -> lines.add(EditingText.SHOWN_BY_FAULT.text(fault.getName(), Descriptions.written(shown)))));
    }

    private static boolean isOf(Lamp lamp, Indication shown) {
        return shown instanceof LampIndication indication && indication.getLamp() == lamp;
    }

    private static String used(int times) {
        return switch (times) {
            case 0 -> EditingText.USED_NOWHERE.text();
            case 1 -> EditingText.USED_ONCE.text();
            default -> EditingText.USED_OFTEN.text(Integer.toString(times));
        };
    }

    private static Optional<Hover> amount(ILeafNode leaf) {
        EObject holder = NodeModelUtils.findActualSemanticObjectFor(leaf);
        INode whole = NodeModelUtils.findActualNodeFor(holder);
        if (holder instanceof Amount amount && amount.getValue() != null && amount.getUnit() != null && whole != null) {
            return UnitOfMeasure.find(amount.getUnit()).map(unit -> converted(whole, List.of(new Quantity(amount.getValue(), unit))));
        } else if (holder instanceof Limits limits && limits.getUnit() != null && whole != null) {
            return UnitOfMeasure.find(limits.getUnit()).map(unit -> converted(whole, quantities(limits, unit)))
                    .filter(hover -> !hover.lines().isEmpty());
        }
        return Optional.empty();
    }

    private static List<Quantity> quantities(Limits limits, UnitOfMeasure unit) {
        List<Quantity> found = new ArrayList<>();
        UnitOfMeasure lower = Optional.ofNullable(limits.getLowerUnit()).flatMap(UnitOfMeasure::find).orElse(unit);
        Optional.ofNullable(limits.getLower()).ifPresent(value -> found.add(new Quantity(value, lower)));
        Optional.ofNullable(limits.getNominal()).ifPresent(value -> found.add(new Quantity(value, unit)));
        Optional.ofNullable(limits.getUpper()).ifPresent(value -> found.add(new Quantity(value, unit)));
        return found;
    }

    private static Hover converted(INode whole, List<Quantity> quantities) {
        List<String> lines = quantities.stream().flatMap(each -> OtherUnits.of(each).stream()).toList();
        return new Hover(whole.getOffset(), whole.getLength(), NodeModelUtils.getTokenText(whole).replaceAll("\\s+", " "), lines);
    }

    private static Optional<Hover> keyword(ILeafNode leaf) {
        return KeywordMeanings.of(leaf.getText())
                .map(meaning -> new Hover(leaf.getOffset(), leaf.getLength(), leaf.getText(), List.of(meaning)));
    }
}
