package groundbass.web.shell;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;

/** Where page groups name their routes. Every route says who may use it. */
public final class Routes {
    /** The most bytes of a series that is sent, with its recordings and sounds. */
    public static final long MOST_OF_AN_ARCHIVE = 8_000_000_000L;

    private final RoutesConfig config;

    public Routes(RoutesConfig config) {
        this.config = config;
    }

    /** GET and HEAD: Javalin would answer HEAD by itself, with a length of nothing. */
    public void get(String path, Role role, Handler handler) {
        config.get(path, handler, role);
        config.head(path, handler, role);
    }

    public void post(String path, Role role, Handler handler) {
        config.post(path, handler, role);
    }

    /** A form with files in it; see {@link Bodies} for what else a form may send. */
    public void postFiles(String path, Role role, Handler handler) {
        config.post(path, handler, role, Bodies.Taking.FILES);
    }

    /** The same, where the file may be as large as a whole series with all its sounds: {@link #MOST_OF_AN_ARCHIVE}. */
    public void postArchives(String path, Role role, Handler handler) {
        config.post(path, handler, role, Bodies.Taking.ARCHIVES);
    }

    public void put(String path, Role role, Handler handler) {
        config.put(path, handler, role);
    }

    public void patch(String path, Role role, Handler handler) {
        config.patch(path, handler, role);
    }

    public void delete(String path, Role role, Handler handler) {
        config.delete(path, handler, role);
    }
}
