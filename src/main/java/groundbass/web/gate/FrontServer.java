package groundbass.web.gate;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.server.ForwardedRequestCustomizer;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.Request;

/**
 * Takes the caller's address and scheme from the front servers in between, where the operator says how many there are.
 * Each of them adds the address that it sees at the end of {@code X-Forwarded-For}; so the caller's is the one that the
 * first of our own front servers added, and whatever stands further left was written by the caller and counts for
 * nothing. No other header is believed; {@code Forwarded} (RFC 7239) is not read. A method comes from the request line
 * alone.
 */
public final class FrontServer implements HttpConfiguration.Customizer {
    private static final String FOR = "X-Forwarded-For";
    private static final String PROTO = "X-Forwarded-Proto";
    private static final Set<String> OURS = Set.of("x-forwarded-for", "x-forwarded-proto", "x-http-method-override");

    private final int hops;
    private final ForwardedRequestCustomizer reader = new ForwardedRequestCustomizer();

    /** @param hops how many front servers pass a request on, one after the other; 0 where readers connect directly */
    public FrontServer(int hops) {
        this.hops = hops;
        reader.setForwardedHeader(null);
        reader.setForwardedHostHeader(null);
        reader.setForwardedServerHeader(null);
        reader.setForwardedPortHeader(null);
        reader.setForwardedHttpsHeader(null);
        reader.setForwardedCipherSuiteHeader(null);
        reader.setForwardedSslSessionIdHeader(null);
    }

    @Override
    public Request customize(Request request, HttpFields.Mutable answer) {
        var believed = new Believed(request, believed(request.getHeaders()));
        return hops == 0 ? believed : reader.customize(believed, answer);
    }

    private HttpFields believed(HttpFields sent) {
        var fields = HttpFields.build();
        sent.stream().filter(field -> !OURS.contains(field.getLowerCaseName())).forEach(fields::add);
        if (hops > 0) {
            fromTheRight(sent.getCSV(FOR, false)).ifPresent(caller -> fields.add(new HttpField(FOR, caller)));
            fromTheRight(sent.getCSV(PROTO, false)).ifPresent(scheme -> fields.add(new HttpField(PROTO, scheme)));
        }
        return fields.asImmutable();
    }

    /** What the first front server added; fewer entries than front servers were not added by all of them. */
    private Optional<String> fromTheRight(List<String> entries) {
        return entries.isEmpty() ? Optional.empty() : Optional.of(entries.get(Math.max(0, entries.size() - hops)));
    }

    private static final class Believed extends Request.Wrapper {
        private final HttpFields fields;

        Believed(Request request, HttpFields fields) {
            super(request);
            this.fields = fields;
        }

        @Override
        public HttpFields getHeaders() {
            return fields;
        }
    }
}
