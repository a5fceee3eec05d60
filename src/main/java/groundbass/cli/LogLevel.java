package groundbass.cli;

import ch.qos.logback.classic.Level;

/** From which weight on something is written into the log. What libraries say is told from warnings on at most. */
enum LogLevel {
    DEBUG(Level.DEBUG),
    INFO(Level.INFO),
    WARN(Level.WARN),
    ERROR(Level.ERROR);

    private final Level ours;

    LogLevel(Level ours) {
        this.ours = ours;
    }

    Level ours() {
        return ours;
    }

    Level ofLibraries() {
        return ours.isGreaterOrEqual(Level.WARN) ? ours : Level.WARN;
    }
}
