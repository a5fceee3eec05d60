package groundbass.publishing.address;

import java.net.URI;
import java.util.function.Supplier;

/**
 * The addresses of the running site.
 *
 * @param origin asked each time, since the educator may choose another
 */
public record SiteAddresses(Supplier<URI> origin, boolean isTrial) implements Addresses {
    @Override
    public String site() {
        String address = origin.get().toString();
        return address.endsWith("/") ? address.substring(0, address.length() - 1) : address;
    }
}
