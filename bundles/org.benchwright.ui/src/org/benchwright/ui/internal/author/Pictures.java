package org.benchwright.ui.internal.author;

import java.util.Locale;

import org.benchwright.core.Severity;
import org.benchwright.language.editing.ContentsKind;
import org.benchwright.language.editing.Proposal;
import org.eclipse.jface.resource.ImageRegistry;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.ResourceLocator;
import org.eclipse.swt.graphics.Image;

/** Small pictures of the Author perspective, each of a shape of its own; kept as long as the display. */
final class Pictures {

    private Pictures() {
    }

    static Image of(Severity severity) {
        return image("remark-" + severity.word());
    }

    static Image of(ContentsKind kind) {
        return image(switch (kind) {
            case FAMILY -> "family";
            case PROCEDURE -> "author";
            case GROUP -> "group";
            case LAMP -> "lamp";
            case DISPLAY -> "display";
            case MODE -> "mode";
            case ITEM -> "item";
            case FAULT -> "fault";
            case HAZARD -> "hazard";
            case INSTRUMENT -> "instrument";
            case PRECONDITION -> "precondition";
            case STAGE -> "stage";
            case SOAK -> "soak";
            case MAKE_SAFE -> "make-safe";
            case STEP -> "step";
        });
    }

    static Image of(Proposal.Kind kind) {
        return image("proposal-" + kind.name().toLowerCase(Locale.ROOT));
    }

    private static Image image(String name) {
        ImageRegistry registry = JFaceResources.getImageRegistry();
        String key = "org.benchwright.ui.author." + name;
        if (registry.getDescriptor(key) == null) {
            ResourceLocator.imageDescriptorFromBundle(Pictures.class, "icons/" + name + ".svg")
                    .ifPresent(descriptor -> registry.put(key, descriptor));
        }
        return registry.get(key);
    }
}
