package org.benchwright.language.internal.editing;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.model.CarryOut;
import org.benchwright.model.Comparison;
import org.benchwright.model.Condition;
import org.benchwright.model.Display;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.Fault;
import org.benchwright.model.FittedOption;
import org.benchwright.model.Hazard;
import org.benchwright.model.Indication;
import org.benchwright.model.Instrument;
import org.benchwright.model.InstrumentUse;
import org.benchwright.model.KeptItem;
import org.benchwright.model.Lamp;
import org.benchwright.model.LampGroup;
import org.benchwright.model.LoadItem;
import org.benchwright.model.Mark;
import org.benchwright.model.Measurement;
import org.benchwright.model.Mode;
import org.benchwright.model.ModePoint;
import org.benchwright.model.Named;
import org.benchwright.model.Precondition;
import org.benchwright.model.Procedure;
import org.benchwright.model.Procedures;
import org.benchwright.model.SharedStage;
import org.benchwright.model.Soak;
import org.benchwright.model.Stage;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Says of a thing what it is and what it means, in words for people. */
final class Descriptions {

    private Descriptions() {
    }

    /** What a reader calls it: its text, else its name. */
    static String label(EObject thing) {
        String label = text(thing);
        if (thing instanceof CarryOut carryOut && carryOut.getShared() != null) {
            return text(carryOut.getShared());
        }
        if (thing instanceof Procedure procedure && procedure.getRevision() != null) {
            return EditingText.PROCEDURE_LABEL.text(label, procedure.getRevision().toString());
        }
        return label;
    }

    private static String text(EObject thing) {
        for (String feature : List.of("label", "what", "text", "prompt")) {
            if (thing.eClass().getEStructuralFeature(feature) != null
                    && thing.eGet(thing.eClass().getEStructuralFeature(feature)) instanceof String text && !text.isBlank()) {
                return text;
            }
        }
        return thing instanceof Named named ? name(named) : "";
    }

    private static String name(Named named) {
        return Procedures.name(named).orElse("");
    }

    /** What it is, in a line. */
    static String title(Named thing) {
        String name = name(thing);
        String label = text(thing);
        if (thing instanceof LampGroup group) {
            return EditingText.LAMP_GROUP_TITLE.text(name, label, Integer.toString(group.getFirst()), Integer.toString(group.getLast()));
        } else if (thing instanceof Hazard hazard) {
            return EditingText.HAZARD_TITLE.text(name, String.valueOf(hazard.getSignal()), label);
        } else if (thing instanceof Comparison pair) {
            return EditingText.COMPARISON_TITLE.text(name, String.valueOf(pair.getLeft()), String.valueOf(pair.getRight()));
        }
        return titleOf(thing).text(name, label);
    }

    private static EditingText titleOf(Named thing) {
        if (thing instanceof Family) {
            return EditingText.FAMILY_TITLE;
        } else if (thing instanceof Procedure) {
            return EditingText.PROCEDURE_TITLE;
        } else if (thing instanceof Lamp) {
            return EditingText.LAMP_TITLE;
        } else if (thing instanceof Display) {
            return EditingText.DISPLAY_TITLE;
        } else if (thing instanceof Mode) {
            return EditingText.MODE_TITLE;
        } else if (thing instanceof KeptItem) {
            return EditingText.KEPT_TITLE;
        } else if (thing instanceof LoadItem) {
            return EditingText.LOAD_TITLE;
        } else if (thing instanceof FittedOption) {
            return EditingText.OPTION_TITLE;
        } else if (thing instanceof Fault) {
            return EditingText.FAULT_TITLE;
        }
        return titleInProcedure(thing);
    }

    private static EditingText titleInProcedure(Named thing) {
        if (thing instanceof Instrument) {
            return EditingText.INSTRUMENT_TITLE;
        } else if (thing instanceof Precondition) {
            return EditingText.PRECONDITION_TITLE;
        } else if (thing instanceof Stage || thing instanceof CarryOut || thing instanceof SharedStage) {
            return EditingText.STAGE_TITLE;
        } else if (thing instanceof Soak) {
            return EditingText.SOAK_TITLE;
        } else if (thing instanceof Step) {
            return EditingText.STEP_TITLE;
        } else if (thing instanceof Mark) {
            return EditingText.MARK_TITLE;
        }
        return thing instanceof Condition ? EditingText.CONDITION_TITLE : EditingText.VALUE_TITLE;
    }

