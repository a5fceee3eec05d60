package groundbass.audience.student;

import java.net.URI;
import java.util.Objects;

/**
 * Who writes a letter: so that its reader knows where it comes from, and links lead back here.
 *
 * @param site    the site's name
 * @param teacher who teaches there, as they call themselves
 * @param address the site's origin, as readers type it
 */
public record LetterHead(String site, String teacher, URI address) {
    public LetterHead {
        Objects.requireNonNull(site);
        Objects.requireNonNull(teacher);
        Objects.requireNonNull(address);
    }

    /** Host and port, by which a reader recognises the site. */
    public String host() {
        return address.getAuthority();
    }

    /** The full address of something of ours, such as {@code sign-in/TOKEN}. */
    public String link(String path) {
        String base = address.toString();
        return (base.endsWith("/") ? base : base + "/") + path;
    }
}
