package org.benchwright.workshop;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.engine.RefusedException;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.EndpointFormatException;
import org.benchwright.workshop.internal.Message;

/**
 * Where the units of this bench are reached. A text file beside the ledger, one unit a line: {@code SERIAL = ENDPOINT}; lines that begin
 * with {@code #} are remarks. It is read, and never carried out.
 */
public final class BenchEndpoints {

    /** The file's name in the bench folder. */
    public static final String FILE = "watch.units";
    private static final long LARGEST = 1 << 20;

    private final Map<String, Endpoint> bySerial;

    private BenchEndpoints(Map<String, Endpoint> bySerial) {
        this.bySerial = Map.copyOf(bySerial);
    }

    /** Where a unit is reached, if that was said. */
    Optional<Endpoint> of(String serial) {
        return Optional.ofNullable(bySerial.get(serial));
    }

    /**
     * Reads the file; a bench without one reaches nothing.
     *
     * @throws RefusedException if it can't be read; the message names the line
     */
    public static BenchEndpoints read(Path file) throws RefusedException {
        if (!Files.exists(file)) {
            return new BenchEndpoints(Map.of());
        }
        try {
            if (Files.size(file) > LARGEST) {
                throw new RefusedException(Message.WATCH_FILE_LARGE.text(file.toString()));
            }
            return of(Files.readAllLines(file, StandardCharsets.UTF_8), file.toString());
        } catch (IOException e) {
            throw new RefusedException(Message.WATCH_FILE_UNREADABLE.text(file.toString(), String.valueOf(e.getMessage())));
        }
    }

    private static BenchEndpoints of(List<String> lines, String file) throws RefusedException {
        Map<String, Endpoint> found = new HashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            // Some editors begin a file with a byte order mark, which nobody sees.
            String line = (i == 0 ? lines.get(i).replaceFirst("^\uFEFF", "") : lines.get(i)).strip();
            if (!line.isEmpty() && !line.startsWith("#")) {
                String place = file + ":" + (i + 1);
                int equals = line.indexOf('=');
                String serial = equals < 0 ? "" : line.substring(0, equals).strip();
                if (serial.isEmpty() || found.containsKey(serial)) {
                    throw new RefusedException((serial.isEmpty() ? Message.WATCH_FILE_LINE : Message.WATCH_FILE_TWICE).text(place, serial));
                }
                found.put(serial, endpoint(line.substring(equals + 1), place));
            }
        }
        return new BenchEndpoints(found);
    }

    private static Endpoint endpoint(String text, String place) throws RefusedException {
        try {
            return Endpoint.parse(text.strip());
        } catch (EndpointFormatException e) {
            throw new RefusedException(Message.WATCH_FILE_ENDPOINT.text(place, e.getMessage()));
        }
    }

    /**
     * These and one more, which takes the place of one for the same unit.
     *
     * @throws RefusedException if the text is no endpoint
     */
    public BenchEndpoints with(String serial, String endpoint) throws RefusedException {
        Map<String, Endpoint> more = new HashMap<>(bySerial);
        more.put(serial, endpoint(endpoint, serial));
        return new BenchEndpoints(more);
    }
}
