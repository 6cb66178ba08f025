package org.benchwright.cli.internal;

import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.Version;

/** The command line as the product starts it. */
public final class BenchApplication implements IApplication {

	@Override
	public Object start(IApplicationContext context) {
		Version version = FrameworkUtil.getBundle(BenchApplication.class).getVersion();
		System.out.println("Benchwright " + version.getMajor() + "." + version.getMinor() + "." + version.getMicro());
		return EXIT_OK;
	}

	@Override
	public void stop() {
		// Nothing runs beside start().
	}
}
