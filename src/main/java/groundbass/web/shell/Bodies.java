package groundbass.web.shell;

import io.javalin.http.BadRequestResponse;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.security.RouteRole;
import jakarta.servlet.MultipartConfigElement;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Refuses a form that cannot be decoded and, before any of it is read, a body with files where no route of ours takes
 * files. From somebody who is not
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

    private static final String FORM = "application/x-www-form-urlencoded";

    /** Where it is not refused, the field would be read as if it were not there. */
    private static final Pattern UNDECODABLE = Pattern.compile("%(?![0-9A-Fa-f]{2})");

    private static final String SETTING = "org.eclipse.jetty.multipartConfig";
    private static final long MOST = 2_000_000;
    private static final int IN_MEMORY = 1_000_000;

    private Bodies() {}

    static void check(Context ctx, AccessFilter accessFilter) {
        String type = String.valueOf(ctx.contentType()).toLowerCase(Locale.ROOT);
        if (type.startsWith(FORM) && UNDECODABLE.matcher(ctx.body()).find()) {
            throw new BadRequestResponse("a percent sign in a form begins no byte");
        }
        if (type.startsWith("multipart/")) {
            checkFiles(ctx, accessFilter);
        }
    }

    private static void checkFiles(Context ctx, AccessFilter accessFilter) {
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
