package org.benchwright.ui.internal.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.language.FamilyChoice;
import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.ui.internal.Message;

/**
 * Reads procedures from the disk in order to carry them out or to sign them, one at a time, by language services that are made once. Any
 * thread may ask but the display's: the first reading takes a second or two.
 */
public final class ProcedureReading {

    private Optional<ProcedureReader> reader = Optional.empty();

    /**
     * Reads a procedure for one of the families that it applies to.
     *
     * @throws EntryRefusedException if it can't be carried out, with the remarks that say why
     */
    public synchronized Reading.Ready read(Path file, FamilyChoice choice) throws EntryRefusedException {
        Reading reading = reader().read(file, choice);
        if (reading instanceof Reading.Ready ready) {
            return ready;
        }
        Reading.Refused refused = (Reading.Refused) reading;
        throw new EntryRefusedException(refused.remarks().isEmpty() ? Message.PROCEDURE_NOT_ONE.text(file.toString(), refused.found())
                : Message.PROCEDURE_REFUSED.text(refused.remarks().stream().map(Object::toString).collect(Collectors.joining("\n"))));
    }

    /** The families that the procedure of a file can be read for, the one that it names first; none where it has errors. */
    public synchronized List<String> families(Path file) {
        return reader().families(file);
    }

    private ProcedureReader reader() {
        if (reader.isEmpty()) {
            reader = Optional.of(new ProcedureReader(LanguageServices.create()));
        }
        return reader.get();
    }
}
