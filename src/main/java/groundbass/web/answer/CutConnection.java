package groundbass.web.answer;

import io.javalin.http.Context;
import java.io.IOException;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;

/**
 * The end of a connection whose answer has begun and cannot be finished: its reader must not take what has come for all of
 * it. An answer in chunks that ends as usual would look whole (RFC 9112 section 8).
 */
public final class CutConnection {
    private CutConnection() {}

    public static void of(Context ctx) {
        var connection = ServletContextRequest.getServletContextRequest(ctx.req())
                .getConnectionMetaData()
                .getConnection();
        connection.getEndPoint().close(new IOException("the answer broke off"));
    }
}
