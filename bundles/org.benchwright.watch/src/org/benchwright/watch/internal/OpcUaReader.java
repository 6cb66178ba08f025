package org.benchwright.watch.internal;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import java.math.BigDecimal;
import java.net.ConnectException;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.PointAddress;
import org.benchwright.core.Ticker;
import org.benchwright.watch.CannotSeeException;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.PointReader;
import org.benchwright.watch.PointValues;
import org.eclipse.milo.opcua.sdk.client.DiscoveryClient;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.sdk.client.OpcUaClientConfigBuilder;
import org.eclipse.milo.opcua.sdk.client.subscriptions.OpcUaMonitoredItem;
import org.eclipse.milo.opcua.sdk.client.subscriptions.OpcUaSubscription;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.security.SecurityPolicy;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;
import org.eclipse.milo.opcua.stack.core.types.enumerated.MessageSecurityMode;
import org.eclipse.milo.opcua.stack.core.types.enumerated.TimestampsToReturn;
import org.eclipse.milo.opcua.stack.core.types.structured.EndpointDescription;
import org.eclipse.milo.opcua.stack.core.util.EndpointUtil;

/**
 * Reads the nodes of a unit by OPC UA, by polling or from what a subscription tells. After anything but an answer the session is given up,
 * and made anew for the next read.
 */
public final class OpcUaReader implements PointReader {

    /** Three times as long as the client is silent of itself. */
    private static final Duration SHORTEST_SESSION = Duration.ofSeconds(15);
    private static final int SESSION_TIMEOUTS = 4;

    private final Endpoint.OpcUa at;
    private final List<PointAddress> points;
    private final List<NodeId> nodes;
    private final Optional<String> never;
    private final Duration timeout;
    private final BenchCertificates certificates;
    private final Clock clock;
    private final Ticker ticker;
    private final OpcUaWire wire;
    private final AtomicReference<Optional<CannotSeeException>> refusal = new AtomicReference<>(Optional.empty());
    private Optional<Attempt> attempt = Optional.empty();
    private boolean closed;

    /**
     * A connection that is being made or that is made. Once it is given up its client is disconnected, also if it comes up only later: a
     * client that nobody holds would go on knocking, and a session that nobody closes is one less that the unit has for others.
     */
    private static final class Attempt {
        private final OpcUaWire wire;
        private final CompletableFuture<Session> session = new CompletableFuture<>();
        private Optional<OpcUaClient> client = Optional.empty();
        private boolean givenUp;

        private Attempt(OpcUaWire wire) {
            this.wire = wire;
        }

        private synchronized void made(OpcUaClient made) {
            client = Optional.of(made);
            if (givenUp) {
                wire.leave(made);
            }
        }

        private synchronized void giveUp() {
            givenUp = true;
            client.ifPresent(wire::leave);
        }
    }

    /** What was told last, and when anything was heard at all. */
    private static final class Session {
        private final OpcUaClient client;
        private final Map<NodeId, DataValue> told = new HashMap<>();
        private Duration heard;

        private Session(OpcUaClient client, Duration heard) {
            this.client = client;
            this.heard = heard;
        }
    }

    /**
     * @param wire         the threads that all connections share
     * @param at           where the unit is
     * @param points       what is read
     * @param timeout      how long an answer may take
     * @param certificates folder of certificates
     * @param clock        wall time, by which certificates are valid or not
     * @param ticker       monotonic time
     */
    public OpcUaReader(OpcUaWire wire, Endpoint.OpcUa at, List<PointAddress> points, Duration timeout, Path certificates, Clock clock,
            Ticker ticker) {
        this.wire = wire;
        this.at = at;
        this.points = points;
        this.timeout = timeout;
        this.certificates = new BenchCertificates(certificates);
        this.clock = clock;
        this.ticker = ticker;
        this.nodes = points.stream().flatMap(point -> node(point).stream()).toList();
        this.never = nodes.size() == points.size() ? Optional.empty() : Optional.of(Message.SEE_OPC_NO_REGISTERS.text());
    }

    private static Optional<NodeId> node(PointAddress point) {
        if (point instanceof PointAddress.Node node) {
            return NodeId.parseSafe(node.id());
        }
        return point instanceof PointAddress.ServerState ? Optional.of(NodeIds.Server_ServerStatus_State) : Optional.empty();
    }

    @Override
    public CompletionStage<PointValues> read() {
        if (never.isPresent()) {
            return CompletableFuture.failedFuture(new CannotSeeException(never.get()));
        }
        refusal.set(Optional.empty());
        CompletableFuture<PointValues> result = new CompletableFuture<>();
        session().thenCompose(this::values).orTimeout(timeout.toMillis(), TimeUnit.MILLISECONDS).whenComplete((values, failure) -> {
            if (failure == null) {
                result.complete(values);
            } else {
                CannotSeeException why = why(failure);
                giveUp();
                result.completeExceptionally(why);
            }
        });
        return result;
    }

