package groundbass.web.gate;

import java.util.Locale;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.handler.EagerContentHandler;

/** Reads forms before a thread is given to them, so that a form that comes slowly costs nobody anything. */
final class Forms extends EagerContentHandler {
    private static final String FORM = "application/x-www-form-urlencoded";
    /** What each piece costs beside its bytes, for those that come byte by byte. */
    private static final int COST_OF_A_PIECE = 64;

    /** @param most bytes that are kept before the form is handled; the rest is read, or refused, by whoever handles it */
    Forms(long most) {
        super((Handler) null, new OnlyForms(most));
    }

    static boolean isForm(Request request) {
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        return type != null && type.toLowerCase(Locale.ROOT).startsWith(FORM);
    }

    private static final class OnlyForms extends RetainedContentLoaderFactory {
        OnlyForms(long most) {
            super(most, COST_OF_A_PIECE, false);
        }

        @Override
        public String getApplicableMimeType() {
            return FORM;
        }
    }
}
