package groundbass.web.shell;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.util.ArrayList;
import java.util.List;

/** Where page groups name their routes. Every route says who may use it. */
public final class Routes {
    /** The most bytes of a series that is sent, with its recordings and sounds. */
    public static final long MOST_OF_AN_ARCHIVE = 8_000_000_000L;

    private final RoutesConfig config;
    private final List<Route> all = new ArrayList<>();

    /** A way into the site: a GET answers HEAD as well. */
    public record Route(HandlerType method, String path, Role role) {}

    public Routes(RoutesConfig config) {
        this.config = config;
    }

    /** GET and HEAD: Javalin would answer HEAD by itself, with a length of nothing. */
    public void get(String path, Role role, Handler handler) {
        all.add(new Route(HandlerType.GET, path, role));
        config.get(path, handler, role);
        config.head(path, handler, role);
    }

    public void post(String path, Role role, Handler handler) {
        all.add(new Route(HandlerType.POST, path, role));
        config.post(path, handler, role);
    }

    /** A form with files in it; see {@link Bodies} for what else a form may send. */
    public void postFiles(String path, Role role, Handler handler) {
        all.add(new Route(HandlerType.POST, path, role));
        config.post(path, handler, role, Bodies.Taking.FILES);
    }

    /** The same, where the file may be as large as a whole series with all its sounds: {@link #MOST_OF_AN_ARCHIVE}. */
    public void postArchives(String path, Role role, Handler handler) {
        all.add(new Route(HandlerType.POST, path, role));
        config.post(path, handler, role, Bodies.Taking.ARCHIVES);
    }

    public void put(String path, Role role, Handler handler) {
        all.add(new Route(HandlerType.PUT, path, role));
        config.put(path, handler, role);
    }

    public void patch(String path, Role role, Handler handler) {
        all.add(new Route(HandlerType.PATCH, path, role));
        config.patch(path, handler, role);
    }

    public void delete(String path, Role role, Handler handler) {
        all.add(new Route(HandlerType.DELETE, path, role));
        config.delete(path, handler, role);
    }

    /** All of them, in the order in which they were named. */
    public List<Route> all() {
        return List.copyOf(all);
    }
}
