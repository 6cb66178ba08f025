package org.benchwright.language.internal.inspect;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.RemarkCode;
import org.benchwright.model.Erase;
import org.benchwright.model.Families;
import org.benchwright.model.Family;
import org.benchwright.model.KeptBy;
import org.benchwright.model.KeptItem;
import org.benchwright.model.Load;
import org.benchwright.model.Named;
import org.benchwright.model.Procedure;
import org.benchwright.model.ProcedurePackage.Literals;
import org.benchwright.model.Procedures;
import org.benchwright.model.Protection;
import org.benchwright.model.Release;
import org.benchwright.model.Statement;
import org.benchwright.model.Step;
import org.eclipse.emf.ecore.EStructuralFeature;

/** What the owner must not lose is neither erased nor replaced without a release, and is named wherever something is erased. */
final class ProtectionInspection implements Inspection {

    @Override
    public void procedure(Procedure procedure, Remarks remarks) {
        for (Protection protection : procedure.getProtections()) {
            for (int i = 0; i < protection.getItems().size(); i++) {
                KeptItem item = protection.getItems().get(i);
                if (Written.thing(item).isPresent() && item.getBy() == KeptBy.SUPPLY) {
                    remarks.on(protection, Literals.PROTECTION__ITEMS, i, RemarkCode.PROTECTED_ITEM_KEPT_BY_SUPPLY, item.getName());
                }
            }
        }
    }

    @Override
    public void step(Step step, Procedure procedure, Remarks remarks) {
        Procedures.statements(step, Erase.class).forEach(erase -> erase(erase, step, kept(procedure), remarks));
        Procedures.statements(step, Load.class)
                .forEach(load -> load(load, step, Written.thing(procedure.getFamily()), kept(procedure), remarks));
    }

    private static Set<String> kept(Procedure procedure) {
        return procedure.getProtections().stream().flatMap(each -> Written.things(each.getItems()).stream()).map(Named::getName)
                .collect(Collectors.toSet());
    }

    private static void erase(Erase erase, Step step, Set<String> kept, Remarks remarks) {
        List<KeptItem> items = erase.getItems();
        for (int i = 0; i < items.size(); i++) {
            KeptItem item = items.get(i);
            if (Written.thing(item).isPresent() && kept.contains(item.getName()) && !isReleased(erase, step)) {
                remarks.on(erase, Literals.ERASE__ITEMS, i, RemarkCode.PROTECTED_ITEM_ERASED, item.getName());
            }
            if (Written.thing(item).isPresent() && erase.getSpared().contains(item)) {
                remarks.on(erase, Literals.ERASE__ITEMS, i, RemarkCode.CHOSEN_AND_SPARED, item.getName());
            }
        }
        Set<String> named = Stream.concat(items.stream(), erase.getSpared().stream()).map(Named::getName)
                .collect(Collectors.toSet());
        kept.stream().filter(item -> !named.contains(item)).sorted()
                .forEach(item -> remarks.on(erase, RemarkCode.PROTECTED_ITEM_NOT_NAMED, item));
    }

    private static void load(Load load, Step step, Optional<Family> family, Set<String> kept, Remarks remarks) {
        named(load, load.getItems(), Literals.LOAD__ITEMS, family, remarks);
        named(load, load.getLeftOut(), Literals.LOAD__LEFT_OUT, family, remarks);
        List<String> items = load.getItems();
        for (int i = 0; i < items.size(); i++) {
            String item = items.get(i);
            int at = i;
            family.flatMap(f -> Families.loadItem(f, item)).stream().flatMap(known -> Written.things(known.getReplaces()).stream())
                    .map(Named::getName).filter(kept::contains).filter(replaced -> !isReleased(load, step))
                    .forEach(replaced -> remarks.on(load, Literals.LOAD__ITEMS, at, RemarkCode.PROTECTED_ITEM_REPLACED, item, replaced));
            if (load.getLeftOut().contains(item)) {
                remarks.on(load, Literals.LOAD__ITEMS, i, RemarkCode.CHOSEN_AND_SPARED, item);
            }
        }
    }

    /** A family that declares what can be loaded declares all of it; one that declares nothing leaves it to the procedure. */
    private static void named(Load load, List<String> items, EStructuralFeature part, Optional<Family> family, Remarks remarks) {
        if (family.filter(f -> !Families.loadItems(f).isEmpty()).isEmpty()) {
            return;
        }
        for (int i = 0; i < items.size(); i++) {
            if (Families.loadItem(family.get(), items.get(i)).isEmpty()) {
                remarks.on(load, part, i, RemarkCode.UNKNOWN_LOAD_ITEM, items.get(i));
            }
        }
    }

    private static boolean isReleased(Statement statement, Step step) {
        return step.getStatements().subList(0, step.getStatements().indexOf(statement)).stream().anyMatch(Release.class::isInstance);
    }
}