    /**
     * What it means, a fact a line.
     *
     * @param thing  what to tell about
     * @param family the family whose modes and faults may show it; empty where there is none
     */
    static List<String> lines(Named thing, Optional<Family> family) {
        List<String> lines = new ArrayList<>();
        if (thing instanceof Lamp lamp) {
            Optional.ofNullable(lamp.getMarking()).ifPresent(marking -> lines.add(EditingText.LAMP_MARKED.text(marking)));
            lines.add(EditingText.LAMP_COLOURS.text(lamp.getColours().stream().map(Object::toString)
                    .map(colour -> colour.toLowerCase(java.util.Locale.ROOT)).collect(Collectors.joining(", "))));
        } else if (thing instanceof Display display) {
            lines.add(EditingText.DISPLAY_WIDTH.text(Integer.toString(display.getCharacters())));
        } else if (thing instanceof Mode mode) {
            List<Indication> shown = family.map(f -> Families.indications(f, mode)).orElse(List.of());
            lines.add(shown.isEmpty() ? EditingText.MODE_NOT_SHOWN.text() : EditingText.MODE_SHOWN.text(written(shown)));
            List<ModePoint> points = family.flatMap(Families::watched).stream().flatMap(watched -> watched.getPoints().stream())
                    .filter(ModePoint.class::isInstance).map(ModePoint.class::cast).filter(point -> point.getMode() == mode).toList();
            add(EditingText.MODE_WATCHED, written(points), lines);
        } else if (thing instanceof KeptItem item) {
            lines.add(EditingText.KEPT_BY.text(String.valueOf(item.getBy())));
        } else if (thing instanceof LoadItem item && !item.getReplaces().isEmpty()) {
            lines.add(EditingText.LOAD_REPLACES.text(item.getReplaces().stream().map(Descriptions::text)
                    .collect(Collectors.joining(", "))));
        } else if (thing instanceof Fault fault) {
            fault(fault, lines);
        } else {
            inProcedure(thing, lines);
        }
        return lines;
    }

    private static void fault(Fault fault, List<String> lines) {
        if (!fault.getIndications().isEmpty()) {
            lines.add(EditingText.FAULT_SHOWS.text(written(fault.getIndications())));
        }
        add(EditingText.FAULT_MEANS, fault.getMeans(), lines);
        add(EditingText.FAULT_OFTEN, fault.getOften(), lines);
        add(EditingText.FAULT_NEXT, fault.getNext(), lines);
    }

    private static void inProcedure(Named thing, List<String> lines) {
        if (thing instanceof Family family) {
            Optional.ofNullable(family.getBase()).ifPresent(base -> lines.add(EditingText.FAMILY_LIKE.text(text(base))));
            Families.supply(family).ifPresent(supply -> lines.add(EditingText.FAMILY_SUPPLY.text(
                    written(supply).replaceFirst("^supply\\s+", ""))));
        } else if (thing instanceof Procedure procedure) {
            Optional.ofNullable(procedure.getRevision()).ifPresent(r -> lines.add(EditingText.PROCEDURE_REVISION.text(r.toString())));
            Optional.ofNullable(procedure.getFamily()).ifPresent(f -> lines.add(EditingText.PROCEDURE_APPLIES.text(text(f))));
            Optional.ofNullable(procedure.getPurpose()).ifPresent(lines::add);
        } else if (thing instanceof Hazard hazard) {
            add(EditingText.HAZARD_CAN, hazard.getConsequence(), lines);
            add(EditingText.HAZARD_SO, hazard.getAvoidance(), lines);
        } else if (thing instanceof Instrument instrument) {
            instrument(instrument, lines);
        } else if (thing instanceof Stage stage && stage.isOnDemand()) {
            lines.add(EditingText.STAGE_ON_DEMAND.text());
        } else if (thing instanceof Soak soak && soak.getLength() != null) {
            lines.add(EditingText.SOAK_LASTS.text(written(soak.getLength())));
        } else if (thing instanceof Step step && step.getTakes() != null) {
            lines.add(EditingText.STEP_TAKES.text(written(step.getTakes())));
        } else if (thing instanceof Measurement measurement && measurement.getLimits() != null) {
            lines.add(EditingText.VALUE_LIMITS.text(written(measurement.getLimits())));
        } else if (thing instanceof Condition condition && condition.getLimits() != null) {
            lines.add(EditingText.VALUE_LIMITS.text(written(condition.getLimits())));
        }
    }

    private static void instrument(Instrument instrument, List<String> lines) {
        EditingText use = instrument.getUse() == InstrumentUse.GIVES ? EditingText.INSTRUMENT_GIVES : EditingText.INSTRUMENT_READS;
        String what = Objects.toString(instrument.getUnit(), "");
        if (instrument.getUpTo() != null) {
            what += " .. " + written(instrument.getUpTo());
        } else if (instrument.getRange() != null) {
            what += ", " + written(instrument.getRange());
        }
        lines.add(use.text(what));
        if (instrument.getUncertainty() != null) {
            lines.add(EditingText.INSTRUMENT_UNCERTAINTY.text(written(instrument.getUncertainty())));
        }
    }

    private static void add(EditingText pattern, String text, List<String> lines) {
        if (text != null && !text.isBlank()) {
            lines.add(pattern.text(text));
        }
    }

    /** As it stands in the text, on one line. */
    static String written(EObject thing) {
        INode node = NodeModelUtils.findActualNodeFor(thing);
        return node == null ? "" : NodeModelUtils.getTokenText(node).replaceAll("\\s+", " ").strip();
    }

    static String written(List<? extends EObject> things) {
        return things.stream().map(Descriptions::written).collect(Collectors.joining(", "));
    }
}
