package groundbass.bench;

import io.javalin.Javalin;
import java.util.Random;

/**
 * What the web server allows at best: the same short text for everyone, and as many bytes from memory as
 * {@link DownloadServer} sends from a file.
 */
final class ConstantServer {
    static final String FILE = "/" + DownloadServer.NAME;

    private ConstantServer() {}

    public static void main(String[] args) {
        var bytes = new byte[DownloadServer.SIZE];
        new Random(1).nextBytes(bytes);
        Javalin.create(config -> {
                    config.startup.showJavalinBanner = false;
                    config.routes.get("/", ctx -> ctx.result("the same for everyone"));
                    config.routes.get(FILE, ctx -> ctx.disableCompression().result(bytes));
                })
                .start("127.0.0.1", Integer.parseInt(args[0]));
    }
}
