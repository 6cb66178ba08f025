package org.benchwright.watch.internal;

import java.io.IOException;
import java.math.BigDecimal;
import java.net.ConnectException;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.BufferUnderflowException;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;

import org.benchwright.core.Durations;
import org.benchwright.core.PointAddress;
import org.benchwright.watch.CannotSeeException;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.PointValues;
import org.benchwright.watch.internal.RegisterSpans.Span;

import com.digitalpetri.modbus.client.ModbusTcpClient;
import com.digitalpetri.modbus.exceptions.ModbusResponseException;
import com.digitalpetri.modbus.exceptions.ModbusTimeoutException;
import com.digitalpetri.modbus.pdu.ReadCoilsRequest;
import com.digitalpetri.modbus.pdu.ReadDiscreteInputsRequest;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;

/** Reads the points of a unit by Modbus TCP. After anything but an answer the connection is given up, and made anew for the next read. */
public final class ModbusReader implements PointReader {

    private final ModbusWire wire;
    private final Endpoint.Modbus at;
    private final Duration timeout;
    private final List<Span> spans;
    private final Optional<String> never;
    private final AtomicReference<OptionalInt> otherUnit = new AtomicReference<>(OptionalInt.empty());
    private Optional<ModbusTcpClient> client = Optional.empty();
    private boolean closed;

    /**
     * @param wire    shared by all connections
     * @param at      where the unit is
     * @param points  what is read
     * @param timeout how long an answer may take
     */
    public ModbusReader(ModbusWire wire, Endpoint.Modbus at, List<PointAddress> points, Duration timeout) {
        this.wire = wire;
        this.at = at;
        this.timeout = timeout;
        List<PointAddress.Register> registers = points.stream().filter(PointAddress.Register.class::isInstance)
                .map(PointAddress.Register.class::cast).toList();
        this.never = registers.size() == points.size() ? Optional.empty() : Optional.of(Message.SEE_NO_SERVER_STATE.text());
        this.spans = RegisterSpans.of(registers);
    }

    @Override
    public CompletionStage<PointValues> read() {
        if (never.isPresent()) {
            return CompletableFuture.failedFuture(new CannotSeeException(never.get()));
        }
        otherUnit.set(OptionalInt.empty());
        CompletableFuture<PointValues> result = new CompletableFuture<>();
        values().orTimeout(timeout.toMillis(), TimeUnit.MILLISECONDS).whenComplete((values, failure) -> {
            if (failure == null) {
                result.complete(values);
            } else {
                Throwable cause = cause(failure);
                if (!(cause instanceof ModbusResponseException)) {
                    giveUp();
                }
                result.completeExceptionally(new CannotSeeException(words(cause), cause));
            }
        });
        return result;
    }

    private CompletableFuture<PointValues> values() {
        return connected().thenCompose(to -> {
            CompletableFuture<Map<PointAddress, BigDecimal>> all = CompletableFuture.completedFuture(new HashMap<>());
            for (Span span : spans) {
                all = all.thenCompose(found -> answer(to, span).thenApply(data -> {
                    put(found, span, data);
                    return found;
                }));
            }
            return all.thenApply(PointValues::new);
        });
    }

    private synchronized CompletableFuture<ModbusTcpClient> connected() {
        if (closed) {
            return CompletableFuture.failedFuture(new CannotSeeException(Message.SEE_ENDED.text()));
        }
        if (client.isPresent()) {
            return CompletableFuture.completedFuture(client.get());
        }
        ModbusTcpClient fresh = wire.client(at, bare(at.host()), timeout, other -> otherUnit.set(OptionalInt.of(other)));
        client = Optional.of(fresh);
        return fresh.connectAsync().handle((nothing, failure) -> failure == null ? CompletableFuture.completedFuture(fresh)
                : CompletableFuture.<ModbusTcpClient>failedFuture(unconnected(cause(failure)))).thenCompose(made -> made).toCompletableFuture();
    }

