package org.benchwright.ui.internal.app;

import java.time.Clock;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.author.Authoring;
import org.benchwright.ui.internal.bench.Reminders;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.StillWindow;
import org.benchwright.ui.internal.house.CameraFolder;
import org.benchwright.ui.internal.house.CameraHandler;
import org.benchwright.ui.internal.house.House;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.e4.core.contexts.IEclipseContext;
import org.eclipse.ui.application.IWorkbenchConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchAdvisor;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;
import org.eclipse.ui.ide.IDE;

/** The workbench as this product has it: the window's services can be had by every view, and its layout is kept. */
final class BenchWorkbenchAdvisor extends WorkbenchAdvisor {

    private final Desk desk;
    private final Authoring authoring;
    private final Settings settings;
    private final House house;

    BenchWorkbenchAdvisor(Desk desk, Authoring authoring, House house, Settings settings) {
        this.house = house;
        this.desk = desk;
        this.authoring = authoring;
        this.settings = settings;
    }

    @Override
    public void initialize(IWorkbenchConfigurer configurer) {
        IDE.registerAdapters();
        configurer.setSaveAndRestore(true);
        IEclipseContext context = configurer.getWorkbench().getService(IEclipseContext.class);
        context.set(Desk.class, desk);
        context.set(StillWindow.class, new StillWindow());
        context.set(Authoring.class, authoring);
        context.set(House.class, house);
        CameraFolder camera = new CameraFolder();
        CameraHandler.goOn(camera);
        context.set(CameraFolder.class, camera);
        context.set(Settings.class, settings);
        context.set(Reminders.class, new Reminders(desk::units, Clock.systemUTC()));
        WorkbenchImages.declare(configurer);
    }

    @Override
    public String getInitialWindowPerspectiveId() {
        return Ids.START;
    }

    @Override
    public WorkbenchWindowAdvisor createWorkbenchWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        return new BenchWindowAdvisor(configurer);
    }

    @Override
    public void postShutdown() {
        try {
            ResourcesPlugin.getWorkspace().save(true, new NullProgressMonitor());
        } catch (CoreException e) {
            ILog.of(BenchWorkbenchAdvisor.class).log(e.getStatus());
        }
    }
}
