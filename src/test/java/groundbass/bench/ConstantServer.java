package groundbass.bench;

import io.javalin.Javalin;

/** The anchor of pages: a server that answers everything with the same short text. */
final class ConstantServer {
    private ConstantServer() {}

    public static void main(String[] args) {
        Javalin.create(config -> {
                    config.startup.showJavalinBanner = false;
                    config.routes.get("/", ctx -> ctx.result("the same for everyone"));
                })
                .start("127.0.0.1", Integer.parseInt(args[0]));
    }
}
