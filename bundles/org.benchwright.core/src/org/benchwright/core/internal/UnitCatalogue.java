package org.benchwright.core.internal;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.HECTO;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;
import static javax.measure.MetricPrefix.NANO;
import static javax.measure.MetricPrefix.PICO;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

import javax.measure.Unit;

import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/** Which shop word stands for which unit of the units library, and which other spellings mean the same. */
public final class UnitCatalogue {

    private UnitCatalogue() {
    }

    /**
     * Does something with the units library. The library looks for its arithmetic through the thread's context class
     * loader, which inside OSGi sees none of the library; so the library's own loader stands in meanwhile.
     *
     * @param <T> what comes of it
     * @param work what to do
     * @return what came of it
     */
    public static <T> T withLibrary(Supplier<T> work) {
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        thread.setContextClassLoader(AbstractUnit.class.getClassLoader());
        try {
            return work.get();
        } finally {
            thread.setContextClassLoader(before);
        }
    }

    /**
     * The words in the order in which they are offered.
     *
     * @return word to unit; a new map at each call
     */
    public static Map<String, Unit<?>> words() {
        Map<String, Unit<?>> words = new LinkedHashMap<>();
        addElectrical(words);
        addTimeAndTemperature(words);
        addMechanical(words);
        words.put("%", Units.PERCENT);
        words.put("ppm", AbstractUnit.ONE.divide(1_000_000));
        return words;
    }

    /**
     * Spellings with special letters that people paste or scan.
     *
     * @return other spelling to shop word
     */
    public static Map<String, String> otherSpellings() {
        Map<String, String> others = new LinkedHashMap<>();
        // U+00B5 micro sign, U+03BC Greek mu, U+03A9 Greek omega, U+2126 ohm sign, U+00B0 degree sign
        for (String mu : new String[] { "\u00b5", "\u03bc" }) {
            for (String base : new String[] { "V", "A", "F", "H", "s" }) {
                others.put(mu + base, "u" + base);
            }
        }
        for (String omega : new String[] { "\u03a9", "\u2126" }) {
            others.put(omega, "ohm");
            for (String prefix : new String[] { "m", "k", "M" }) {
                others.put(prefix + omega, prefix + "ohm");
            }
        }
        // U+2103 is both in one sign; U+00BA is the raised letter that many keyboards have in the place of the degree sign.
        others.put("\u00b0C", "degC");
        others.put("\u00baC", "degC");
        others.put("\u2103", "degC");
        return others;
    }

    private static void addElectrical(Map<String, Unit<?>> words) {
        words.put("V", Units.VOLT);
        words.put("mV", MILLI(Units.VOLT));
        words.put("uV", MICRO(Units.VOLT));
        words.put("kV", KILO(Units.VOLT));
        words.put("A", Units.AMPERE);
        words.put("mA", MILLI(Units.AMPERE));
        words.put("uA", MICRO(Units.AMPERE));
        words.put("ohm", Units.OHM);
        words.put("mohm", MILLI(Units.OHM));
        words.put("kohm", KILO(Units.OHM));
        words.put("Mohm", MEGA(Units.OHM));
        words.put("W", Units.WATT);
        words.put("mW", MILLI(Units.WATT));
        words.put("kW", KILO(Units.WATT));
        words.put("F", Units.FARAD);
        words.put("mF", MILLI(Units.FARAD));
        words.put("uF", MICRO(Units.FARAD));
        words.put("nF", NANO(Units.FARAD));
        words.put("pF", PICO(Units.FARAD));
        words.put("H", Units.HENRY);
        words.put("mH", MILLI(Units.HENRY));
        words.put("uH", MICRO(Units.HENRY));
        words.put("Ah", Units.COULOMB.multiply(3600));
        words.put("mAh", MILLI(Units.COULOMB).multiply(3600));
        words.put("J", Units.JOULE);
        words.put("Wh", Units.JOULE.multiply(3600));
    }

    private static void addTimeAndTemperature(Map<String, Unit<?>> words) {
        words.put("s", Units.SECOND);
        words.put("ms", MILLI(Units.SECOND));
        words.put("us", MICRO(Units.SECOND));
        words.put("min", Units.MINUTE);
        words.put("h", Units.HOUR);
        words.put("d", Units.DAY);
        words.put("Hz", Units.HERTZ);
        words.put("kHz", KILO(Units.HERTZ));
        words.put("MHz", MEGA(Units.HERTZ));
        words.put("rpm", Units.HERTZ.divide(60));
        words.put("degC", Units.CELSIUS);
        words.put("K", Units.KELVIN);
        words.put("mK", MILLI(Units.KELVIN));
    }

    private static void addMechanical(Map<String, Unit<?>> words) {
        words.put("m", Units.METRE);
        words.put("cm", CENTI(Units.METRE));
        words.put("mm", MILLI(Units.METRE));
        words.put("m/s", Units.METRE_PER_SECOND);
        words.put("kg", Units.KILOGRAM);
        words.put("g", Units.GRAM);
        words.put("N", Units.NEWTON);
        words.put("Pa", Units.PASCAL);
        words.put("hPa", HECTO(Units.PASCAL));
        words.put("kPa", KILO(Units.PASCAL));
        words.put("mbar", Units.PASCAL.multiply(100));
        words.put("bar", Units.PASCAL.multiply(100_000));
        words.put("lx", Units.LUX);
    }
}