    /** What the system says of a way that it can't take is no connection that was lost. */
    private Throwable unconnected(Throwable cause) {
        return cause instanceof SocketException && !(cause instanceof ConnectException)
                ? new CannotSeeException(Message.SEE_NO_WAY.text(at.words(), String.valueOf(cause.getMessage())), cause) : cause;
    }

    private static String bare(String host) {
        return host.startsWith("[") ? host.substring(1, host.length() - 1) : host;
    }

    private CompletionStage<byte[]> answer(ModbusTcpClient to, Span span) {
        int unit = at.unit();
        return switch (span.table()) {
            case COIL -> to.readCoilsAsync(unit, new ReadCoilsRequest(span.first(), span.count())).thenApply(r -> r.coils());
            case DISCRETE_INPUT -> to.readDiscreteInputsAsync(unit, new ReadDiscreteInputsRequest(span.first(), span.count()))
                    .thenApply(r -> r.inputs());
            case HOLDING_REGISTER -> to.readHoldingRegistersAsync(unit, new ReadHoldingRegistersRequest(span.first(), span.count()))
                    .thenApply(r -> r.registers());
            case INPUT_REGISTER -> to.readInputRegistersAsync(unit, new ReadInputRegistersRequest(span.first(), span.count()))
                    .thenApply(r -> r.registers());
        };
    }

    private void put(Map<PointAddress, BigDecimal> found, Span span, byte[] data) {
        int bytes = span.table().bits() ? (span.count() + 7) / 8 : 2 * span.count();
        if (data.length != bytes) {
            throw new CompletionException(new CannotSeeException(Message.SEE_AMOUNT.text(at.words())));
        }
        for (PointAddress.Register point : span.points()) {
            found.put(point, RegisterNumbers.of(point, data, span.first()).orElseThrow(() -> new CompletionException(
                    new CannotSeeException(Message.SEE_GARBLED.text(at.words(), "NaN")))));
        }
    }

    private static Throwable cause(Throwable failure) {
        Throwable cause = failure;
        while (cause instanceof CompletionException && cause.getCause() != null) {
            cause = cause.getCause();
        }
        return cause;
    }

    private String words(Throwable cause) {
        if (cause instanceof CannotSeeException) {
            return cause.getMessage();
        } else if (cause instanceof ModbusResponseException answered) {
            return exception(answered.getExceptionCode()).text(at.words(), String.valueOf(answered.getExceptionCode()));
        } else if (cause instanceof TimeoutException || cause instanceof ModbusTimeoutException
                || cause.getClass().getSimpleName().contains("Timeout")) {
            OptionalInt other = otherUnit.get();
            return other.isPresent() ? Message.SEE_OTHER_UNIT.text(at.words(), String.valueOf(other.getAsInt()))
                    : Message.SEE_NO_ANSWER.text(at.words(), Durations.words(timeout));
        } else if (cause instanceof ConnectException) {
            return Message.SEE_REFUSED.text(at.words());
        } else if (cause instanceof UnknownHostException) {
            return Message.SEE_UNKNOWN_HOST.text(at.host());
        } else if (cause instanceof IOException || String.valueOf(cause.getMessage()).contains("disconnect")) {
            return Message.SEE_LOST.text(at.words());
        } else if (cause instanceof BufferUnderflowException) {
            return Message.SEE_AMOUNT.text(at.words());
        }
        return Message.SEE_GARBLED.text(at.words(), String.valueOf(cause.getMessage()));
    }

    /** What to look for: the codes as the Modbus Application Protocol Specification V1.1b3, section 7, has them. */
    private static Message exception(int code) {
        return switch (code) {
            case 4, 5, 6, 8 -> Message.SEE_EXCEPTION_OF_UNIT;
            case 10, 11 -> Message.SEE_EXCEPTION_OF_GATEWAY;
            default -> Message.SEE_EXCEPTION;
        };
    }

    private synchronized void giveUp() {
        client.ifPresent(ModbusTcpClient::disconnectAsync);
        client = Optional.empty();
    }

    @Override
    public synchronized void close() {
        closed = true;
        giveUp();
    }
}
