package org.benchwright.ui.internal.app;

import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.ui.ISharedImages;
import org.eclipse.ui.application.IWorkbenchConfigurer;

/** Images that the platform's views ask for by name and that only its IDE declares: shared ones stand in. */
final class WorkbenchImages {

    private WorkbenchImages() {
    }

    static void declare(IWorkbenchConfigurer configurer) {
        declare(configurer, "IMG_OBJS_ERROR_PATH", ISharedImages.IMG_OBJS_ERROR_TSK);
        declare(configurer, "IMG_OBJS_WARNING_PATH", ISharedImages.IMG_OBJS_WARN_TSK);
        declare(configurer, "IMG_OBJS_INFO_PATH", ISharedImages.IMG_OBJS_INFO_TSK);
    }

    private static void declare(IWorkbenchConfigurer configurer, String name, String shared) {
        ImageDescriptor image = configurer.getWorkbench().getSharedImages().getImageDescriptor(shared);
        configurer.declareImage(name, image, true);
    }
}