    private CompletionStage<PointValues> values(Session open) {
        if (!at.subscribe()) {
            return open.client.readValuesAsync(0, TimestampsToReturn.Both, nodes).thenApply(this::values);
        }
        synchronized (open) {
            if (ticker.elapsed().minus(open.heard).compareTo(timeout.multipliedBy(2)) > 0) {
                return CompletableFuture.failedFuture(new CannotSeeException(Message.SEE_NO_ANSWER.text(at.words(),
                        Durations.words(timeout.multipliedBy(2)))));
            }
            if (open.told.keySet().containsAll(nodes)) {
                return CompletableFuture.completedFuture(values(nodes.stream().map(open.told::get).toList()));
            }
        }
        // Nothing told of some node yet: this once it is asked.
        return open.client.readValuesAsync(0, TimestampsToReturn.Both, nodes).thenApply(this::values);
    }

    private PointValues values(List<DataValue> read) {
        Map<PointAddress, BigDecimal> values = new HashMap<>();
        Optional<Instant> latest = Optional.empty();
        for (int i = 0; i < points.size(); i++) {
            DataValue value = read.get(i);
            if (value.statusCode() == null || !value.statusCode().isGood()) {
                throw new CompletionException(new CannotSeeException(Message.SEE_BAD_NODE.text(at.words(), nodes.get(i).toParseableString(),
                        String.valueOf(value.statusCode()))));
            }
            String node = nodes.get(i).toParseableString();
            values.put(points.get(i), number(value).orElseThrow(() -> new CompletionException(
                    new CannotSeeException(Message.SEE_NO_NUMBER.text(at.words(), node)))));
            Instant source = value.sourceTime() == null ? Instant.MIN : value.sourceTime().getJavaInstant();
            latest = latest.filter(known -> known.isAfter(source)).or(() -> source == Instant.MIN ? Optional.empty() : Optional.of(source));
        }
        return new PointValues(values, latest);
    }

    private static Optional<BigDecimal> number(DataValue read) {
        Object value = read.value().value();
        if (value instanceof Boolean on) {
            return Optional.of(on ? BigDecimal.ONE : BigDecimal.ZERO);
        } else if (value instanceof Double || value instanceof Float) {
            return Double.isFinite(((Number) value).doubleValue()) ? Optional.of(new BigDecimal(value.toString())) : Optional.empty();
        }
        return value instanceof Number ? Optional.of(new BigDecimal(value.toString())) : Optional.empty();
    }

    // ---- the session

    private synchronized CompletableFuture<Session> session() {
        if (closed) {
            return CompletableFuture.failedFuture(new CannotSeeException(Message.SEE_ENDED.text()));
        }
        if (attempt.isEmpty()) {
            Attempt begun = new Attempt(wire);
            attempt = Optional.of(begun);
            connect(begun).whenComplete((session, failure) -> {
                if (failure == null) {
                    begun.session.complete(session);
                } else {
                    begun.session.completeExceptionally(failure);
                }
            });
        }
        return attempt.get().session;
    }

    private CompletableFuture<Session> connect(Attempt begun) {
        return DiscoveryClient.getEndpoints(at.url(), wire::configure).thenCompose(offered -> {
            try {
                OpcUaClient client = OpcUaClient.create(config(chosen(offered)).build(), wire::configure);
                begun.made(client);
                return client.connectAsync().thenCompose(connected -> begun(new Session(connected, ticker.elapsed())));
            } catch (CannotSeeException | UaException e) {
                return CompletableFuture.failedFuture(e);
            }
        });
    }

    /** What fits the security that is asked for; at the address that was asked, whatever name the server gives itself. */
    private EndpointDescription chosen(List<EndpointDescription> offered) throws CannotSeeException {
        boolean secure = at.security() == Endpoint.Security.BASIC256SHA256;
        String policy = (secure ? SecurityPolicy.Basic256Sha256 : SecurityPolicy.None).getUri();
        MessageSecurityMode mode = secure ? MessageSecurityMode.SignAndEncrypt : MessageSecurityMode.None;
        EndpointDescription found = offered.stream().filter(e -> policy.equals(e.getSecurityPolicyUri()) && e.getSecurityMode() == mode).findFirst()
                .orElseThrow(() -> new CannotSeeException(Message.SEE_NO_SECURITY.text(at.url(), at.security().name())));
        return EndpointUtil.updateUrl(found, EndpointUtil.getHost(at.url()), EndpointUtil.getPort(at.url()));
    }

