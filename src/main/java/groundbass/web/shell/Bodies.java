package groundbass.web.shell;

import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.security.RouteRole;
import jakarta.servlet.MultipartConfigElement;
import java.util.Locale;
import java.util.Map;

/**
 * Refuses, before any of it is read, a body with files where no route of ours takes files. From somebody who is not
 * signed in, a form with a file is read only as far as a form without one: what they typed must come back to them.
 */
final class Bodies {
    /** Marks a route that takes files. */
    enum Taking implements RouteRole {
        /** Of the usual size. */
        FILES,
        /** A whole series, with its recordings and sounds. */
        ARCHIVES
    }

    private static final String SETTING = "org.eclipse.jetty.multipartConfig";
    private static final long MOST = 2_000_000;
    private static final int IN_MEMORY = 1_000_000;

    private Bodies() {}

    static void check(Context ctx, AccessFilter accessFilter) {
        String type = ctx.contentType();
        if (type == null || !type.toLowerCase(Locale.ROOT).startsWith("multipart/")) {
            return;
        }
        boolean archives = ctx.routeRoles().contains(Taking.ARCHIVES);
        if (!archives && !ctx.routeRoles().contains(Taking.FILES)) {
            throw new HttpResponseException(
                    HttpStatus.UNSUPPORTED_MEDIA_TYPE.getCode(), "no files are taken here", Map.of());
        }
        if (!accessFilter.principal(ctx).may(Role.EDUCATOR)) {
            if (ctx.req().getContentLengthLong() > MOST) {
                throw new ContentTooLargeResponse();
            }
            takeUpTo(ctx, MOST);
        } else if (archives) {
            takeUpTo(ctx, Routes.MOST_OF_AN_ARCHIVE);
        }
    }

    private static void takeUpTo(Context ctx, long most) {
        String folder = System.getProperty("java.io.tmpdir");
        ctx.req().setAttribute(SETTING, new MultipartConfigElement(folder, most, most, IN_MEMORY));
    }
}
