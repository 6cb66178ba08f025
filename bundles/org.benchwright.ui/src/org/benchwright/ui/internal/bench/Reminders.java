package org.benchwright.ui.internal.bench;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Supplier;

import org.benchwright.present.LookReminder;
import org.benchwright.present.UnitRow;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.swt.widgets.Shell;

/**
 * Reminds of looks at units on soak: a line that stays, and a notice each time one becomes near, due, or is missed. It reads, and decides
 * nothing. Used by the display's thread.
 */
public final class Reminders {

    private static final int TICK = 1000;
    private static final String NODE = "org.benchwright.ui";
    private static final String SILENT = "silentReminders";

    private final Supplier<List<UnitRow>> units;
    private final Clock clock;
    private final List<Consumer<List<LookReminder>>> lines = new CopyOnWriteArrayList<>();
    private List<LookReminder> looks = List.of();
    private Set<Told> told = Set.of();

    /** What somebody was reminded of. */
    private record Told(String test, Instant due, LookReminder.Kind kind) {

        static Told of(LookReminder look) {
            return new Told(look.test(), look.due(), look.kind());
        }
    }

    /**
     * @param units the units on the bench, as they were last read
     * @param clock wall time
     */
    public Reminders(Supplier<List<UnitRow>> units, Clock clock) {
        this.units = units;
        this.clock = clock;
    }

    /** Reminds in a window as long as it is open. */
    public void begin(Shell window) {
        tick(window, new Notice(window));
    }

    private void tick(Shell window, Notice notice) {
        if (window.isDisposed()) {
            return;
        }
        // First the next one: whatever goes wrong with this one, reminders go on.
        window.getDisplay().timerExec(TICK, () -> tick(window, notice));
        look(window, notice);
    }

    private void look(Shell window, Notice notice) {
        Instant instant = clock.instant();
        List<LookReminder> now = LookReminder.of(units.get(), instant);
        List<LookReminder> news = now.stream().filter(look -> !told.contains(Told.of(look))).toList();
        Set<Told> known = new HashSet<>();
        now.forEach(look -> known.add(Told.of(look)));
        told = known;
        if (!now.equals(looks)) {
            looks = now;
            lines.forEach(line -> line.accept(now));
        }
        if (now.isEmpty()) {
            notice.close();
        } else if (!news.isEmpty()) {
            boolean urgent = news.stream().anyMatch(look -> look.kind() != LookReminder.Kind.COMING);
            notice.show(news.stream().map(look -> look.words(instant, ZoneId.systemDefault())).toList(), Words.LOOKS_GO.text(), urgent);
            if (urgent && sounds()) {
                window.getDisplay().beep();
            }
        }
    }

    /** The looks to be reminded of now. */
    List<LookReminder> looks() {
        return looks;
    }

    /** Tells a line whenever they change. */
    void add(Consumer<List<LookReminder>> line) {
        lines.add(line);
    }

    /** Tells it no more. */
    void remove(Consumer<List<LookReminder>> line) {
        lines.remove(line);
    }

    /** True if a look that is due or missed sounds. */
    public static boolean sounds() {
        return !InstanceScope.INSTANCE.getNode(NODE).getBoolean(SILENT, false);
    }

    /** Whether they sound, from now on and after the next start. */
    static void sound(boolean on) {
        InstanceScope.INSTANCE.getNode(NODE).putBoolean(SILENT, !on);
    }
}
