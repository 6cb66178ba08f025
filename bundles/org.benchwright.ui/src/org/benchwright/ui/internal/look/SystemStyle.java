package org.benchwright.ui.internal.look;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Path;

import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.URIUtil;
import org.osgi.framework.FrameworkUtil;

/** How the system's toolkit draws what no style sheet of the window reaches, such as the frame of a check box: it has a sheet of its own. */
public final class SystemStyle {

    /** Where the window's toolkit looks for it, on systems that draw by such sheets. */
    private static final String PROPERTY = "org.eclipse.swt.internal.gtk.cssFile";

    private SystemStyle() {
    }

    /** Has it drawn so from the first window on; without effect once there is one. */
    public static void use() {
        if (!Platform.WS_GTK.equals(Platform.getWS()) || System.getProperty(PROPERTY) != null) {
            return;
        }
        URL sheet = FrameworkUtil.getBundle(SystemStyle.class).getEntry("css/system.css");
        try {
            System.setProperty(PROPERTY, Path.of(URIUtil.toURI(FileLocator.toFileURL(sheet))).toString());
        } catch (IOException | URISyntaxException notThere) {
            // All can be done without it.
            ILog.of(SystemStyle.class).warn(String.valueOf(notThere.getMessage()), notThere);
        }
    }
}
