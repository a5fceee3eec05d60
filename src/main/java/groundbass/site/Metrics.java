package groundbass.site;

import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.metrics.micrometer.MicrometerMetricsTrackerFactory;
import groundbass.store.Database;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.MeterBinder;
import io.micrometer.core.instrument.binder.jvm.ClassLoaderMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmGcMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.core.instrument.binder.logging.LogbackMetrics;
import io.micrometer.core.instrument.binder.system.DiskSpaceMetrics;
import io.micrometer.core.instrument.binder.system.FileDescriptorMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Figures of the running process for a program that watches it, under the names that Micrometer gives them; those of our
 * own begin with {@code groundbass}. They say how much, never who.
 */
final class Metrics implements AutoCloseable {
    private final PrometheusMeterRegistry registry = new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
    private final JvmGcMetrics collector = new JvmGcMetrics();
    private final LogbackMetrics log = new LogbackMetrics();

    /**
     * Of the machine, the process and the connections to its database.
     *
     * @param data the folder whose disk may become full; empty where nothing of the site lies in one
     */
    static Metrics of(Optional<Path> data, Database database) {
        var metrics = new Metrics();
        List.of(
                        new JvmMemoryMetrics(),
                        metrics.collector,
                        new JvmThreadMetrics(),
                        new ClassLoaderMetrics(),
                        new ProcessorMetrics(),
                        new UptimeMetrics(),
                        new FileDescriptorMetrics(),
                        metrics.log)
                .forEach(metrics::bind);
        data.map(Path::toFile).map(DiskSpaceMetrics::new).ifPresent(metrics::bind);
        metrics.watchConnections(database);
        return metrics;
    }

    private void bind(MeterBinder binder) {
        binder.bindTo(registry);
    }

    private void watchConnections(Database database) {
        try {
            database.dataSource()
                    .unwrap(HikariDataSource.class)
                    .setMetricsTrackerFactory(new MicrometerMetricsTrackerFactory(registry));
        } catch (SQLException e) {
            throw new IllegalStateException("the connections are no longer those of HikariCP", e);
        }
    }

    /** Of the work that no request waits for: each is counted when somebody looks. */
    void watch(Services services) {
        gauge("groundbass.letters.waiting", "Letters that have not left yet.", services, s -> s.outbox.waiting());
        gauge(
                "groundbass.letters.undelivered",
                "Letters of seven days that nobody got.",
                services,
                s -> s.outbox.undelivered());
        gauge(
                "groundbass.releases.unfinished",
                "Releases whose files are being made or wait for it.",
                services,
                s -> s.making.releases.builds().unfinished().size());
    }

    private void gauge(String name, String what, Services services, ToDoubleFunction<Services> value) {
        Gauge.builder(name, services, value).description(what).register(registry);
    }

    MeterRegistry registry() {
        return registry;
    }

    /** All of them in the text form 0.0.4 that Prometheus reads. */
    String text() {
        return registry.scrape();
    }

    @Override
    public void close() {
        collector.close();
        log.close();
        registry.close();
    }
}
