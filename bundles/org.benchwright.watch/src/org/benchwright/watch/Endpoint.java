package org.benchwright.watch;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.DurationFormatException;
import org.benchwright.core.Durations;
import org.benchwright.watch.internal.Message;

/** Where a unit is reached. It is the bench's affair, not the family's, and is read as data only. */
public sealed interface Endpoint {

    /** The usual port of Modbus TCP. */
    int MODBUS_PORT = 502;
    /** The usual port of OPC UA. */
    int OPC_UA_PORT = 4840;

    /** As it is written in the bench's file and in records. */
    String words();

    /** True if there is no unit behind it. */
    default boolean simulated() {
        return false;
    }

    /**
     * A unit that speaks Modbus TCP.
     *
     * @param host name or address
     * @param port from 1 to 65535
     * @param unit the unit id behind it, from 0 to 255; 1 where there is only one
     */
    record Modbus(String host, int port, int unit) implements Endpoint {
        @Override
        public String words() {
            return "modbus " + host + ":" + port + " unit " + unit;
        }
    }

    /** How an OPC UA connection is secured. */
    enum Security {
        NONE, BASIC256SHA256
    }

    /**
     * A unit with an OPC UA server.
     *
     * @param url       such as {@code opc.tcp://192.0.2.8:4840}
     * @param security  how the connection is secured
     * @param subscribe true if the server is asked to tell changes by itself; false if it is polled
     */
    record OpcUa(String url, Security security, boolean subscribe) implements Endpoint {
        @Override
        public String words() {
            return "opcua " + url + " security " + security.name().toLowerCase(Locale.ROOT) + (subscribe ? " subscribed" : "");
        }
    }

    /**
     * No unit at all, for rehearsals.
     *
     * @param stopsAfter when it stops; empty if it runs on
     * @param silentFrom when it cannot be seen for a while; empty if it always can
     * @param silentFor  for how long
     */
    record Simulated(Optional<Duration> stopsAfter, Optional<Duration> silentFrom, Duration silentFor) implements Endpoint {
        @Override
        public String words() {
            return "simulated" + stopsAfter.map(time -> " stops after " + Durations.words(time)).orElse("")
                    + silentFrom.map(time -> " silent from " + Durations.words(time) + " for " + Durations.words(silentFor)).orElse("");
        }

        @Override
        public boolean simulated() {
            return true;
        }
    }

    /**
     * Reads an endpoint: {@code modbus HOST[:PORT] [unit N]}, {@code opcua URL [security none|basic256sha256] [subscribed]} or
     * {@code simulated [stops after TIME] [silent from TIME for TIME]}.
     *
     * @throws EndpointFormatException if it is none; the message says what was expected
     */
    static Endpoint parse(String text) throws EndpointFormatException {
        String written = text.strip();
        Matcher modbus = Forms.MODBUS.matcher(written);
        Matcher opcUa = Forms.OPC_UA.matcher(written);
        Matcher simulated = Forms.SIMULATED.matcher(written);
        if (modbus.matches()) {
            return new Modbus(modbus.group(1), number(modbus.group(2), MODBUS_PORT, 1, 65535, text), number(modbus.group(3), 1, 0, 255, text));
        } else if (opcUa.matches()) {
            int port = number(opcUa.group(2), OPC_UA_PORT, 1, 65535, text);
            String url = "opc.tcp://" + opcUa.group(1) + (opcUa.group(2) == null ? "" : ":" + port) + opcUa.group(3);
            boolean secured = opcUa.group(4) == null || opcUa.group(4).equalsIgnoreCase("basic256sha256");
            return new OpcUa(url, secured ? Security.BASIC256SHA256 : Security.NONE, opcUa.group(5) != null);
        } else if (simulated.matches()) {
            Optional<Duration> silent = time(simulated.group(2), text);
            return new Simulated(time(simulated.group(1), text), silent, time(simulated.group(3), text).orElse(Duration.ZERO));
        }
        throw new EndpointFormatException(Message.ENDPOINT_NOT_UNDERSTOOD.text(text));
    }

    private static int number(String digits, int otherwise, int least, int most, String text) throws EndpointFormatException {
        int number = digits == null ? otherwise : Integer.parseInt(digits);
        if (number < least || number > most) {
            throw new EndpointFormatException(Message.ENDPOINT_NUMBER.text(text, digits, String.valueOf(least), String.valueOf(most)));
        }
        return number;
    }

    private static Optional<Duration> time(String words, String text) throws EndpointFormatException {
        try {
            return words == null ? Optional.empty() : Optional.of(Durations.parse(words));
        } catch (DurationFormatException refused) {
            throw new EndpointFormatException(Message.ENDPOINT_TIME.text(text, refused.getMessage()));
        }
    }

    /** How endpoints are written. */
    final class Forms {
        private static final String HOST = "([A-Za-z0-9._-]{1,253}|\\[[0-9A-Fa-f:.]{2,45}\\])";
        private static final Pattern MODBUS = Pattern.compile("modbus\\s+" + HOST + "(?::(\\d{1,5}))?(?:\\s+unit\\s+(\\d{1,3}))?");
        private static final Pattern OPC_UA = Pattern.compile(
                "opcua\\s+opc\\.tcp://" + HOST
                + "(?::(\\d{1,5}))?((?:/[A-Za-z0-9._~/-]{0,200})?)(?:\\s+security\\s+(none|basic256sha256))?(?:\\s+(subscribed))?",
                Pattern.CASE_INSENSITIVE);
        private static final Pattern SIMULATED = Pattern.compile(
                "simulated(?:\\s+stops\\s+after\\s+(.{1,20}?))?(?:\\s+silent\\s+from\\s+(.{1,20}?)\\s+for\\s+(.{1,20}?))?");

        private Forms() {
        }
    }
}