    private OpcUaClientConfigBuilder config(EndpointDescription endpoint) throws CannotSeeException {
        UInteger patience = uint(timeout.toMillis());
        OpcUaClientConfigBuilder config = new OpcUaClientConfigBuilder().setEndpoint(endpoint).setApplicationUri(BenchCertificates.APPLICATION_URI)
                .setApplicationName(LocalizedText.english("Benchwright watch")).setRequestTimeout(patience)
                .setSessionTimeout(uint(sessionTimeout().toMillis()))
                .setSessionEndpointValidationEnabled(false)
                .setCertificateValidator((chain, applicationUri, hosts) -> check(chain.get(0)));
        if (at.security() != Endpoint.Security.NONE) {
            BenchCertificates.Own own = certificates.own();
            config.setKeyPair(own.keys()).setCertificate(own.certificate()).setCertificateChain(new X509Certificate[] {own.certificate()});
        }
        return config;
    }

    /**
     * How long the server keeps a session that it hears nothing of. Short, since on a bad line the watch cannot close what it gives up, and
     * a unit has few sessions; longer than the time between two signs of life that the client gives by itself.
     */
    private Duration sessionTimeout() {
        Duration patient = timeout.multipliedBy(SESSION_TIMEOUTS);
        return patient.compareTo(SHORTEST_SESSION) < 0 ? SHORTEST_SESSION : patient;
    }

    private void check(X509Certificate shown) throws UaException {
        try {
            certificates.check(shown, at.url(), clock.instant());
        } catch (CannotSeeException e) {
            refusal.set(Optional.of(e));
            throw new UaException(StatusCodes.Bad_CertificateUntrusted, e);
        }
    }

    private CompletionStage<Session> begun(Session open) {
        if (!at.subscribe()) {
            return CompletableFuture.completedFuture(open);
        }
        OpcUaSubscription subscription = new OpcUaSubscription(open.client, timeout.toMillis() / 2.0);
        subscription.setLifetimeAndKeepAliveCalculated(false);
        subscription.setMaxKeepAliveCount(uint(1));
        subscription.setLifetimeCount(uint(60));
        subscription.setSubscriptionListener(new OpcUaSubscription.SubscriptionListener() {
            @Override
            public void onKeepAliveReceived(OpcUaSubscription told) {
                heard(open);
            }
        });
        List<OpcUaMonitoredItem> items = new ArrayList<>();
        for (NodeId node : nodes) {
            OpcUaMonitoredItem item = OpcUaMonitoredItem.newDataItem(node);
            item.setSamplingInterval(timeout.toMillis() / 2.0);
            item.setDataValueListener((monitored, value) -> told(open, node, value));
            items.add(item);
        }
        return subscription.createAsync().thenCompose(created -> CompletableFuture.supplyAsync(() -> {
            subscription.addMonitoredItems(items);
            subscription.createMonitoredItems();
            return open;
        }, wire.executor()));
    }

    private void heard(Session open) {
        synchronized (open) {
            open.heard = ticker.elapsed();
        }
    }

    private void told(Session open, NodeId node, DataValue value) {
        synchronized (open) {
            open.heard = ticker.elapsed();
            open.told.put(node, value);
        }
    }

    private CannotSeeException why(Throwable failure) {
        Optional<CannotSeeException> refused = refusal.get();
        if (refused.isEmpty() && isCausedBy(failure, ConnectException.class)) {
            return new CannotSeeException(Message.SEE_REFUSED.text(at.words()), failure);
        } else if (refused.isEmpty() && isCausedBy(failure, UnknownHostException.class)) {
            return new CannotSeeException(Message.SEE_UNKNOWN_HOST.text(EndpointUtil.getHost(at.url())), failure);
        }
        Throwable cause = failure;
        while (refused.isEmpty() && cause != null) {
            if (cause instanceof CannotSeeException told) {
                return told;
            } else if (isUnconnected(cause)) {
                return new CannotSeeException(Message.SEE_NO_WAY.text(at.words(), String.valueOf(cause.getMessage())), failure);
            } else if (cause instanceof TimeoutException) {
                return new CannotSeeException(Message.SEE_NO_ANSWER.text(at.words(), Durations.words(timeout)), failure);
            } else if (cause instanceof UaException status) {
                return new CannotSeeException(Message.SEE_OPC_STATUS.text(at.words(), status.getMessage()), failure);
            }
            cause = cause.getCause();
        }
        return refused.orElseGet(() -> new CannotSeeException(Message.SEE_GARBLED.text(at.words(), String.valueOf(failure.getMessage())), failure));
    }

    /** The address stands behind what the system says of a connection that could not be made, and of no other. */
    private boolean isUnconnected(Throwable cause) {
        return cause instanceof SocketException && String.valueOf(cause.getMessage()).endsWith(":" + EndpointUtil.getPort(at.url()));
    }

    private static boolean isCausedBy(Throwable failure, Class<? extends Throwable> type) {
        return Stream.iterate(failure, Objects::nonNull, Throwable::getCause).anyMatch(type::isInstance);
    }

    private synchronized void giveUp() {
        attempt.ifPresent(Attempt::giveUp);
        attempt = Optional.empty();
    }

    @Override
    public synchronized void close() {
        closed = true;
        giveUp();
    }
}
