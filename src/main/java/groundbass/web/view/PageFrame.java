package groundbass.web.view;

import groundbass.text.Message;
import java.net.URI;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the layout around a page needs to know. {@code path} is the page's own path, {@code site} the full address of the
 * front page, {@code place} the part of the site it belongs to, {@code visitor} who reads it, {@code owner} whether they
 * keep the site, {@code flash} what the request before this one has to say.
 */
public record PageFrame(
        String path,
        String site,
        Place place,
        String siteName,
        boolean demo,
        Visitor visitor,
        boolean owner,
        Optional<Message> flash) {
    private static final Pattern SERIES = Pattern.compile("/series/[a-z0-9-]+");

    /** The two sides of the house; each has its own navigation. */
    public enum Place {
        FRONT,
        DESK
    }

    /** As far as a page's frame tells them apart: an educator has a desk, but nothing that a student's account keeps. */
    public enum Visitor {
        NOBODY,
        STUDENT,
        EDUCATOR
    }

    public PageFrame {
        Objects.requireNonNull(path);
        Objects.requireNonNull(site);
        Objects.requireNonNull(place);
        Objects.requireNonNull(visitor);
        Objects.requireNonNull(siteName);
        Objects.requireNonNull(flash);
    }

    // a template cannot ask this itself: its expression language takes a text of one letter for a number
    public boolean home() {
        return path.equals("/");
    }

    /** The path of the series that this page belongs to. */
    public Optional<String> series() {
        return Optional.of(SERIES.matcher(path)).filter(Matcher::lookingAt).map(Matcher::group);
    }

    /** Whether the reader has a student's account. */
    public boolean signedIn() {
        return visitor == Visitor.STUDENT;
    }

    public boolean nobody() {
        return visitor == Visitor.NOBODY;
    }

    public boolean desk() {
        return place == Place.DESK;
    }

    /** The full address of a path of ours. */
    public String address(String ofPath) {
        return URI.create(site).resolve(ofPath).toString();
    }

    /** Whether a link of the navigation leads to this page or to one above it. */
    public boolean within(String link) {
        return path.equals(link) || (link.length() > 1 && path.startsWith(link + "/"));
    }
}
