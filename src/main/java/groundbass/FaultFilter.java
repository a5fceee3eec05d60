package groundbass;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxy;
import ch.qos.logback.core.filter.Filter;
import ch.qos.logback.core.spi.FilterReply;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Stands before the log (logback.xml names it) and sees every fault that anything in the process logs. Of a fault that
 * comes again and again only the first in a minute is written with its trace, some more in one line, and of the rest how
 * many they were, so that a log cannot fill a disk. {@link LastResort} is told of each. Thread-safe.
 */
public final class FaultFilter extends Filter<ILoggingEvent> {
    private static final Logger log = LoggerFactory.getLogger(FaultFilter.class);
    private static final long WINDOW_MILLIS = Duration.ofMinutes(1).toMillis();
    private static final int IN_ONE_LINE = 5;
    private static final int MOST_KINDS = 200;

    private final Map<String, Window> windows = new HashMap<>();

    private static final class Window {
        private final long from;
        private int faults;

        Window(long from) {
            this.from = from;
        }

        boolean isOver(long now) {
            return now - from >= WINDOW_MILLIS || now < from;
        }
    }

    static void tell(Thread thread, Throwable fault) {
        log.error("the thread {} ended", thread.getName(), fault);
    }

    static void tellEnd(int status) {
        log.error(
                "this cannot be mended while running: the process ends with status {} and is to be started again",
                status);
    }

    @Override
    public FilterReply decide(ILoggingEvent event) {
        if (!(event.getThrowableProxy() instanceof ThrowableProxy proxy)) {
            return FilterReply.NEUTRAL;
        }
        LastResort.look(proxy.getThrowable());
        return event.getLevel().isGreaterOrEqual(Level.WARN)
                ? limited(event, proxy.getThrowable())
                : FilterReply.NEUTRAL;
    }

    private FilterReply limited(ILoggingEvent event, Throwable fault) {
        int before;
        int nth;
        synchronized (windows) {
            String kind = kind(event, fault);
            var window = windows.get(kind);
            before = window == null || !window.isOver(event.getTimeStamp()) ? 0 : window.faults;
            if (window == null || window.isOver(event.getTimeStamp())) {
                window = begin(kind, event.getTimeStamp());
            }
            nth = ++window.faults;
        }
        if (before > 1 + IN_ONE_LINE) {
            log.warn("{} faults like the following in the minute from its first", before);
        }
        if (nth > 1 && nth <= 1 + IN_ONE_LINE) {
            log.warn("again: {} ({})", event.getFormattedMessage(), String.valueOf(fault));
        }
        return nth == 1 ? FilterReply.NEUTRAL : FilterReply.DENY;
    }

    private Window begin(String kind, long now) {
        if (windows.size() >= MOST_KINDS) {
            windows.clear();
        }
        var window = new Window(now);
        windows.put(kind, window);
        return window;
    }

    /** Who logs it, and what it is and where it comes from: the message may hold an id that differs each time. */
    private static String kind(ILoggingEvent event, Throwable fault) {
        var trace = fault.getStackTrace();
        return event.getLoggerName()
                + ' '
                + event.getMessage()
                + ' '
                + fault.getClass().getName()
                + ' '
                + (trace.length == 0 ? "" : trace[0].toString());
    }
}
