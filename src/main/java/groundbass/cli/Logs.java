package groundbass.cli;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.JsonEncoder;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import org.slf4j.LoggerFactory;

/** Sets the log as its operator wants it; before, and for other commands, it is as {@code logback.xml} says. */
final class Logs {
    private static final String OURS = "groundbass";
    private static final String CONSOLE = "console";

    private Logs() {}

    static void write(LogForm form, LogLevel from) {
        var context = (LoggerContext) LoggerFactory.getILoggerFactory();
        var root = context.getLogger(Logger.ROOT_LOGGER_NAME);
        context.getLogger(OURS).setLevel(from.ours());
        root.setLevel(from.ofLibraries());
        if (form == LogForm.JSON) {
            writeJson(context, (ConsoleAppender<ILoggingEvent>) root.getAppender(CONSOLE));
        }
    }

    private static void writeJson(LoggerContext context, ConsoleAppender<ILoggingEvent> console) {
        var encoder = new JsonEncoder();
        encoder.setContext(context);
        encoder.start();
        console.stop();
        console.setEncoder(encoder);
        console.start();
    }
}
